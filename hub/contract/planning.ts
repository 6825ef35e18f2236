import { z } from 'zod';
import { calendarDay, id, time } from './terms.ts';

// The plan of the coming weeks: what is wanted on delivery days, what covers it, what is to be sown.
// Weights in kg, money in the farm's currency, chances 0 to 1; null means unknown, never zero.

const known = z.number().nullable();
const chance = z.number().min(0).max(1).nullable();
const day = calendarDay;

/** Why some of what is wanted is in no sowing. */
export const shortReason = z.enum([
  'no-past-batches',
  'no-weight',
  'too-late',
  'no-room',
  'beyond-the-days',
  'no-place',
  'too-cold',
  'too-warm',
  'no-climate',
  'little',
]);

export const plannedSowing = z.object({
  /** Day to sow on. */
  day,
  /** Its right day is past. */
  late: z.boolean(),
  crop: z.string(),
  name: z.string(),
  place: z.string(),
  placeName: z.string(),
  trays: z.number().int(),
  /** Expected of all its trays. */
  kg: z.number(),
  delivery: day,
  /** Chance of being ready in time, and of being ready before it keeps. */
  ready: chance,
  tooEarly: chance,
  /** Half of it, sown on that day instead, would not be over early; null where one sowing will do. */
  second: z.object({ day, trays: z.number().int() }).nullable(),
  /** Past batches it rests on; 0: on the days told in the farm file. */
  batches: z.number().int(),
  minutes: known,
  /** Money for seed. */
  seed: known,
  /** What somebody answered when it was asked for; it waits to be entered as a batch. */
  answered: z.enum(['done', 'no']).nullable(),
  words: z.string(),
});

const want = z.object({
  /** A crop or a mix. */
  of: z.string(),
  name: z.string(),
  kg: z.number(),
  /** By the farm file; null where it wants none on such a day. */
  usual: known,
  change: z.object({ entry: z.number().int(), who: z.string(), at: time }).nullable(),
});

const part = z.object({
  crop: z.string(),
  name: z.string(),
  /** Wanted of it, alone and in mixes. */
  kg: z.number(),
  /** By batches that grow and lots that are stored. */
  covered: z.number(),
  /** Of it, what has to be sown still, and what is in no sowing. */
  toSow: z.number(),
  short: z.number(),
  sources: z.array(
    z.object({ kind: z.enum(['batch', 'lot']), id: z.string(), kg: z.number(), words: z.string() }),
  ),
  shortfalls: z.array(
    z.object({
      kg: z.number(),
      trays: z.number().int(),
      reason: shortReason,
      words: z.string(),
    }),
  ),
  chanceShort: chance,
});

export const plannedDelivery = z.object({
  day,
  wants: z.array(want),
  parts: z.array(part),
  /** `short`: some of it is in no sowing; `to-sow`: all of it will be, if the plan is kept to. */
  state: z.enum(['nothing', 'covered', 'to-sow', 'short']),
  chanceShort: chance,
  words: z.string(),
});

export const sowingPlanShown = z.object({
  asOf: time,
  today: day,
  weeks: z.number().int(),
  /** In the order of their days. */
  sowings: z.array(plannedSowing),
  deliveries: z.array(plannedDelivery),
  /** What sowing takes, by week (its first day, a Monday unless the farm begins weeks otherwise). */
  work: z.array(z.object({ from: day, trays: z.number().int(), minutes: known, seed: known })),
  rooms: z.array(
    z.object({
      place: z.string(),
      name: z.string(),
      capacity: z.number().int(),
      /** Trays that fit beside what grows, today and for the days that follow; nothing of this plan in it. */
      free: z.array(z.number().int()),
      words: z.string(),
    }),
  ),
  /** Crops and mixes that can be wanted. */
  products: z.array(z.object({ id: z.string(), name: z.string() })),
  /** What would have to be told first; empty where there is a plan. */
  missing: z.array(z.string()),
});

export const planWeeks = z.object({ weeks: z.coerce.number().int().min(1).max(12).default(6) });

/** What is wanted on one day, or an entry to take back. */
export const changeWant = z.union([
  z.strictObject({ day, of: id, kg: z.number().min(0).max(100_000) }),
  z.strictObject({ day, of: id, undo: z.number().int().positive() }),
]);

export const calendarFeed = z.object({
  /** Whether some address leads to the calendar. */
  open: z.boolean(),
  /** The address without the hub's own name; only in the answer that made it. */
  path: z.string().nullable(),
  words: z.string(),
});

const line = z.string();
export const weekSheet = z.object({
  farm: z.string(),
  from: day,
  to: day,
  asOf: time,
  days: z.array(
    z.object({
      day,
      sow: z.array(line),
      harvest: z.array(line),
      deliver: z.array(line),
      /** What of it is in no sowing. */
      short: z.array(line),
      /** Lows and chances of frost, for the night that ends that morning. */
      frost: z.array(line),
      /** Tasks whose deadline is that day. */
      tasks: z.array(line),
    }),
  ),
  /** Open tasks without a day. */
  anyDay: z.array(line),
  notes: z.array(line),
});
export const weekFrom = z.object({ from: day.optional() });

export type ShortReason = z.infer<typeof shortReason>;
export type PlannedSowing = z.infer<typeof plannedSowing>;
export type PlannedDelivery = z.infer<typeof plannedDelivery>;
export type SowingPlanShown = z.infer<typeof sowingPlanShown>;
export type ChangeWant = z.infer<typeof changeWant>;
export type CalendarFeed = z.infer<typeof calendarFeed>;
export type WeekSheet = z.infer<typeof weekSheet>;
