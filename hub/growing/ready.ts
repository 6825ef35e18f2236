import type { CutStage } from '../batches/index.ts';

/** How sure the interval is meant to be. */
export const CONFIDENCE = 0.8;

/** Why it cannot be said. */
export type ReadyMissing =
  /** Nobody told how long the crop takes, and no batch was ready yet. */
  | 'no past'
  /** No probe measures the place, and nothing stands in for it. */
  | 'no heat'
  /** Nothing tells what the coming days bring. */
  | 'no weather'
  /** Later than the days looked at. */
  | 'too far'
  /** It is done with. */
  | 'ended';

/** When a batch is ready at one stage. Times in ms since 1970, heat in °C d; null is not known. */
export type Ready = {
  readonly stage: CutStage;
  /** When somebody saw it ready: then nothing is foretold any more. */
  readonly seenAt: number | null;
  readonly soFar: number | null;
  readonly need: { readonly mean: number; readonly low: number; readonly high: number } | null;
  /** Days (`2026-05-14`). No day is promised while plants only stand for want of light. */
  readonly expected: string | null;
  readonly early: string | null;
  readonly late: string | null;
  /** The same as moments, which tell more than whole days. */
  readonly at: {
    readonly early: number | null;
    readonly expected: number | null;
    readonly late: number | null;
  };
  readonly confidence: number;
  readonly learnedFrom: number;
  /** Whether those were noted when they were ready, or some only when they were cut. */
  readonly counted: 'noted' | 'cut' | null;
  /** Whose light tells needs apart; null where light shows no difference. */
  readonly byLight: 'probe' | 'date' | null;
  readonly method: 'own batches' | 'told days' | 'unknown';
  /** What tells of the coming days. */
  readonly weather: 'years' | 'usual' | 'lately' | null;
  readonly unknownHours: number;
  readonly standing: boolean;
  readonly missing: readonly ReadyMissing[];
  /** Chance of being ready by the morning of a day, in days from today, 0 is now; null where no spread
   *  of past batches is known, and beyond the days looked at. */
  readonly chanceBy: (ahead: number) => number | null;
};

/** Nothing is known of it but these. */
export const notKnown = (
  stage: CutStage,
  known: Partial<Ready>,
  missing: readonly ReadyMissing[],
): Ready => ({
  ...{ stage, seenAt: null, soFar: null, need: null, expected: null, early: null, late: null },
  ...{ at: { early: null, expected: null, late: null }, confidence: CONFIDENCE, learnedFrom: 0 },
  ...{
    counted: null,
    byLight: null,
    method: 'unknown',
    weather: null,
    unknownHours: 0,
    standing: false,
    chanceBy: () => null,
  },
  ...known,
  missing,
});
