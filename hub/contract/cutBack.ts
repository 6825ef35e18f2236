import { z } from 'zod';
import { fruitStages, patchTerms } from './season.ts';
import { calendarDay, time } from './terms.ts';

// The planner of a patch: what is still to gain, what may be lost, day by day.

const known = z.number().nullable();

/** A figure the plan rests on, and where it comes from. */
const assumed = z.object({
  what: z.string(),
  value: known,
  unit: z.string(),
  from: z.enum(['told', 'farm-file', 'measured', 'station', 'usual']),
});

export const cutBack = z.object({
  place: z.string(),
  name: z.string(),
  day: calendarDay,
  /** What would have to be known for a plan; empty when there is one. */
  missing: z.array(z.string()),
  counted: z
    .object({
      day: calendarDay,
      who: z.string(),
      cohorts: z.array(
        z.object({
          stage: z.enum(fruitStages),
          kg: z.number(),
          flowered: calendarDay.nullable(),
          /** Heat units still to come; null when nobody can say. */
          units: known,
          ripeOn: calendarDay.nullable(),
        }),
      ),
    })
    .nullable(),
  terms: patchTerms,
  assumed: z.array(assumed),
  /** °C below which the fruit is lost. */
  damage: z.number(),
  /** Whether the first night's chance is tonight's forecast. */
  tonight: z.boolean(),
  rows: z.array(
    z.object({
      day: calendarDay,
      units: z.number(),
      daylight: known,
      frost: z.number(),
      /** That no frost has taken it by then; that a fruit has not rotted by then. */
      survives: z.number(),
      sound: z.number(),
      wet: z.number(),
      /** kg that ripen that day. */
      ripe: z.number(),
      /** Expected money of picking on until that day, and no further. */
      value: z.number(),
      /** Still to gain from that day on; lost to frost, rot and holding by then. */
      toGain: z.number(),
      lost: z.number(),
    }),
  ),
  /** Days between which stopping costs least; null when there is no plan. */
  window: z
    .object({
      from: calendarDay,
      to: calendarDay,
      best: calendarDay,
      value: z.number(),
      /** A later day at which stopping would bring nearly as much; null when there is none. */
      nearly: calendarDay.nullable(),
      reason: z.enum(['nothing-left', 'not-worth', 'rest-not-worth', 'picked-out']),
    })
    .nullable(),
  /** Against doing nothing more: picking on as it is, cleaning first, cutting back now. null: not told what it takes. */
  ways: z.object({ keep: z.number(), clean: known, cut: known }).nullable(),
  mayCut: z.enum(['renovation', 'dormant', 'grower']).nullable(),
  advice: z.enum(['wait', 'pick-on', 'pick-last', 'clean', 'clear-out', 'cut-back', 'unknown']),
  changes: z.array(
    z.object({
      what: z.enum(['price-below', 'price-above', 'frost-sooner', 'wetter']),
      value: z.number(),
      unit: z.string(),
      /** When stopping would be best then. */
      best: calendarDay,
    }),
  ),
});

const outcome = z.object({
  near: z.number().int(),
  early: z.number().int(),
  late: z.number().int(),
  /** Mean money of a season. */
  money: z.number(),
});

export const backtest = z.object({
  state: z.enum(['none', 'running', 'done', 'failed', 'canceled']),
  done: z.number().int(),
  of: z.number().int(),
  startedAt: time.nullable(),
  why: z.string().nullable(),
  result: z
    .object({
      seasons: z.number().int(),
      first: z.number().int(),
      last: z.number().int(),
      /** Days from the frost that count as near. */
      within: z.number().int(),
      rule: outcome,
      averageDate: outcome.extend({ day: calendarDay }),
      /** Mean money of somebody who knew the frost's date. */
      foresight: z.number(),
      years: z.array(
        z.object({
          season: z.number().int(),
          /** Days of the season now. */
          stop: calendarDay,
          frost: calendarDay.nullable(),
          money: z.number(),
        }),
      ),
    })
    .nullable(),
});

export type CutBack = z.infer<typeof cutBack>;
export type Backtest = z.infer<typeof backtest>;
