import { z } from 'zod';
import { calendarDay, spot, time } from './terms.ts';

// The season: stations whose past was taken in, odds of frost by date, and when to clear a patch.
// null means unknown, never zero.

const known = z.number().nullable();
const chance = z.number().min(0).max(1).nullable();

export const station = z.object({
  id: z.string(),
  name: z.string(),
  lat: z.number(),
  lon: z.number(),
  altitude: known,
  /** From the farm, km. */
  distance: z.number(),
  form: z.enum(['ghcn-daily', 'isd-lite', 'station-csv']),
  /** Hour at which a daily reader looks; null: midnight. */
  observedAt: z.number().int().nullable(),
  days: z.number().int(),
  first: calendarDay.nullable(),
  last: calendarDay.nullable(),
  importedAt: time,
});

/** Odds of one frost, the season's first or its last, at or below one limit. */
const frostSide = z.object({
  /** Seasons with a known answer, and those of them that had such a frost. */
  seasons: z.number().int(),
  withFrost: z.number().int(),
  /** How chances were made: a fitted curve, counting, or not at all with too few seasons. */
  way: z.enum(['curve', 'counted', 'unknown']),
  missing: z.array(z.string()),
  /** Middle and outer dates in seasons that have one; as days of the season now. */
  dates: z.object({ early: calendarDay, middle: calendarDay, late: calendarDay }).nullable(),
  /** The frost of each past season as a day of this one; null: a season without. */
  past: z.array(z.object({ season: z.number().int(), day: calendarDay.nullable() })),
  /** First: that it has come by this date. Last: that it still comes after this date. */
  curve: z.array(z.object({ day: calendarDay, p: z.number() })),
  /** First: that it comes within so many days, none so far. Last: that one comes after them. */
  ahead: z.array(
    z.object({ days: z.number().int(), day: calendarDay, p: chance, counted: chance }),
  ),
  /** A season in which it has come by today (first), or comes after today (last). */
  today: z.object({ p: chance, in5: chance, in10: chance }),
});

export const frostOutlook = z.object({
  place: z.string(),
  name: z.string(),
  /** Of whose probe the odds are; null where none hangs in the open: then they are the station's. */
  spot: spot.nullable(),
  /** The farm's day these odds are for. */
  day: calendarDay,
  hemisphere: z.enum(['north', 'south']),
  /** Whose record it rests on. */
  station: z.object({ id: z.string(), name: z.string(), distance: z.number() }).nullable(),
  /** Nights measured here so far. */
  nights: z.number().int(),
  /** How the record was fitted to the spot. */
  fitted: z.object({
    way: z.enum(['own', 'dates', 'nights', 'none']),
    /** Seasons, or clear calm nights, that both have. */
    shared: z.number().int(),
    /** Days that dates moved, or kelvins by which the spot is colder (below zero) or warmer. */
    by: known,
  }),
  limits: z.array(
    z.object({
      what: z.enum(['frost', 'damage']),
      /** °C at the spot. */
      at: z.number(),
      /** Which of the two is to come next. */
      current: z.enum(['first', 'last']),
      /** The first frost of this season: when it came, if it did, and nights nobody measured. */
      soFar: z.object({ came: calendarDay.nullable(), unknownNights: z.number().int() }),
      first: frostSide,
      last: frostSide,
    }),
  ),
});

export const fruitStages = ['ripe', 'turning', 'green', 'flower'] as const;
const cohort = z.strictObject({
  stage: z.enum(fruitStages),
  /** kg, of flowers what they are expected to bear. */
  kg: z.number().min(0).max(100_000),
  /** Day on which flowers were tagged open. */
  flowered: calendarDay.optional(),
});
/** What the grower counted in a patch. Kept, never overwritten; the latest count speaks. */
export const fruitCount = z.strictObject({
  cohorts: z.array(cohort).max(20),
  /** Day of the count; today when not told. */
  counted: calendarDay.optional(),
});

/** The grower's own figures of a patch; what is left out goes by the farm file or a usual figure. */
export const patchTerms = z.strictObject({
  /** Money per kg sold. */
  price: z.number().min(0).max(10_000).optional(),
  minutesPerKg: z.number().min(0).max(600).optional(),
  /** Minutes that each picking costs, whatever it yields. */
  minutesPerPicking: z.number().min(0).max(6000).optional(),
  /** Money for each day of holding on. */
  perDay: z.number().min(0).max(10_000).optional(),
  /** Share of the fruit that rots on a wet day, and on a dry one. */
  rotWet: z.number().min(0).max(1).optional(),
  rotDry: z.number().min(0).max(1).optional(),
  /** The same once runners, dead leaves and rotten fruit are out. */
  cleanRotWet: z.number().min(0).max(1).optional(),
  cleanRotDry: z.number().min(0).max(1).optional(),
  cleanMinutes: z.number().min(0).max(6000).optional(),
  cutMinutes: z.number().min(0).max(6000).optional(),
  /** Worth of the disease that goes with the leaves. */
  hygiene: z.number().min(0).max(1_000_000).optional(),
  /** Next year's worth of the patch, and the share lost by cutting green leaves. */
  nextYear: z.number().min(0).max(10_000_000).optional(),
  lostShare: z.number().min(0).max(1).optional(),
  /** Heat units from flower to ripe, learned from tagged flowers. */
  flowerUnits: z.number().min(50).max(2000).optional(),
  bearing: z.enum(['june', 'ever']).optional(),
  lastPicking: calendarDay.optional(),
  leavesFlatAndRed: z.boolean().optional(),
  /** The grower wants it cut all the same. */
  insists: z.boolean().optional(),
});

export type Station = z.infer<typeof station>;
export type FrostSide = z.infer<typeof frostSide>;
export type FrostOutlook = z.infer<typeof frostOutlook>;
export type FruitCount = z.infer<typeof fruitCount>;
export type FruitStage = (typeof fruitStages)[number];
export type PatchTerms = z.infer<typeof patchTerms>;
