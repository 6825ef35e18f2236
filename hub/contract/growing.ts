import { z } from 'zod';
import { cutStage } from './batches.ts';
import { calendarDay, id, time } from './terms.ts';

// When batches are ready, and what crops need. Heat units in °C d; null means unknown, never zero.

const known = z.number().nullable();
const span = z.object({ mean: z.number(), low: z.number(), high: z.number() });

export const heatBase = z.object({
  /** °C between which heat units are counted; no upper limit where it is null. */
  lower: z.number(),
  upper: known,
  /** `own`: learned from own sowings; `told`: in the farm file; `usual`: 10 °C, for want of better. */
  from: z.enum(['own', 'told', 'table', 'usual']),
  /** What own sowings say: learned, or why not yet. */
  verdict: z.enum(['learned', 'too-few', 'too-alike', 'undetermined', 'too-cold', 'too-far']),
  /** Lowest and highest of four ways to learn it. */
  range: z.object({ low: z.number(), high: z.number() }).nullable(),
  sowings: z.number().int(),
});

export const readyStage = z.object({
  stage: cutStage,
  /** When somebody saw it ready. */
  seenAt: time.nullable(),
  soFar: known,
  /** Heat units it takes, with the same confidence. */
  need: span.nullable(),
  /** Days; the expected one is null while plants only stand for want of light. */
  expected: calendarDay.nullable(),
  early: calendarDay.nullable(),
  late: calendarDay.nullable(),
  at: z.object({
    early: time.nullable(),
    expected: time.nullable(),
    late: time.nullable(),
  }),
  confidence: z.number(),
  /** Own batches it was learned from; trays of one sowing count as one. */
  learnedFrom: z.number().int(),
  /** Whether all of those were noted when they were ready, or some only when they were cut. */
  counted: z.enum(['noted', 'cut']).nullable(),
  byLight: z.enum(['probe', 'date']).nullable(),
  method: z.enum(['own batches', 'told days', 'unknown']),
  /** What tells of the coming days: past years, what is usual, or the last days. */
  weather: z.enum(['years', 'usual', 'lately']).nullable(),
  unknownHours: z.number(),
  standing: z.boolean(),
  missing: z.array(z.enum(['no past', 'no heat', 'no weather', 'too far', 'ended'])),
  /** All of it in words. */
  words: z.string(),
});

/** With `courses`, the heat of each day so far, as of one batch. */
export const readyQuery = z.object({ courses: z.stringbool().default(false) });

export const batchReady = z.object({
  batch: z.string(),
  crop: id,
  name: z.string(),
  place: id,
  placeName: z.string(),
  asOf: time,
  sownAt: time,
  base: heatBase,
  later: readyStage,
  /** Where the crop is also cut young. */
  young: readyStage.nullable(),
});

export const batchCourse = batchReady.extend({
  /** Heat units by the end of each day since it was sown, °C d. */
  lived: z.array(z.object({ day: calendarDay, degreeDays: known })),
});

const figure = z.object({ value: z.number(), low: known, high: known });
/** What cutting at one stage brings; low and high are an 80 % interval of the mean, from three cuts on. */
export const stageFigures = z.object({
  stage: cutStage,
  /** Own batches cut at that stage; 0: as the farm file tells. */
  batches: z.number().int(),
  grams: figure.nullable(),
  days: figure.nullable(),
  moneyPerTray: figure.nullable(),
  moneyPerTrayDay: figure.nullable(),
});

export const cropGrowing = z.object({
  crop: id,
  name: z.string(),
  base: heatBase,
  need: z.object({
    later: span.extend({ batches: z.number().int() }).nullable(),
    young: span.extend({ batches: z.number().int() }).nullable(),
  }),
  past: z.array(
    z.object({
      batch: z.string(),
      stage: cutStage,
      place: id,
      placeName: z.string(),
      sownAt: time,
      readyAt: time,
      seen: z.enum(['noted', 'cut']),
      /** null where too much of its time was not measured. */
      degreeDays: known,
      days: z.number(),
      unknownHours: z.number(),
      /** kg a tray. */
      perTray: known,
    }),
  ),
  stages: z.array(stageFigures),
  money: z.string(),
});

export type ReadyStage = z.infer<typeof readyStage>;
export type BatchReady = z.infer<typeof batchReady>;
export type BatchCourse = z.infer<typeof batchCourse>;
export type StageFigures = z.infer<typeof stageFigures>;
export type CropGrowing = z.infer<typeof cropGrowing>;
