import { z } from 'zod';
import { calendarDay, time } from './terms.ts';

// What crops, places, seasons and pickings earn. Money in the farm's currency; null means unknown,
// never zero.

const known = z.number().nullable();
export const yearSeasons = ['winter', 'spring', 'summer', 'autumn'] as const;
const season = z.enum(yearSeasons);
/** Trays that were sown, or pickings of a patch: never counted together. */
const kind = z.enum(['batches', 'pickings']);
export const worthVerdict = z.enum(['pays', 'does-not-pay', 'cannot-tell']);

/** A ratio of sums, and the interval it lies in 8 times in 10; without one from fewer than three. */
const range = z.object({ n: z.number().int(), ratio: z.number(), low: known, high: known });

/** A number an answer rests on, and who says it. `not-needed`: it does not apply. */
const figure = z.object({
  value: known,
  from: z.enum(['written', 'farm-file', 'both', 'lots', 'not-needed', 'unknown']),
});
export const worthFields = [
  'trays',
  'days',
  'kg',
  'lost',
  'storeLost',
  'price',
  'seed',
  'other',
  'minutes',
] as const;
/** What keeps a batch or a picking from being counted. */
export const worthGaps = [
  'lost',
  'price',
  'seed',
  'other',
  'sowing',
  'tending',
  'moving',
  'cutting',
  'packing',
  'minutes',
] as const;

export const worthUnit = z.object({
  id: z.string(),
  of: kind,
  crop: z.string(),
  name: z.string(),
  /** Where it stood longest, or was picked. */
  place: z.string(),
  placeName: z.string(),
  /** In which it was sown, or picked. */
  season,
  /** Day it was sown, or picked; and ended. */
  from: calendarDay,
  to: calendarDay,
  figures: z.record(z.enum(worthFields), figure),
  missing: z.array(z.enum(worthGaps)),
  /** kg */
  sold: known,
  earned: known,
  perTray: known,
  perTrayDay: known,
  perHour: known,
  /** Price per kg at which it just pays its hours. */
  breakEven: known,
  /** What is not known, in words; empty when all is. */
  words: z.string(),
});

export const worthGroup = z.object({
  by: z.enum(['crop', 'place', 'season', 'crop-place', 'crop-season']),
  of: kind,
  crop: z.string().nullable(),
  place: z.string().nullable(),
  season: season.nullable(),
  /** As people call it. */
  name: z.string(),
  /** Ended batches, or pickings; those with everything known, and those left out. */
  units: z.number().int(),
  counted: z.number().int(),
  leftOut: z.number().int(),
  /** Of those counted. */
  sums: z.object({
    trays: z.number(),
    trayDays: z.number(),
    minutes: z.number(),
    kg: z.number(),
    lost: z.number(),
    sold: z.number(),
    revenue: z.number(),
    seed: z.number(),
    other: z.number(),
    earned: z.number(),
  }),
  /** Money, before any wage. */
  perHour: range.nullable(),
  perTray: range.nullable(),
  perTrayDay: range.nullable(),
  /** kg */
  perTrayKg: range.nullable(),
  /** Price per kg at which it just pays its hours. */
  breakEven: range.nullable(),
  /** Of all whose weights are known, 0 to 1. */
  lossShare: known,
  verdict: worthVerdict,
  /** Batches or pickings more until somebody can tell; 0 when told, null when not even fifty would do. */
  moreNeeded: z.number().int().nullable(),
  words: z.string(),
});

/** Whether to go on growing a crop. */
export const stopAnswer = z.object({
  crop: z.string(),
  of: kind,
  name: z.string(),
  answer: z.enum(['go-on', 'stop', 'cannot-tell']),
  perHour: range.nullable(),
  /** Price per kg that would make it pay, and the price now. */
  priceToPay: range.nullable(),
  price: known,
  /** What the same space could carry: the crop that earns most for each tray and day. */
  instead: z
    .object({
      crop: z.string(),
      name: z.string(),
      perTrayDay: range,
      /** It brings more than this crop, or less, or nobody can tell. */
      brings: z.enum(['more', 'less', 'cannot-tell']),
    })
    .nullable(),
  words: z.array(z.string()),
});

/** Whether the next picking of a patch is worth its hours. */
export const pickOnAnswer = z.object({
  place: z.string(),
  placeName: z.string(),
  crop: z.string(),
  name: z.string(),
  /** Of the season that runs: its pickings, and those left out because something is not known. */
  since: calendarDay,
  pickings: z.number().int(),
  leftOut: z.number().int(),
  /** The picking that is asked about. */
  next: calendarDay,
  verdict: worthVerdict,
  /** Expected of it, and the interval: money an hour, kg an hour. */
  perHour: z.object({ expected: z.number(), low: z.number(), high: z.number() }).nullable(),
  speed: z.object({ expected: z.number(), low: z.number(), high: z.number() }).nullable(),
  /** kg an hour below which the hours are not paid. */
  breakEvenSpeed: known,
  /** What the planner of the patch says beside it. */
  planner: z
    .object({
      advice: z.string(),
      best: calendarDay,
      /** That no frost takes the fruit by the next picking. */
      survives: known,
    })
    .nullable(),
  words: z.array(z.string()),
});

export const cropsLearned = z.object({
  asOf: time,
  from: calendarDay.nullable(),
  to: calendarDay.nullable(),
  money: z.string(),
  wage: z.number(),
  confidence: z.number(),
  /** Batches that still stand: they are counted once they have ended. */
  growing: z.number().int(),
  groups: z.array(worthGroup),
  stops: z.array(stopAnswer),
  pickOns: z.array(pickOnAnswer),
  units: z.array(worthUnit),
  /** How it was counted, in words. */
  how: z.array(z.string()),
});

export type YearSeason = (typeof yearSeasons)[number];
export type WorthUnit = z.infer<typeof worthUnit>;
export type WorthGroup = z.infer<typeof worthGroup>;
export type WorthGap = (typeof worthGaps)[number];
export type WorthRange = z.infer<typeof range>;
export type StopAnswer = z.infer<typeof stopAnswer>;
export type PickOnAnswer = z.infer<typeof pickOnAnswer>;
export type CropsLearned = z.infer<typeof cropsLearned>;
