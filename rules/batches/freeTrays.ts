import { expectRange } from '../expectRange.ts';

/** Trays that stand in a place from one day to another, both counted from today; 0 is today. */
export type StandingTrays = {
  readonly trays: number;
  readonly from: number;
  /** Last day. */
  readonly until: number;
};

/**
 * Trays that still fit into a place on each of the coming days; never less than none, also where
 * more stand there than it is said to hold.
 *
 * Source: counting.
 * @throws RangeError for a capacity or trays outside 0..100,000, or days outside 0..366
 */
export function freeTrays(
  capacity: number,
  standing: readonly StandingTrays[],
  days: number,
): readonly number[] {
  expectRange('capacity', capacity, 0, 100_000, 'trays');
  expectRange('number of days', days, 0, 366, 'd');
  for (const { trays } of standing) expectRange('standing trays', trays, 0, 100_000, '');
  return Array.from({ length: Math.floor(days) }, (_, day) => {
    const there = standing.filter(({ from, until }) => from <= day && day <= until);
    return Math.max(0, Math.floor(capacity - there.reduce((sum, { trays }) => sum + trays, 0)));
  });
}
