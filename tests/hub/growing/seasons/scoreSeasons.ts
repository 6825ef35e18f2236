import type { Moment, Said } from './runSeasons.ts';

const DAY = 86_400_000;

export type Score = {
  readonly n: number;
  /** Shares of batches that were ready within the interval: by the moment, and by the shown days. */
  readonly coverage: number;
  readonly coverageOfDays: number;
  /** Medians of how far off, days; and of counting days alone. */
  readonly off: number;
  readonly offByDays: number;
  /** Median width of the interval, days. */
  readonly width: number;
};

/** What was said from own batches, held against what came. */
export function scoreOf(said: readonly Said[], moment: Moment | null): Score {
  const told = said.filter(
    ({ moment: at, ready }) => (moment === null || at === moment) && ready.method === 'own batches',
  );
  const share = (holds: (one: Said) => boolean) => told.filter(holds).length / told.length;
  const off = (value: number | null, { actual }: Said) =>
    value === null ? Number.POSITIVE_INFINITY : Math.abs(value - actual) / DAY;
  return {
    n: told.length,
    coverage: share(
      ({ ready: { at }, actual }) =>
        (at.early ?? Number.POSITIVE_INFINITY) <= actual &&
        actual <= (at.late ?? Number.POSITIVE_INFINITY),
    ),
    coverageOfDays: share(
      ({ ready: { early, late }, actualDay }) =>
        (early ?? '9') <= actualDay && actualDay <= (late ?? '9'),
    ),
    off: middle(told.map((one) => off(one.ready.at.expected, one))),
    offByDays: middle(told.map((one) => off(one.byDays, one))),
    width: middle(told.map(({ ready: { at } }) => ((at.late ?? 1e15) - (at.early ?? 0)) / DAY)),
  };
}

const middle = (values: readonly number[]) => {
  const sorted = [...values].sort((a, b) => a - b);
  const half = sorted.length / 2;
  return (
    ((sorted[Math.floor(half)] ?? Number.NaN) + (sorted[Math.ceil(half) - 1] ?? Number.NaN)) / 2
  );
};
