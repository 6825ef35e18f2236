import { median } from '../../rules/statistics/index.ts';
import type { Batch } from '../batches/index.ts';
import type { Calendar } from '../clock.ts';
import type { Farm } from '../farm/index.ts';
import type { Growing } from '../growing/index.ts';

const DAY = 86_400_000; // ms
/** Past batches from which the heat a crop takes is known well enough to reckon with. Ours. */
const FEWEST = 3;
/** Days looked ahead. Ours. */
const FAR = 120;

export type DaysLeft = {
  /** null where nobody knows. */
  readonly days: number | null;
  readonly from: 'heat' | 'told' | 'guess';
};

type Parts = {
  readonly farm: () => Farm;
  readonly calendar: () => Calendar;
  readonly growing: Growing;
};

/**
 * Days until a batch is ready: the heat that past batches of the crop took in the middle, less
 * what it has had, by what the days to come usually bring; else the crop's days in the farm file.
 */
export function daysLeft(batch: Batch, { farm, calendar, growing }: Parts, now: number): DaysLeft {
  if (batch.readyAt.later !== null && batch.cuts.length === 0) return { days: 0, from: 'heat' };
  // What grows again after a cut is of another age than its sowing says.
  if (batch.cuts.length > 0) return { days: null, from: 'guess' };
  const { base, past } = growing.crop(batch.crop);
  const took = past.flatMap(({ stage, degreeDays }) =>
    stage === 'later' && degreeDays !== null ? [degreeDays] : [],
  );
  if (took.length >= FEWEST) {
    const lived = growing.heat.lived(batch.stays, batch.sownAt, now, base).degreeDays;
    const ahead = growing.heat.ahead(batch.place, base, calendar().dayOf(now), FAR);
    const daily = ahead.mean ?? (ahead.lately === null ? [] : Array(FAR).fill(ahead.lately));
    const days = lived === null ? null : daysFor((median(took) ?? 0) - lived, daily);
    if (days !== null) return { days, from: 'heat' };
  }
  const told = farm().crop(batch.crop)?.days;
  if (told === undefined) return { days: null, from: 'guess' };
  const whole = typeof told === 'number' ? told : (told[0] + told[1]) / 2;
  return { days: Math.max(0, whole - (now - batch.sownAt) / DAY), from: 'told' };
}

/** Days in which these units come together; null when they do not within the days known. */
function daysFor(units: number, daily: readonly number[]): number | null {
  if (units <= 0) return 0;
  let left = units;
  for (const [day, brought] of daily.entries()) {
    if (brought >= left) return day + left / brought;
    left -= brought;
  }
  return null;
}
