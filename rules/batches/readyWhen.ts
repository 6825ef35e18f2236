import { expectRange } from '../expectRange.ts';
import { orUnknownField } from '../orUnknownField.ts';
import { normalQuantile } from '../statistics/index.ts';
import { type BatchAhead, enoughChance } from './enoughChance.ts';

/** To a tenth of a second: finer than anything it is made of. */
const HALVINGS = 20;

/** Days from now; null where the days looked at do not reach it. */
export type ReadyWhen = {
  readonly early: number | null;
  readonly expected: number | null;
  readonly late: number | null;
};

/**
 * When a batch is ready: the day by which it is so with half a chance, and the ends of an interval
 * that holds the truth with the given confidence. 0 is "by now".
 *
 * The chance of being ready by a time is the mean, over the courses that the weather may take, of
 * the chance that the heat reached by then is enough: Student's t about the mean need of past
 * batches (readyProbability). So the spread of the batches, the doubt about the weather to come and
 * that of heat nobody measured are taken together. With one course of equal days, and all of it
 * measured, it is harvestWindow. For the first batches the t of that rule is taken as 9 in 10.
 *
 * Source: for past years as courses, past-years replay, as replayYears; for the sum, the law of
 * total probability.
 * @param batch what it needs and has, and what may come; `confidence` 0.5..0.99
 * @throws RangeError for units outside 0..10,000, or of a day outside 0..60 °C d, or no course
 */
export const readyWhen = orUnknownField(function readyWhen(
  batch: BatchAhead & { readonly confidence: number },
): ReadyWhen {
  const { soFar, variance = 0, courses, firstDay = 1, confidence } = batch;
  expectRange('units so far', soFar, 0, 10_000, '°C d');
  expectRange('variance of the units so far', variance, 0, 1e8, '(°C d)²');
  expectRange('number of courses', courses.length, 1, 1000, '');
  expectRange('share of the first day', firstDay, 0, 1, '');
  expectRange('confidence', confidence, 0.5, 0.99, '');

  const enough = enoughChance(batch);
  const reached = courses.map(() => soFar);
  const days = Math.min(...courses.map((course) => course.length));
  const wanted = [(1 - confidence) / 2, 0.5, (1 + confidence) / 2];
  const found: (number | null)[] = wanted.map(() => null);
  const chance = () => reached.reduce((sum, units) => sum + enough(units), 0) / reached.length;

  let before = chance();
  for (const [index, p] of wanted.entries()) if (before >= p) found[index] = 0;
  let t = 0;
  for (let day = 0; day < days && found.includes(null); day += 1) {
    const share = day === 0 ? firstDay : 1;
    for (const [index, course] of courses.entries()) {
      const units = course[day] ?? 0;
      expectRange('units of a day', units, 0, 60, '°C d');
      reached[index] = (reached[index] ?? 0) + share * units;
    }
    const after = chance();
    for (const [index, p] of wanted.entries())
      if (found[index] === null && after >= p) found[index] = within(share, p, day);
    before = after;
    t += share;
  }
  const [early = null, expected = null, late = null] = found;
  return { early, expected, late };

  /** The moment of a day at which the chance passes `p`: warmth comes evenly over the day. */
  function within(share: number, p: number, day: number): number {
    let [low, high] = [0, 1];
    for (let step = 0; step < HALVINGS; step += 1) {
      const middle = (low + high) / 2;
      const at = courses.map(
        (course, index) => (reached[index] ?? 0) - (1 - middle) * share * (course[day] ?? 0),
      );
      const sum = at.reduce((all, units) => all + enough(units), 0) / at.length;
      if (sum >= p) high = middle;
      else low = middle;
    }
    return t + high * share;
  }
});

const COURSES = 15; // ours: more change the ends of an interval by less than a hundredth of a day

/**
 * Courses the weather may take where only its mean course is known, and how far a whole period is
 * off: each day's units times 1 + doubt × z, z the middles of equal parts of the normal distribution
 * (ours). Their spread is that of daysToHarvest's `perDaySd`.
 * @param doubt standard deviation of a whole period's units, as a share of them, 0..1
 */
export function doubtedCourses(
  mean: readonly number[],
  doubt: number,
): readonly (readonly number[])[] {
  expectRange('doubt', doubt, 0, 1, '');
  const middles = Array.from({ length: COURSES }, (_, i) => normalQuantile((i + 0.5) / COURSES));
  const spread = Math.sqrt(middles.reduce((sum, z) => sum + z * z, 0) / COURSES);
  return middles.map((z) =>
    mean.map((units) => Math.min(60, Math.max(0, units * (1 + (doubt * z) / spread)))),
  );
}
