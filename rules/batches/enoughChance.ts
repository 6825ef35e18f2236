import { normalCdf, normalQuantile, studentCdf } from '../statistics/index.ts';
import { type BatchSpread, batchQuantile } from './batchSpread.ts';

const STANDING_WIDER = 1.5; // as in harvestWindow: common practice, no source
const NINE_IN_TEN = 0.9;

/** A batch on its way: what it needs and has, and what the coming days may bring. */
export type BatchAhead = {
  /** needOf or batchSpread. */
  readonly need: BatchSpread;
  /** °C d. */
  readonly soFar: number;
  /** Of what was guessed in it, (°C d)². */
  readonly variance?: number | undefined;
  /** Daily units from now on, °C d, each course as likely as the others. */
  readonly courses: readonly (readonly number[])[];
  /** Share of the first day that is left, 0..1. */
  readonly firstDay?: number | undefined;
  /** Standing for want of light, as in harvestWindow. */
  readonly standing?: boolean | undefined;
};

/**
 * Chance that so many heat units are enough: Student's t about the mean need of past batches; for the
 * first batches, whose spread nobody knows, the t of batchSpread is taken as 9 in 10.
 */
export function enoughChance(batch: Omit<BatchAhead, 'courses'>): (units: number) => number {
  const { need, variance = 0, standing = false } = batch;
  const { mean, df } = need;
  const sd = Math.hypot(need.sd, Math.sqrt(variance)) * (standing ? STANDING_WIDER : 1);
  if (df !== null) return (units) => studentCdf((units - mean) / sd, df);
  const scale = batchQuantile(need, NINE_IN_TEN) / normalQuantile(NINE_IN_TEN);
  return (units) => normalCdf((units - mean) / (sd * scale));
}
