import type { Batch } from '../batches/index.ts';
import { handMinutes, type Pick } from '../picks/index.ts';

/** Minutes that people wrote down; `without` counts what was done with no minutes beside it. */
export type MinutesWritten = {
  readonly batches: { readonly minutes: number; readonly without: number };
  readonly pickings: { readonly minutes: number; readonly without: number };
};

const summed = (all: readonly (number | null)[]) => ({
  minutes: all.reduce<number>((sum, minutes) => sum + (minutes ?? 0), 0),
  without: all.filter((minutes) => minutes === null).length,
});

/** Work on batches and pickings from `from` on and before `to`. */
export function minutesWritten(
  batches: readonly Batch[],
  picks: readonly Pick[],
  { from, to }: { readonly from: number; readonly to: number },
): MinutesWritten {
  const inside = ({ at }: { readonly at: number }) => at >= from && at < to;
  const standing = batches.filter(({ state }) => state !== 'withdrawn');
  const worked = standing.flatMap(({ works, cuts, moves }) =>
    [...works, ...cuts, ...moves].filter(inside).map(({ minutes }) => minutes),
  );
  const picked = picks.filter((pick) => pick.state === 'kept' && inside(pick)).map(handMinutes);
  return { batches: summed(worked), pickings: summed(picked) };
}
