import { z } from 'zod';
import { calendarDay, spot, taskKind, time } from './terms.ts';

// What a season came to. null means unknown, never zero.

const known = z.number().nullable();
const count = z.number().int();

/** Money that done tasks were expected to spare: an estimate, which nobody can check afterwards. */
const spared = z.object({ low: z.number(), high: z.number() }).nullable();

/** Each task asked is in one of done, late, no, lapsed and open. */
const answered = z.object({
  asked: count,
  done: count,
  late: count,
  no: count,
  /** No longer needed before anybody answered. */
  lapsed: count,
  open: count,
  minutesAsked: z.number(),
  minutesDone: z.number(),
  spared,
  /** Done tasks that named no money. */
  unvalued: count,
});

export const reviewRange = z.object({
  from: calendarDay.optional(),
  to: calendarDay.optional(),
});

export const seasonReview = z.object({
  asOf: time,
  farm: z.string(),
  from: calendarDay,
  to: calendarDay,
  /** ISO 4217 */
  money: z.string(),
  /** Stretches to choose from. */
  spans: z.array(z.object({ name: z.string(), from: calendarDay, to: calendarDay })),
  /** The whole in one sentence. */
  sentence: z.string(),
  all: answered.extend({ putOff: count }),
  kinds: z.array(answered.extend({ kind: taskKind, name: z.string() })),
  lost: z.object({
    entries: count,
    money: z.number(),
    /** Losses whose worth is not known. */
    withoutMoney: count,
    kg: z.number(),
    withoutKg: count,
    rows: z.array(
      z.object({
        place: z.string(),
        placeName: z.string(),
        crop: z.string(),
        name: z.string(),
        looked: z.string(),
        entries: count,
        kg: known,
        money: known,
      }),
    ),
  }),
  forecasts: z.array(
    z.object({
      place: z.string(),
      name: z.string(),
      spot,
      method: z.string(),
      nights: count,
      below: count,
      misses: count,
      falseAlarms: count,
      /** K */
      error: known,
      words: z.string(),
    }),
  ),
  /** Written down by people; `without` is work with no minutes beside it. */
  written: z.object({
    batches: z.object({ minutes: z.number(), without: count }),
    pickings: z.object({ minutes: z.number(), without: count }),
  }),
  alarms: z.array(
    z.object({
      kind: z.string(),
      name: z.string(),
      raised: count,
      seen: count,
      neverSeen: count,
      minutesToSeen: known,
      slowest: known,
      falseOnes: count,
    }),
  ),
  /** Time without readings, from the first measured day on. */
  unread: z.array(
    z.object({
      place: z.string(),
      name: z.string(),
      days: count,
      hours: known,
      /** Of those days, 0..1. */
      share: known,
    }),
  ),
  notes: z.array(z.string()),
});

export type SeasonReview = z.infer<typeof seasonReview>;
