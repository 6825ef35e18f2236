import { z } from 'zod';
import { time } from './terms.ts';

// How a cool room is doing. null means unknown, never zero.

const known = z.number().nullable();

const cause = z.enum(['door', 'unit', 'power', 'controller', 'probe']);

/** One fact, and how it was worked out. */
const evidence = z.object({
  what: z.string(),
  value: z.union([z.number(), z.string()]).nullable(),
  unit: z.string(),
  limit: z.union([z.number(), z.string()]).nullable(),
  source: z.string(),
  method: z.string().nullable().optional(),
  inputs: z
    .array(
      z.object({
        what: z.string(),
        value: z.union([z.number(), z.string()]).nullable(),
        unit: z.string(),
      }),
    )
    .optional(),
  limitFrom: z.string().nullable().optional(),
});

/** Panels and battery worked out line by line. */
const worked = z.object({
  kilowattHours: z.number(),
  panels: z.number(),
  battery: z.number(),
  lines: z.array(z.object({ what: z.string(), value: z.number(), unit: z.string() })),
});

/** Somebody's own numbers for the sheet; what is left out is as usual. */
export const solarAsked = z.object({
  /** Outside less inside of the worst month, K. */
  gap: z.coerce.number().min(0).max(60).optional(),
  sunHours: z.coerce.number().min(0.1).max(12).optional(),
  systemFactor: z.coerce.number().min(0.1).max(1).optional(),
  days: z.coerce.number().min(0).max(60).optional(),
  depth: z.coerce.number().min(0.1).max(1).optional(),
  efficiency: z.coerce.number().min(0.1).max(1).optional(),
});
export const solarSheet = z.object({
  /** What was put in; `gap` null while nothing is measured or told. */
  used: z.object({
    gap: known,
    sunHours: z.number(),
    systemFactor: z.number(),
    days: z.number(),
    depth: z.number(),
    efficiency: z.number(),
  }),
  /** Names of those that somebody gave. */
  own: z.array(z.string()),
  /** null while too few days are known. */
  sheet: worked.nullable(),
});

export const coolRoom = z.object({
  id: z.string(),
  asOf: time.nullable(),
  state: z.enum(['holding', 'warming', 'warm', 'unknown']),
  temperature: known,
  setPoint: z.number(),
  limit: z.number(),
  /** Bottom of the cycle of the last two hours above the set temperature, K. */
  drift: known,
  cause: z.enum([...cause.options, 'unclear']).nullable(),
  /** How sure the cause is; null while nothing is wrong. */
  sure: z.enum(['sure', 'likely', 'cannot-tell']).nullable(),
  /** Every cause that fits what the probes here can see, the likeliest first. */
  among: z.array(cause),
  /** Since when something is wrong. */
  since: time.nullable(),
  evidence: z.array(evidence),
  produceEstimate: known,
  /** Minutes until the air, and the middle of a crate, are at the limit with nothing cooling. */
  holdOver: z.object({
    minutesToLimit: known,
    tauHours: z.number(),
    shortest: known,
    longest: known,
    produceMinutes: known,
    learnedFrom: z.number().int(),
    /** Until the middle of a crate is at the limit, by the short and the long end. */
    produceShortest: known,
    produceLongest: known,
    /** How full the room is by its lots, of the most in four weeks; null where nobody told. */
    contents: z.enum(['empty', 'half', 'full']).nullable(),
    kilograms: known,
    /** Of the stops learned from, those seen with as much in the room as now. */
    sameContents: z.number().int(),
  }),
  aboveLimit: z.object({ hours: z.number(), unknownHours: z.number(), since: time.nullable() }),
  /** Being cooled down after a load, a long opening or a stop, and when it is expected back. */
  pullDown: z.object({ since: time, peak: z.number(), backAt: time.nullable() }).nullable(),
  defrosting: z.boolean(),
  /** What is usual here. `learned` false: defaults until some days are known. */
  habits: z.object({
    learned: z.boolean(),
    days: z.number().int(),
    top: z.number(),
    bottom: z.number(),
    /** Above this it is out of its cycle. */
    line: z.number(),
    /** Of one cycle. */
    minutes: known,
    runningShare: known,
    /** When its timer defrosts, minutes of the UTC day, and how long the air rises for it. */
    defrosts: z.object({ at: z.array(z.number()), minutes: z.number() }).nullable(),
  }),
  energy: z.object({ kWhPerDay: known, dutyCycle: known }),
  /** Whole days on record, oldest first. `gap`: outside less inside, K; `usual`: what the trend's
   *  line gives for that gap, kWh. */
  energyDays: z.array(
    z.object({
      from: time,
      kilowattHours: known,
      gap: known,
      duty: known,
      index: known,
      usual: known,
    }),
  ),
  /** Whether the newest days need more than their weather explains, smoothed, kWh a day. */
  trend: z.object({
    line: z
      .object({
        slope: z.number(),
        slopeLow: z.number(),
        slopeHigh: z.number(),
        intercept: z.number(),
        residualSd: z.number(),
        days: z.number().int(),
        enough: z.boolean(),
      })
      .nullable(),
    above: known,
    share: known,
    signal: z.enum(['more', 'less']).nullable(),
    since: time.nullable(),
  }),
  /** What the set that feeds it burnt in the last 24 hours; null where nobody told what it burns. */
  fuel: z
    .object({
      hours: z.number(),
      litres: z.number(),
      fuel: z.enum(['petrol', 'diesel']),
      litresPerHour: z.number(),
      /** kg from burning it. */
      carbonDioxide: z.number(),
      money: known,
      perKilowattHour: known,
      /** Outside 0.25 to 1.2 L for a kWh: one of the entries should be looked at again. */
      unlikely: z.boolean(),
    })
    .nullable(),
  /** Panels and battery on paper, for a licensed electrician to check. */
  solar: worked.nullable(),
  /** If nothing cooled from now on: when the set has to run, how long, and what that burns. */
  plan: z.object({
    /** By the farm file's plan, or the learned one; always true where there is none. */
    on: z.boolean(),
    planned: z.boolean(),
    /** Local hours it usually runs, learned from past days where the farm file tells none. */
    usual: z.object({ hours: z.array(z.string()), days: z.number().int() }).nullable(),
    changesAt: time.nullable(),
    runAt: time.nullable(),
    runMinutes: known,
    thenHoldsMinutes: known,
    litres: known,
    carbonDioxide: known,
    money: known,
  }),
});

export type CoolRoom = z.infer<typeof coolRoom>;
export type SolarAsked = z.infer<typeof solarAsked>;
export type SolarSheet = z.infer<typeof solarSheet>;
