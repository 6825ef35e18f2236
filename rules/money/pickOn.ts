import { expectRange } from '../expectRange.ts';
import { meanOf, straightLine, studentQuantile } from '../statistics/index.ts';
import { expectMoney } from './valuePerAreaDay.ts';
import type { WorthVerdict } from './worthItsHours.ts';

const CONFIDENCE = 0.8; // ours, as in worthItsHours
const FEWEST = 4; // pickings before the fall of a patch can be told; ours
const LATELY = 8; // the newest pickings: an earlier flush says nothing of the end; ours

/** One picking of a patch, in order of time. */
export type Picking = {
  /** Days since the first of the season. */
  readonly day: number;
  /** Sold, kg. */
  readonly kilograms: number;
  /** The walk there and back, picking, sorting. */
  readonly minutes: number;
};

export type PickOn = {
  readonly verdict: WorthVerdict;
  /** Expected earnings of the next picking for each hour, money; null when nobody can tell. */
  readonly perHour: number | null;
  readonly low: number | null;
  readonly high: number | null;
  /** kg an hour below which the hours are not paid. */
  readonly breakEvenSpeed: number | null;
};

/**
 * Whether the next picking of a patch is worth its hours: kg an hour of the newest pickings, as a
 * straight line over the days, and its prediction interval at the day asked for, times what a
 * kilogram leaves. Picking slows as fruit gets scarce, so speed is what tells.
 *
 * Source: prediction interval of a straight line (any text on regression); the rule is ours.
 * @param perKilogram price less what each kilogram costs to pack, money
 * @param nextDay days since the first picking of the season
 * @throws RangeError for weights below 0, minutes not above 0, days not rising, or negative money
 */
export function pickOn(
  pickings: readonly Picking[],
  asked: { readonly nextDay: number; readonly perKilogram: number; readonly wage: number },
  confidence: number = CONFIDENCE,
): PickOn {
  const { nextDay, perKilogram, wage } = asked;
  expectMoney('what a kilogram leaves', perKilogram);
  expectMoney('wage', wage);
  expectRange('confidence', confidence, 0.5, 0.99, '');
  pickings.forEach(({ day, kilograms, minutes }, index) => {
    expectRange('day of a picking', day, pickings[index - 1]?.day ?? 0, 3650, 'd');
    expectRange('picked weight', kilograms, 0, 1_000_000, 'kg');
    expectRange('minutes of a picking', minutes, Number.MIN_VALUE, 100_000, 'min');
  });
  const newest = pickings.slice(-LATELY);
  expectRange('day of the next picking', nextDay, newest.at(-1)?.day ?? 0, 3650, 'd');
  const breakEvenSpeed = perKilogram === 0 ? null : wage / perKilogram;
  const unknown = { verdict: 'cannot-tell', perHour: null, low: null, high: null } as const;
  const n = newest.length;
  const days = newest.map(({ day }) => day);
  const speeds = newest.map(({ kilograms, minutes }) => (60 * kilograms) / minutes);
  const line = n < FEWEST ? null : straightLine(days, speeds);
  if (line === null || line.residualSd === null) return { ...unknown, breakEvenSpeed };

  const middle = meanOf(days);
  const spread = days.reduce((sum, day) => sum + (day - middle) ** 2, 0);
  const away = Math.sqrt(1 + 1 / n + (nextDay - middle) ** 2 / spread);
  const half = studentQuantile((1 + confidence) / 2, n - 2) * line.residualSd * away;
  const speed = line.intercept + line.slope * nextDay;
  const money = (kilogramsAnHour: number) => Math.max(0, kilogramsAnHour) * perKilogram;
  const [low, high] = [money(speed - half), money(speed + half)];
  const verdict = low > wage ? 'pays' : high < wage ? 'does-not-pay' : 'cannot-tell';
  return { verdict, perHour: money(speed), low, high, breakEvenSpeed };
}
