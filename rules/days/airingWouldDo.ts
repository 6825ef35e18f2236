import { type Air, CLEAR_GAIN, ventGain } from '../air/index.ts';
import { celsius, percent } from '../units.ts';
import type { PlaceDay, PlaceHour } from './placeDay.ts';

// Ours, from no source, but for what venting needs: see heatIn and wetIn.
const COOLER = 1; // K, as heatIn
const SHARE = 0.5; // of the bad hours
const MOSTLY = 0.5; // of an hour
/** Hours of the local day in which openUp airs wet leaves: from an hour after sunrise, about. */
const AIRED = [8, 18] as const;

export type AiringFor = 'heat' | 'wet';

/** Bad hours of some days, and those of them that opening up would have ended. */
export type AiringTrial = {
  readonly badHours: number;
  /** Vents stood open and it was bad all the same. */
  readonly openAlready: number;
  /** Shut, or not said to be open, and outside air would have helped. */
  readonly wouldHelp: number;
  readonly wouldDo: boolean;
};

const isBad = (hour: PlaceHour, trouble: AiringFor) =>
  (trouble === 'heat' ? hour.hot : hour.wet) >= MOSTLY;

const airOf = ({ temperature, humidity }: PlaceHour): Air | null =>
  temperature === null || humidity === null || humidity < 1 || humidity > 100
    ? null
    : { temperature: celsius(temperature), humidity: percent(humidity) };

/**
 * Whether opening up would have ended most of the bad hours of these days: hours in which nobody
 * said that the vents were open, and outside was cooler by 1 K and under the band's top (heat), or
 * held clearly less water (wet leaves, from 8 to 18 o'clock, when airing is asked for).
 *
 * Source: ventGain for the water held; the rest is ours, from no source.
 * @param outside days of the open air, by the same names
 * @param bandTop °C
 */
export function airingWouldDo(
  here: readonly PlaceDay[],
  outside: readonly PlaceDay[],
  trouble: AiringFor,
  bandTop: number,
): AiringTrial {
  const open = new Map(outside.map((day) => [day.day, day]));
  let [badHours, openAlready, wouldHelp] = [0, 0, 0];
  for (const { day, hours } of here) {
    hours.forEach((hour, at) => {
      if (!isBad(hour, trouble)) return;
      if (trouble === 'wet' && (at < AIRED[0] || at >= AIRED[1])) return;
      badHours += 1;
      if (hour.open === true) openAlready += 1;
      else if (helps(hour, open.get(day)?.hours[at], trouble, bandTop)) wouldHelp += 1;
    });
  }
  return {
    badHours,
    openAlready,
    wouldHelp,
    wouldDo: badHours > 0 && wouldHelp >= SHARE * badHours,
  };
}

function helps(
  hour: PlaceHour,
  outside: PlaceHour | undefined,
  trouble: AiringFor,
  bandTop: number,
): boolean {
  if (outside === undefined) return false;
  if (trouble === 'heat') {
    const [inside, out] = [hour.temperature, outside.temperature];
    return inside !== null && out !== null && inside - out >= COOLER && out <= bandTop;
  }
  const [inside, out] = [airOf(hour), airOf(outside)];
  return inside !== null && out !== null && ventGain(inside, out) >= CLEAR_GAIN;
}
