import { z } from 'zod';
import { lossLook } from './losses.ts';
import { calendarDay, placeKind, time } from './terms.ts';

// Losses beside the weather before them: the pictures, and what may be said of them.

const known = z.number().nullable();
const span = z.object({ least: z.number(), most: z.number() });

/** One strip for each place, day by day on one axis. */
export const lossStrips = z.object({
  from: calendarDay,
  to: calendarDay,
  places: z.array(
    z.object({
      place: z.string(),
      name: z.string(),
      kind: placeKind,
      /** What heat and cold are measured against, °C; for a cool room its limit. null: not told. */
      hotAbove: known,
      coldBelow: known,
      /** Every day of the range. */
      days: z.array(
        z.object({
          day: calendarDay,
          wetHours: known,
          /** Hours in which it went over or under the limit; null where nobody knows or no limit is told. */
          hotHours: known,
          coldHours: known,
          unknownHours: z.number(),
        }),
      ),
      /** Losses by their id, with what a pin says. */
      pins: z.array(
        z.object({
          id: z.string(),
          day: calendarDay,
          look: lossLook.nullable(),
          words: z.string(),
        }),
      ),
      /** Mondays of weeks somebody said nothing was lost in. */
      quiet: z.array(calendarDay),
      words: z.string(),
    }),
  ),
});

export const exposure = z.enum([
  'wet-spell',
  'wet-hours',
  'infection-index',
  'hot-hours',
  'cold-hours',
  'cool-room-hours',
]);
export const comparedUnit = z.enum(['place-week', 'patch-week', 'batch', 'lot']);

const comparedCase = z.object({
  id: z.string(),
  /** A place in a week, a batch or a lot, as people call it. */
  name: z.string(),
  place: z.string(),
  /** Monday of the week, or the first day of the batch or lot. */
  from: calendarDay,
  /** How the loss is known. `no-entry`: none was entered, though the log was kept that week. */
  basis: z.enum(['entered', 'said-none', 'no-entry', 'not-kept']),
  /** Share lost, 0 to 1; null where nobody kept the log. */
  share: span.nullable(),
  lost: z.boolean().nullable(),
  /** What went before, by exposure; one that is left out nobody can say. */
  exposure: z.partialRecord(exposure, span),
});

export const lossComparison = z.object({
  what: exposure,
  limit: z.number(),
  unit: z.string(),
  label: z.string(),
  exposedLost: z.number().int(),
  exposedKept: z.number().int(),
  otherLost: z.number().int(),
  otherKept: z.number().int(),
  leftOut: z.number().int(),
  /** Fisher's exact test, two-sided; null where only counts may be shown. */
  p: known,
  /** The larger of it and of the chance with whole weeks in any order. */
  chance: known,
  /** Holm's adjustment for all comparisons. */
  adjusted: known,
  difference: z.object({ difference: z.number(), low: z.number(), high: z.number() }).nullable(),
  exposedShare: span.nullable(),
  otherShare: span.nullable(),
  verdict: z.enum(['counts-only', 'worth-a-trial', 'a-hint', 'nothing-to-see']),
  /** The sentences, the finding first, what it is not last. */
  words: z.array(z.string()),
  rival: exposure.nullable(),
  needed: z
    .object({ more: z.number().int(), exposed: z.number().int(), others: z.number().int() })
    .nullable(),
  /** For each case of the family, in order. */
  cases: z.array(z.object({ exposed: z.boolean().nullable(), lost: z.boolean().nullable() })),
});

export const lossLearning = z.object({
  asOf: time,
  from: calendarDay,
  to: calendarDay,
  /** More than this share is a loss to be explained. */
  lossLimit: z.number(),
  exposureDays: z.number().int(),
  /** Comparisons looked at, all families together. */
  tried: z.number().int(),
  words: z.array(z.string()),
  families: z.array(
    z.object({
      unit: comparedUnit,
      name: z.string(),
      /** How many cases, and why some say nothing. */
      words: z.string(),
      cases: z.array(comparedCase),
      comparisons: z.array(lossComparison),
    }),
  ),
});

export const learningRange = z.object({
  from: calendarDay.optional(),
  to: calendarDay.optional(),
});
export const stripsRange = z.object({
  weeks: z.coerce.number().int().min(2).max(53).default(10),
});

export type LossStrips = z.infer<typeof lossStrips>;
export type LossStrip = LossStrips['places'][number];
export type ExposureTerm = z.infer<typeof exposure>;
export type ComparedUnit = z.infer<typeof comparedUnit>;
export type LossComparison = z.infer<typeof lossComparison>;
export type LossLearning = z.infer<typeof lossLearning>;
export type LossFamily = LossLearning['families'][number];
