import { doubtedCourses } from '../../rules/batches/index.ts';
import { meanOf } from '../../rules/statistics/index.ts';
import type { Ahead } from './aheadOf.ts';

/** From so many past years on they run again from today. Common practice, no source. */
const ENOUGH_YEARS = 8;
/** How far a stretch of some weeks is off what is usual, as a share of it, where too few years tell;
 *  and where nothing but the last days does, which the season leaves behind. Ours. */
const DOUBT = 0.1;
const DOUBT_LATELY = 0.22;
const LEAST_DOUBT = 0.08; // however alike a few years were; ours
const FEW_YEARS = 3;
const STRETCH = 21; // days

/** Courses that the heat of the coming days may take, and what they come from. */
export type Courses = {
  readonly courses: readonly (readonly number[])[];
  readonly from: 'years' | 'usual' | 'lately';
  /** Expected of each day, °C d. */
  readonly mean: readonly number[];
};

/** null where neither dates nor the last days tell anything. */
export function coursesOf({ mean, years, lately }: Ahead, days: number): Courses | null {
  if (mean !== null && years.length >= ENOUGH_YEARS) return { courses: years, from: 'years', mean };
  if (mean !== null) {
    const courses = doubtedCourses(mean, doubtOf(years));
    return { courses, from: 'usual', mean };
  }
  if (lately === null) return null;
  const same = Array.from({ length: days }, () => lately);
  return { courses: doubtedCourses(same, DOUBT_LATELY), from: 'lately', mean: same };
}

function doubtOf(years: readonly (readonly number[])[]): number {
  if (years.length < FEW_YEARS) return DOUBT;
  const sums = years.map((year) => year.slice(0, STRETCH).reduce((sum, units) => sum + units, 0));
  const mean = meanOf(sums);
  if (mean <= 0) return DOUBT;
  const squares = sums.reduce((all, sum) => all + (sum - mean) ** 2, 0) / (sums.length - 1);
  const oneMore = Math.sqrt(1 + 1 / sums.length);
  return Math.min(1, Math.max(LEAST_DOUBT, (Math.sqrt(squares) / mean) * oneMore));
}
