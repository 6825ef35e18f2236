import { getTimes } from 'suncalc';

// Scores of forecasts, from nothing of rules/: a t quantile by adding up the density, the night's
// low by looking at the observations between another library's sunset and sunrise.

/** Density of Student's t without its constant factor. */
const shape = (x: number, df: number) => (1 + (x * x) / df) ** (-(df + 1) / 2);

const STEPS = 2000;
/** Area under the shape from 0 to `x`, by Simpson's rule. */
function area(x: number, df: number): number {
  const width = x / STEPS;
  let sum = shape(0, df) + shape(x, df);
  for (let i = 1; i < STEPS; i += 1) sum += (i % 2 === 0 ? 2 : 4) * shape(i * width, df);
  return (sum * width) / 3;
}

/** Area from 0 to infinity: x = tan(u) makes the range finite. */
function halfArea(df: number): number {
  const width = Math.PI / 2 / STEPS;
  let sum = 0;
  for (let i = 0; i < STEPS; i += 1) {
    const u = (i + 0.5) * width;
    sum += shape(Math.tan(u), df) / Math.cos(u) ** 2;
  }
  return sum * width;
}

const known = new Map<number, number>();
/** The value that Student's t stays under nine times in ten. */
export function tNinetyPercent(df: number): number {
  const before = known.get(df);
  if (before !== undefined) return before;
  const wanted = 0.4 * 2 * halfArea(df); // half lies below 0
  let [low, high] = [0, 50];
  for (let i = 0; i < 60; i += 1) {
    const middle = (low + high) / 2;
    if (area(middle, df) < wanted) low = middle;
    else high = middle;
  }
  known.set(df, low);
  return low;
}

const HOUR = 3_600_000;
type Temperature = { readonly t: number; readonly temperature: number };

/**
 * The lowest observation from sunset to an hour after sunrise of the night that ends on the day
 * whose local noon is near `noon`; null when more than two hours of it were not observed.
 */
export function observedLow(
  series: readonly Temperature[],
  noon: number,
  { lat, lon }: { readonly lat: number; readonly lon: number },
): number | null {
  const rise = getTimes(new Date(noon), lat, lon).sunrise?.getTime();
  const set = getTimes(new Date(noon - 24 * HOUR), lat, lon).sunset?.getTime();
  if (rise === undefined || set === undefined) return null;
  const end = rise + HOUR;
  const night = series.filter(({ t }) => t >= set && t <= end);
  const times = [set, ...night.map(({ t }) => t), end];
  const longest = Math.max(...times.slice(1).map((t, index) => t - (times[index] ?? t)));
  return longest > 2 * HOUR ? null : Math.min(...night.map(({ temperature }) => temperature));
}

export const meanOf = (values: readonly number[]) =>
  values.reduce((sum, value) => sum + value, 0) / values.length;
