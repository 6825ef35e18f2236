import { predictNightLow } from '../frost/index.ts';
import { nightModel } from './lowByRegression.ts';
import { type HourRead, nightWays, WAYS, type Way } from './nightWays.ts';
import type { NightRecord } from './snapshot.ts';

/** Which way of updating has been nearest at one hour of the night, and how near. */
export type LearnedUpdate = { readonly way: Way; readonly spread: number; readonly df: number };

const ENOUGH_NIGHTS = 15; // common practice, no source: as rules/frost asks before it prefers a way
const FIRST = 3; // h after sunset: the first whole hour after the evening's forecast
const SPENT = 2; // parameters of the evening's line, which has seen these nights; ours

const known = new WeakMap<readonly NightRecord[], Map<number, LearnedUpdate | null>>();

/**
 * Past nights gone through again up to `hour` hours after sunset: each way of nightWays is held
 * against the low that came, and the one with the smallest mean square error is kept with that
 * error as its spread. null for fewer than fifteen nights, or before the third hour.
 *
 * Source: ours, after "keep whichever verifies better on own nights" (common practice, no source).
 */
export function learnUpdate(nights: readonly NightRecord[], hour: number): LearnedUpdate | null {
  const byHour = known.get(nights) ?? new Map<number, LearnedUpdate | null>();
  known.set(nights, byHour);
  const at = Math.floor(hour);
  const before = byHour.get(at);
  if (before !== undefined) return before;
  const found = at < FIRST ? null : learn(nights, at);
  byHour.set(at, found);
  return found;
}

function learn(nights: readonly NightRecord[], at: number): LearnedUpdate | null {
  const model = nightModel(nights, 'evening');
  if (model === null) return null;
  const squares: Record<Way, number> = { weighed: 0, kept: 0, mean: 0, expected: 0 };
  let n = 0;
  for (const { evening, low, hours, length } of nights) {
    const last = hours?.[at] ?? null;
    if (evening === null || low === null || hours === undefined || last === null) continue;
    if (length === undefined || at >= length) continue;
    const reads = hours.flatMap((value, after): HourRead[] =>
      value === null || after < FIRST || after > at ? [] : [{ after, value }],
    );
    const ways = nightWays({
      start: evening.temperature,
      expected: predictNightLow(model, evening).mean,
      nightHours: length,
      reads,
      last: { after: at, value: last },
    });
    const seen = hours.slice(0, at + 1).reduce<number>((min, v) => Math.min(min, v ?? min), 99);
    for (const way of WAYS) squares[way] += (Math.min(ways[way], seen) - low) ** 2;
    n += 1;
  }
  if (n < ENOUGH_NIGHTS) return null;
  const way = WAYS.reduce((best, each) => (squares[each] < squares[best] ? each : best));
  return { way, spread: Math.sqrt(squares[way] / (n - SPENT)), df: n - SPENT };
}
