import { straightLine, studentQuantile } from '../statistics/index.ts';

// Ours, from no source: a fifth of a percent of what stands there for each hour over the crop's
// limit, under its chill, or wet when a disease may get in; wide, because nobody has measured it
// for trays of leaves. It goes as soon as the farm's own batches say something.
const TOLD = { mean: 0.002, low: 0.0005, high: 0.006 } as const;
const FEWEST = 12; // batches; ours
const CONFIDENCE = 0.8; // ours: a middle and a range to reckon with, no proof

/** What one finished batch went through, and what became of it. */
export type BatchHarm = {
  /** Hours over the limit or under the chill, and hours that suited a disease. */
  readonly harmfulHours: number;
  /** Share of it that was lost, 0..1. */
  readonly lostShare: number;
};

/** Share of the crop that one harmful hour costs, 0..1. */
export type HarmShare = {
  readonly mean: number;
  readonly low: number;
  readonly high: number;
  /** `own`: from finished batches; `guess`: ours, from no source. */
  readonly from: 'own' | 'guess';
  readonly batches: number;
};

/**
 * What share of a crop an hour of heat, cold or disease weather costs: the slope of the lost share
 * over the harmful hours of the farm's own finished batches, when there are twelve or more that
 * did not all go through the same; else a wide guess.
 *
 * It is an association: batches that were lost in bad weeks may have been lost for another reason.
 *
 * Source: ordinary least squares, see straightLine; the guess and the twelve are ours, from no
 * source.
 */
export function harmPerHour(batches: readonly BatchHarm[]): HarmShare {
  const guess: HarmShare = { ...TOLD, from: 'guess', batches: batches.length };
  if (batches.length < FEWEST) return guess;
  const line = straightLine(
    batches.map(({ harmfulHours }) => harmfulHours),
    batches.map(({ lostShare }) => lostShare),
  );
  if (line === null || line.slopeError === null) return guess;
  const half = studentQuantile((1 + CONFIDENCE) / 2, line.n - 2) * line.slopeError;
  const share = (value: number) => Math.min(1, Math.max(0, value));
  return {
    mean: share(line.slope),
    low: share(line.slope - half),
    high: share(line.slope + half),
    from: 'own',
    batches: line.n,
  };
}
