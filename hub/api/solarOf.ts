import { SOLAR_USUAL, solarSheet } from '../../rules/cooler/index.ts';
import type { CoolRoomNow } from '../../rules/decide/index.ts';
import { meanOf } from '../../rules/statistics/index.ts';
import type { SolarAsked, SolarSheet } from '../contract/index.ts';

const FEWEST_DAYS = 3; // of energy before a mean of them is told, as for the room itself

/** The sheet for panels and battery with somebody's own numbers; null while too few days are known. */
export function solarOf(room: CoolRoomNow, { gap, ...asked }: SolarAsked): SolarSheet {
  const use = { ...SOLAR_USUAL };
  for (const key of Object.keys(SOLAR_USUAL) as (keyof typeof SOLAR_USUAL)[])
    Object.assign(use, asked[key] === undefined ? {} : { [key]: asked[key] });
  const energies = room.energyDays.flatMap(({ kilowattHours }) => kilowattHours ?? []);
  const gaps = room.energyDays.flatMap((day) => day.gap ?? []);
  const most = gaps.length === 0 ? null : Math.max(...gaps);
  const mean = energies.length < FEWEST_DAYS ? null : meanOf(energies);
  const sheet = solarSheet({ line: room.trend.line, mean, gap: gap ?? most }, use);
  return {
    used: { ...use, gap: gap ?? most },
    own: Object.entries({ gap, ...asked }).flatMap(([key, value]) =>
      value === undefined ? [] : [key],
    ),
    sheet: sheet && { ...sheet, lines: [...sheet.lines] },
  };
}
