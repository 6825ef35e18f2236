import { degreeDaysSine } from '../../rules/heat/index.ts';
import { meanOf, straightLine } from '../../rules/statistics/index.ts';
import { type HeatRule, limitsOf } from './heatRule.ts';

/** How the last days lie above or below outdoors. Common practice, no source. */
const LATELY = 21; // shared days
/** How strongly a place follows outdoors shows only over warm and cold: from so many shared days, of a
 *  year at the most; before, degree for degree. Ours. */
const ENOUGH_TO_FOLLOW = 60;
const YEAR = 365;
const LEAST_FOLLOWS = 0.5; // K for each K outdoors; ours: a line through few weeks may say anything
const MOST_FOLLOWS = 1.5;
const FEWEST = 3; // shared days; as placeLine
const LEAST_HEAT = 20; // °C d, of which the curve of the day is learned; ours

export type Extremes = { readonly min: number | null; readonly max: number | null };
export type OwnDay = Extremes & { readonly day: string; readonly units: number | null };

/**
 * Heat units of a place from a day's extremes outdoors, °C d. The extremes are mapped, and the heat
 * is counted from them by a sine: a line through heat units themselves says nothing of warm days
 * while the days it is learned from are too cold to bring any (ours; the sheet maps the units). A day
 * warms and cools by its own curve: what the sine is off by on the place's own days is put right.
 * null where fewer than three days are known in both.
 * @param own days of the place, oldest first
 */
export function placeMap(
  own: readonly OwnDay[],
  outdoors: ReadonlyMap<string, Extremes>,
  rule: HeatRule,
): ((day: Extremes) => number | null) | null {
  const shared = own.flatMap(({ day, min, max }) => {
    const there = outdoors.get(day);
    if (!there || min === null || max === null || there.min === null || there.max === null)
      return [];
    return [{ min: [there.min, min] as const, max: [there.max, max] as const }];
  });
  if (shared.length < FEWEST) return null;
  const low = follow(shared.map(({ min }) => min));
  const high = follow(shared.map(({ max }) => max));
  const shape = shapeOf(own, rule);
  return ({ min, max }) => {
    if (min === null || max === null || max < min) return null;
    const [a, b] = [low(min), high(max)];
    const units = sineUnits({ min: Math.min(a, b), max: Math.max(a, b) }, rule);
    return units === null ? null : Math.min(60, shape * units);
  };
}

function follow(pairs: readonly (readonly [number, number])[]): (outdoors: number) => number {
  const year = pairs.slice(-YEAR);
  const line =
    year.length < ENOUGH_TO_FOLLOW
      ? null
      : straightLine(
          year.map(([there]) => there),
          year.map(([, here]) => here),
        );
  const slope = Math.min(MOST_FOLLOWS, Math.max(LEAST_FOLLOWS, line?.slope ?? 1));
  const level = meanOf(pairs.slice(-LATELY).map(([there, here]) => here - slope * there));
  return (outdoors) => level + slope * outdoors;
}

/** What days bring, over what a sine through their extremes brings. */
export function shapeOf(own: readonly OwnDay[], rule: HeatRule): number {
  let [known, sine] = [0, 0];
  for (const day of own.slice(-YEAR)) {
    const units = sineUnits(day, rule);
    if (units === null || day.units === null) continue;
    known += day.units;
    sine += units;
  }
  return sine < LEAST_HEAT ? 1 : known / sine;
}

/** Of a day of which only the extremes are known; null where they are not, or make no sense. */
export function sineUnits({ min, max }: Extremes, rule: HeatRule): number | null {
  if (min === null || max === null || max < min) return null;
  return degreeDaysSine({ min, max, ...limitsOf(rule) });
}
