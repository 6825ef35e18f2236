import { type Circumstances, type diseases, riskWord } from '../../../rules/disease/index.ts';
import { celsius } from '../../../rules/units.ts';
import {
  type AirRead,
  leafWetRule,
  signsByHumidity,
  type WetPiece,
  type Window,
  wetPieces,
} from '../../../rules/wetness/index.ts';
import { at, reading } from '../wetness/series.ts';

/** Noon to noon: hour 0 is noon, 8 is 20:00, 18 is 06:00. */
export const day: Window = { from: at(0), to: at(24) };

/** A reading every 10 minutes; null for a silent hour. */
export const tenMinutes = (
  hours: number,
  each: (hour: number) => readonly [temperature: number, humidity: number] | null,
  from = 0,
): AirRead[] =>
  Array.from({ length: Math.round((hours - from) * 6) }, (_, n) => from + n / 6).flatMap((hour) => {
    const read = each(hour);
    return read === null ? [] : [reading(hour, read[0], read[1])];
  });

/** What is known from these readings; the rest as given. */
export function circumstances(
  air: readonly AirRead[],
  more: Partial<Circumstances> = {},
): Circumstances {
  const window = { from: air[0] && air[0].t < day.from ? air[0].t : day.from, to: day.to };
  return {
    day,
    wetness: wetPieces(signsByHumidity(air, leafWetRule), window),
    air,
    outdoors: null,
    dark: { from: at(8), to: at(18) },
    sunrise: at(18),
    calendarDays: null,
    week: [],
    flowering: true,
    confirmed: [],
    ...more,
  };
}

/** A piece of time by hours. */
export const piece = (
  state: WetPiece['state'],
  from: number,
  to: number,
  coldest: number,
  warmest = coldest,
): WetPiece => ({
  state,
  from: at(from),
  to: at(to),
  coldest: celsius(coldest),
  warmest: celsius(warmest),
});

/** Wet for so many hours from 20:00 at a temperature, then dry. */
export const night = (length: number, temperature: number) =>
  circumstances(
    tenMinutes(24, (hour) => [temperature, hour >= 8 && hour < 8 + length - 1e-9 ? 95 : 70]),
  );
export const wordOf = (known: Circumstances, disease: (typeof diseases)[number]) => {
  const { risk } = disease.judge(known);
  return risk === null ? null : riskWord(risk);
};
