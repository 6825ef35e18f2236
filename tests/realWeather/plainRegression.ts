import { getTimes } from 'suncalc';
import { observedLow } from './forecastScores.ts';

// The forecast anybody could make from the same numbers: least squares of the low on temperature
// and dew point, over the last sixty nights, refit each night. From nothing of rules/.

const HOUR = 3_600_000;
const DAY = 24 * HOUR;
const NIGHTS = 60;
const FEWEST = 10;
const REACH = 35 * 60_000;

type Observation = { readonly t: number; readonly temperature: number; readonly dewPoint: number };
type Where = { readonly lat: number; readonly lon: number };
type Row = { readonly x: readonly number[]; readonly low: number | null };

/** 15:00 by the clock on the wall, of the day whose noon is near `noon`. */
function fifteen(noon: number, zone: string): number {
  const clock = new Intl.DateTimeFormat('en', {
    timeZone: zone,
    hour: 'numeric',
    hourCycle: 'h23',
  });
  return noon + (15 - Number(clock.format(noon))) * HOUR;
}

function nearest(series: readonly Observation[], at: number): Observation | null {
  let best: Observation | null = null;
  for (const each of series)
    if (best === null || Math.abs(each.t - at) < Math.abs(best.t - at)) best = each;
  return best !== null && Math.abs(best.t - at) <= REACH ? best : null;
}

/** Coefficients by Gaussian elimination of the normal equations; the intercept first. */
function solve(rows: readonly Row[]): number[] {
  const design = rows.map(({ x, low }) => [1, ...x, low ?? 0]);
  const size = (design[0]?.length ?? 1) - 1;
  const table = Array.from({ length: size }, (_, j) =>
    Array.from({ length: size + 1 }, (_, k) =>
      design.reduce((sum, row) => sum + (row[j] ?? 0) * (row[k] ?? 0), 0),
    ),
  );
  for (let j = 0; j < size; j += 1) {
    const pivot = table[j] ?? [];
    for (const row of table.slice(j + 1)) {
      const share = (row[j] ?? 0) / (pivot[j] ?? 1);
      for (let k = j; k <= size; k += 1) row[k] = (row[k] ?? 0) - share * (pivot[k] ?? 0);
    }
  }
  const found = new Array<number>(size).fill(0);
  for (let j = size - 1; j >= 0; j -= 1) {
    const row = table[j] ?? [];
    const rest = found.reduce((sum, b, k) => sum + (k > j ? b * (row[k] ?? 0) : 0), 0);
    found[j] = ((row[size] ?? 0) - rest) / (row[j] ?? 1);
  }
  return found;
}

/**
 * What plain regression would have said of each night, by the name of the morning that ends it.
 * @param hour when temperature and dew point are read: 15:00, or two hours after sunset
 */
export function plainForecasts(
  series: readonly Observation[],
  noons: readonly number[],
  { zone, ...where }: Where & { readonly zone: string },
  hour: 'afternoon' | 'evening',
): ReadonlyMap<string, number> {
  const said = new Map<string, number>();
  const past: Row[] = [];
  let from = 0;
  for (const noon of noons) {
    while ((series[from]?.t ?? noon) < noon - 2 * DAY) from += 1;
    const near = series.slice(from, from + 96);
    const set = getTimes(new Date(noon - DAY), where.lat, where.lon).sunset?.getTime() ?? noon;
    const clue = nearest(near, hour === 'evening' ? set + 2 * HOUR : fifteen(noon - DAY, zone));
    if (clue === null) continue;
    const x = [clue.temperature, clue.dewPoint];
    const taught = past.slice(-NIGHTS);
    if (taught.length >= FEWEST) {
      const [b0 = 0, b1 = 0, b2 = 0] = solve(taught);
      said.set(
        new Date(noon).toISOString().slice(0, 10),
        b0 + b1 * clue.temperature + b2 * clue.dewPoint,
      );
    }
    const low = observedLow(near, noon, where);
    if (low !== null) past.push({ x, low });
  }
  return said;
}
