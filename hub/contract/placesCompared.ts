import { z } from 'zod';
import { calendarDay, placeKind } from './terms.ts';

// Where a crop does best: places compared. Hours are hours a day; [least, most] where some are not
// known. null means unknown, never zero.

const known = z.number().nullable();
const bounds = z.tuple([z.number(), z.number()]).readonly();

/** What places gave on average over the days that are known enough. */
export const placeTally = z.object({
  days: z.number().int(),
  /** Days of which too little is known. */
  leftOut: z.array(calendarDay).readonly(),
  inBand: bounds,
  hot: bounds,
  cold: bounds,
  wet: bounds,
  /** Of the wet hours, those in the band: hot, cold, these and the ones in the band make the day. */
  wetInBand: bounds,
  /** Over the crop's limit or under its chill. */
  hurt: bounds,
  unknown: z.number(),
  /** Wet hours of days on which the weather suited one of the crop's diseases. */
  disease: bounds.nullable(),
  /** Days it surely suited one, and days it may have. */
  diseaseDays: bounds.nullable(),
  lowest: known,
  highest: known,
});

/** With its interval, nineteen times of twenty; low and high null with fewer than three. */
const interval = z.object({
  n: z.number().int(),
  mean: z.number(),
  low: known,
  high: known,
});
/** Paired day by day: how much more the second place had. */
const apart = z
  .object({ mean: z.number(), low: z.number(), high: z.number(), worth: z.number() })
  .nullable();

export const placeForCrop = z.object({
  place: z.string(),
  name: z.string(),
  kind: placeKind,
  /** null: no day is known enough. */
  tally: placeTally.nullable(),
  /** The same weeks of past years, where they were measured. */
  before: placeTally.nullable(),
  yearsBefore: z.array(z.string()),
  trays: z.number().int(),
  capacity: z.number().int().nullable(),
  /** null: nobody told what it holds. */
  free: z.number().int().nullable(),
  /** What finished batches of the crop gave that stood there; null without any. */
  gave: z
    .object({
      batches: z.number().int(),
      /** kg */
      perTray: interval.nullable(),
      days: interval.nullable(),
      /** Share, 0..1. */
      lost: interval.nullable(),
    })
    .nullable(),
  /** All of it in words. */
  words: z.array(z.string()),
});

export const placesPair = z.object({
  from: z.string(),
  to: z.string(),
  days: z.number().int(),
  leftOut: z.array(calendarDay).readonly(),
  /** Score: hours in the band with dry leaves, less each hot hour and half of each wet one. */
  score: apart,
  inBand: apart,
  hot: apart,
  cold: apart,
  wet: apart,
  disease: apart,
  /** The score in the same weeks of past years. */
  before: apart,
  /** Of the second place. */
  says: z.enum(['better', 'worse', 'no-difference', 'unknown']),
  words: z.string(),
});

/** Trays that stand somewhere, and what the rule on moving them says now. */
export const traysThere = z.object({
  /** null: told in the farm file. */
  batch: z.string().nullable(),
  crop: z.string(),
  name: z.string(),
  place: z.string(),
  trays: z.number().int(),
  daysLeft: known,
  verdict: z.enum(['act', 'leave', 'unknown']).nullable(),
  to: z.string().nullable(),
  words: z.string(),
});

export const placesCompared = z.object({
  crop: z.string(),
  name: z.string(),
  /** Crops that can be asked for, those that stand somewhere first. */
  crops: z.array(z.object({ crop: z.string(), name: z.string() })),
  band: bounds,
  heatLimit: known,
  chill: known,
  /** Days asked for, from and to; today is left out. */
  days: z.number().int(),
  from: calendarDay,
  to: calendarDay,
  /** In the farm file's order. */
  places: z.array(placeForCrop),
  pairs: z.array(placesPair),
  /** The place with the best score; null where nothing can be said. */
  best: z.string().nullable(),
  /** Whether it was better than every other: nineteen times of twenty. */
  sure: z.boolean(),
  sentence: z.string(),
  standing: z.array(traysThere),
  /** How a saving is estimated. */
  saving: z.string(),
});

export type PlaceTally = z.infer<typeof placeTally>;
export type PlaceForCrop = z.infer<typeof placeForCrop>;
export type PlacesPair = z.infer<typeof placesPair>;
export type TraysThere = z.infer<typeof traysThere>;
export type PlacesCompared = z.infer<typeof placesCompared>;
