import { z } from 'zod';
import { calendarDay, spot, time } from './terms.ts';

// What the frost page shows: tonight as curves on one axis, and how good past forecasts were.

const known = z.number().nullable();
const points = z.array(known);

/** One spot tonight. Times in ms since 1970. */
export const frostCurve = z.object({
  place: z.string(),
  name: z.string(),
  spot,
  /** Measured since the afternoon; a null is a gap and is drawn as one. */
  t: z.array(z.number()),
  temperature: points,
  /** What is expected: 10 %, 50 % and 90 % of the chances. */
  fan: z.array(z.object({ t: z.number(), low: z.number(), middle: z.number(), high: z.number() })),
  low: z.object({ mean: z.number(), sd: z.number(), df: z.number() }),
  /** 10 % and 90 % of the chances of the low. */
  between: z.tuple([z.number(), z.number()]),
  limits: z.array(
    z.object({
      what: z.enum(['damage', 'chill', 'freezing']),
      at: z.number(),
      p: z.number(),
      crossesAt: z.number().nullable(),
    }),
  ),
  nightsLearned: z.number().int(),
  /** The same facts as text. */
  words: z.string(),
});

export const frostTonight = z.object({
  asOf: time,
  now: z.number(),
  from: z.number(),
  to: z.number(),
  night: z.object({ from: z.number(), to: z.number() }).nullable(),
  curves: z.array(frostCurve),
  /** What is covered, closed or not, as somebody said. */
  covers: z.array(
    z.object({
      place: z.string(),
      name: z.string(),
      covered: z.boolean().nullable(),
      /** Nights that tell what the cover adds, and what nine in ten of them reached, K. */
      nights: z.number().int(),
      gain: known,
      words: z.string(),
    }),
  ),
});

const share = z.tuple([z.number(), z.number()]).nullable();
const band = z.object({
  from: z.number(),
  to: z.number(),
  n: z.number().int(),
  happened: z.number().int(),
  /** Interval of the true share, 95 % (Wilson 1927). */
  between: share,
});

/** Forecasts of one kind at one spot, each as it was issued. */
export const methodScores = z.object({
  method: z.string(),
  n: z.number().int(),
  happened: z.number().int(),
  bias: z.number(),
  error: z.number(),
  persistenceError: known,
  inside: z.object({ n: z.number().int(), between: share }),
  brier: z.number(),
  /** Below twenty forecasts there is only the list and the mean score. */
  enough: z.boolean(),
  skill: z.object({ climatology: known, persistence: known }).nullable(),
  bands: z.array(band),
  /** Nights below the limit that no warning came before, and warnings that nothing followed. */
  misses: z.number().int(),
  falseAlarms: z.number().int(),
  /** The newest, newest first. */
  list: z.array(
    z.object({
      night: calendarDay,
      issuedAt: time,
      mean: z.number(),
      p: z.number(),
      at: z.number(),
      low: z.number(),
      below: z.boolean(),
    }),
  ),
  words: z.array(z.string()),
});

export const scorecard = z.object({
  asOf: time,
  spots: z.array(
    z.object({
      place: z.string(),
      name: z.string(),
      spot,
      /** A chance from here on counts as a warning: cost over loss where it was told, else a half. */
      warnFrom: z.number(),
      methods: z.array(methodScores),
    }),
  ),
  /** What each pushed forecast has been worth at each spot. */
  sources: z.array(
    z.object({
      source: z.string(),
      place: z.string(),
      name: z.string(),
      spot,
      nights: z.number().int(),
      error: known,
      ownError: z.number(),
      weight: z.number(),
      words: z.string(),
    }),
  ),
});

export type FrostCurve = z.infer<typeof frostCurve>;
export type FrostTonight = z.infer<typeof frostTonight>;
export type MethodScores = z.infer<typeof methodScores>;
export type Scorecard = z.infer<typeof scorecard>;
