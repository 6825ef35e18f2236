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
/** Part of the doubt about the weather is in the needs of past batches already, which differ because
 *  theirs differed: only the rest of it is added. Ours, set on invented farms (seeds 1 to 4; none of
 *  those that are told): all of it held 85 times of 100 at sowing, six tenths of it 78. */
const OWN_SHARE = 0.8;

/** Courses that the heat of the coming days may take, and what they come from. */
export type Courses = {
  readonly courses: readonly (readonly number[])[];
  readonly from: 'years' | 'usual' | 'lately';
  /** Expected of each day, °C d. */
  readonly mean: readonly number[];
};

/** null where neither dates nor the last days tell anything. */
export function coursesOf({ mean, years, lately }: Ahead, days: number): Courses | null {
  if (mean !== null && years.length >= ENOUGH_YEARS)
    return { courses: years.map((year) => nearer(year, mean)), from: 'years', mean };
  if (mean !== null) {
    const courses = doubtedCourses(mean, OWN_SHARE * doubtOf(years));
    return { courses, from: 'usual', mean };
  }
  if (lately === null) return null;
  const same = Array.from({ length: days }, () => lately);
  return { courses: doubtedCourses(same, OWN_SHARE * DOUBT_LATELY), from: 'lately', mean: same };
}

const nearer = (year: readonly number[], mean: readonly number[]) =>
  year.map((units, day) => {
    const usual = mean[day] ?? units;
    return usual + OWN_SHARE * (units - usual);
  });

function doubtOf(years: readonly (readonly number[])[]): number {
  if (years.length < FEW_YEARS) return DOUBT;
  const sums = years.map((year) => year.slice(0, STRETCH).reduce((sum, units) => sum + units, 0));
  const mean = meanOf(sums);
  if (mean <= 0) return DOUBT;
  const squares = sums.reduce((all, sum) => all + (sum - mean) ** 2, 0) / (sums.length - 1);
  const oneMore = Math.sqrt(1 + 1 / sums.length);
  return Math.min(1, Math.max(LEAST_DOUBT, (Math.sqrt(squares) / mean) * oneMore));
}
