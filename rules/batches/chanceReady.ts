import { expectRange } from '../expectRange.ts';
import { orUnknownField } from '../orUnknownField.ts';
import type { Probability } from '../units.ts';
import { type BatchAhead, enoughChance } from './enoughChance.ts';

/**
 * Chance that a batch is ready by a morning to come: the same chance as readyWhen reckons its days
 * from. null with one or two past batches, whose spread nobody knows, and beyond the days given.
 *
 * Source: as readyWhen.
 * @param mornings 0 is now, 1 the end of the day that runs, 2 that of the day after it; 0..400
 * @throws RangeError for units outside 0..10,000, or of a day outside 0..60 °C d, or no course
 */
export const chanceReady = orUnknownField(function chanceReady(
  batch: BatchAhead,
  mornings: number,
): Probability | null {
  const { need, soFar, courses, firstDay = 1 } = batch;
  expectRange('units so far', soFar, 0, 10_000, '°C d');
  expectRange('number of courses', courses.length, 1, 1000, '');
  expectRange('share of the first day', firstDay, 0, 1, '');
  expectRange('mornings', mornings, 0, 400, '');
  if (need.df === null || courses.some((course) => course.length < mornings)) return null;
  const enough = enoughChance(batch);
  let sum = 0;
  for (const course of courses) {
    let reached = soFar;
    for (let day = 0; day < mornings; day += 1) {
      const units = course[day] as number;
      expectRange('units of a day', units, 0, 60, '°C d');
      reached += day === 0 ? firstDay * units : units;
    }
    sum += enough(reached);
  }
  return (sum / courses.length) as Probability;
});
