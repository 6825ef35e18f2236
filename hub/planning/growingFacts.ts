import type { Batch } from '../batches/index.ts';
import type { Calendar } from '../clock.ts';
import type { Ready } from '../growing/index.ts';
import type { CropFacts } from './cropFacts.ts';
import { meanOf } from './cropFacts.ts';

const DAY = 86_400_000; // ms
/** What is ready by six in the evening is reckoned with for that day, as what was sown by then is sown
 *  on it; later it is the next day's. Ours. */
const REST_OF_DAY = 6 * 3_600_000; // ms

/** A batch on its way, as planning sees it. Days count from today; past ones are below zero. */
export type GrowingFacts = {
  readonly batch: Batch;
  readonly crop: CropFacts;
  /** Expected weight of what stands, kg; null where no weight is known. */
  readonly kg: number | null;
  readonly seenReady: number | null;
  /** Expected to be ready, early and late, as its page says; null where nobody can say. */
  readonly ready: {
    readonly early: number;
    readonly expected: number;
    readonly late: number;
    /** The first day for which it is reckoned with. */
    readonly by: number;
  } | null;
  /** Last day on which it can be delivered, as far as its keeping time tells. */
  readonly until: number | null;
  /** Chance of being ready by that day's morning; null where no spread is known. */
  readonly chanceBy: (ahead: number) => number | null;
};

export type BatchInputs = {
  readonly batch: Batch;
  readonly crop: CropFacts;
  readonly now: number;
  readonly today: string;
  readonly calendar: Calendar;
  /** As growing reckons it: nobody reckons it again. */
  readonly told: Ready;
  /** What ends later than this is not looked at. */
  readonly days: number;
};

export function growingFacts(inputs: BatchInputs): GrowingFacts {
  const { batch, crop, now, told } = inputs;
  const perTray = meanOf(crop.perTray);
  const { young, later } = batch.readyAt;
  const seenReady = later ?? young;
  // One that was cut and grows again: nobody learned yet how long that takes.
  const again = crop.regrows && batch.cuts.length > 0;
  const seen = again || seenReady === null ? null : Math.min(0, (seenReady - now) / DAY);
  const ready = again ? null : seen !== null ? seenAs(seen) : expectedAs(inputs);
  return {
    batch,
    crop,
    kg: perTray === null ? null : perTray * batch.traysLeft,
    seenReady: again ? null : seenReady,
    ready,
    until: ready === null ? null : Math.floor((seen ?? ready.by) + crop.keepDays),
    chanceBy: seen !== null ? () => 1 : ready === null ? () => null : told.chanceBy,
  };
}

const seenAs = (days: number) => ({ early: days, expected: days, late: days, by: days });

/** The days its page tells, counted from today; null what is not within the days looked at. */
function expectedAs(inputs: BatchInputs): GrowingFacts['ready'] {
  const { told, today, calendar, days } = inputs;
  const { expected: at } = told.at;
  if (at === null) return null;
  const aheadOf = (day: string) =>
    Math.round((calendar.bounds(day).begins - calendar.bounds(today).begins) / DAY);
  const expected = aheadOf(calendar.dayOf(at));
  if (expected > days) return null;
  return {
    early: told.early === null ? expected : aheadOf(told.early),
    expected,
    late: told.late === null ? days : aheadOf(told.late),
    by: aheadOf(calendar.dayOf(at + REST_OF_DAY)),
  };
}
