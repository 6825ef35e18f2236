import { batchQuantile, batchSpread, readyProbability } from '../../rules/batches/index.ts';
import type { Batch } from '../batches/index.ts';
import type { CropFacts } from './cropFacts.ts';
import { meanOf } from './cropFacts.ts';

const DAY = 86_400_000; // ms
const SIDE = 0.9; // one new batch in ten is readier than early, one in ten later than late; ours

/** A batch on its way, as planning sees it. Days count from today; past ones are below zero. */
export type GrowingFacts = {
  readonly batch: Batch;
  readonly crop: CropFacts;
  /** Expected weight of what stands, kg; null where no weight is known. */
  readonly kg: number | null;
  readonly seenReady: number | null;
  /** Expected to be ready, early and late; null where nobody can say. */
  readonly ready: {
    readonly early: number;
    readonly expected: number;
    readonly late: number;
  } | null;
  /** Last day on which it can be delivered, as far as its keeping time tells. */
  readonly until: number | null;
  /** Chance of being ready by that day's morning, and of being over by then. */
  readonly chanceBy: (ahead: number) => number | null;
};

export type BatchInputs = {
  readonly batch: Batch;
  readonly crop: CropFacts;
  readonly now: number;
  /** Heat units so far, and of each coming day, today first; null where not known. */
  readonly soFar: number | null;
  readonly ahead: readonly number[] | null;
  /** Share of today that is still to come. */
  readonly restOfToday: number;
};

export function growingFacts(inputs: BatchInputs): GrowingFacts {
  const { batch, crop, now } = inputs;
  const perTray = meanOf(crop.perTray);
  const { young, later } = batch.readyAt;
  const seenReady = later ?? young;
  // One that was cut and grows again: nobody learned yet how long that takes.
  const again = crop.regrows && batch.cuts.length > 0;
  const known = again
    ? null
    : seenReady !== null
      ? seen(seenReady, now)
      : (byHeat(inputs) ?? byDays(inputs));
  return {
    batch,
    crop,
    kg: perTray === null ? null : perTray * batch.traysLeft,
    seenReady: again ? null : seenReady,
    ready: known?.ready ?? null,
    until: known === null ? null : Math.floor(known.ready.expected + crop.keepDays),
    chanceBy: known?.chanceBy ?? (() => null),
  };
}

type Known = Pick<GrowingFacts, 'chanceBy'> & {
  readonly ready: NonNullable<GrowingFacts['ready']>;
};

function seen(at: number, now: number): Known {
  const days = Math.min(0, (at - now) / DAY);
  return { ready: { early: days, expected: days, late: days }, chanceBy: () => 1 };
}

/** Heat so far and to come against what past batches took. */
function byHeat({ crop, soFar, ahead, restOfToday }: BatchInputs): Known | null {
  if (crop.degreeDays.length === 0 || soFar === null || ahead === null) return null;
  const spread = batchSpread(crop.degreeDays);
  const half = batchQuantile(spread, SIDE) * spread.sd;
  const sums = [soFar];
  for (const [day, units] of ahead.entries())
    sums.push((sums.at(-1) ?? 0) + (day === 0 ? units * restOfToday : units));
  /** Days until the sum is there; what was reached before today is today: nobody saw it. */
  const reached = (units: number) => {
    const at = sums.findIndex((sum) => sum >= units);
    return at < 0 ? null : at;
  };
  const expected = reached(spread.mean);
  if (expected === null) return null; // not within the days that are looked at
  return {
    ready: {
      early: reached(spread.mean - half) ?? 0,
      expected,
      late: reached(spread.mean + half) ?? sums.length,
    },
    chanceBy: (days) =>
      readyProbability(
        crop.degreeDays,
        sums[Math.max(0, Math.min(sums.length - 1, days))] ?? soFar,
      ),
  };
}

/** The days the grower told. No spread is known, so no chance is given. */
function byDays({ batch, crop, now }: BatchInputs): Known | null {
  if (crop.told === null) return null;
  const sown = (batch.sownAt - now) / DAY;
  const [least, most] = crop.told;
  const ready = {
    early: Math.round(sown + least),
    expected: Math.round(sown + (least + most) / 2),
    late: Math.round(sown + most),
  };
  return { ready, chanceBy: () => null };
}
