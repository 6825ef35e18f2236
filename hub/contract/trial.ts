import { z } from 'zod';
import { calendarDay, id, taskKind, time } from './terms.ts';

// A limit tried on the past.

/** Limits that can be tried, by whose they are. */
export const placeLimits = [
  'wet-at',
  'wet-below',
  'wet-hours',
  'cover-minutes',
  'cover-value',
  'cover-damage',
  'set-point',
  'room-limit',
] as const;
export const cropLimits = ['heat-limit', 'band-top', 'chill'] as const;
export const farmLimits = ['wage'] as const;

export const trialChange = z.strictObject({
  what: z.enum([...placeLimits, ...cropLimits, ...farmLimits]),
  /** Id of the place or the crop; null for the whole farm. */
  of: id.nullable(),
  to: z.number(),
});

export const startTrial = z.strictObject({
  changes: z.array(trialChange).min(1).max(200),
  /** Days of the farm, both with it; the last year where left out. */
  from: calendarDay.optional(),
  to: calendarDay.optional(),
});

const count = z.number().int();
/** What one set of limits would have asked for. */
const side = z.object({
  /** Days on which a task stood. */
  days: z.array(calendarDay),
  tasks: count,
  minutes: z.number(),
});

/** Losses of a place that looked alike, and how many had such a task in the seven days before. */
const lossSide = z.object({ look: z.string(), entries: count, before: count, after: count });

export const trialRow = z.object({
  place: z.string(),
  name: z.string(),
  kind: taskKind,
  kindName: z.string(),
  before: side,
  after: side,
  losses: z.array(lossSide),
  /** One sentence; null where nothing differs. */
  words: z.string().nullable(),
});

export const trial = z.object({
  id: z.string(),
  state: z.enum(['running', 'done', 'canceled', 'failed']),
  /** 0..1 */
  progress: z.number(),
  /** The place that was walked last. */
  place: z.string().nullable(),
  why: z.string().nullable(),
  startedAt: time,
  from: calendarDay,
  to: calendarDay,
  changes: z.array(trialChange.extend({ from: z.number(), words: z.string() })),
  result: z
    .object({
      rows: z.array(trialRow),
      losses: z.array(
        z.object({ place: z.string(), name: z.string(), day: calendarDay, words: z.string() }),
      ),
      words: z.array(z.string()),
      /** What a trial leaves out. */
      notes: z.array(z.string()),
    })
    .nullable(),
  /** What keeping it would change of the farm as it stands now; null until it is done. */
  keeping: z.object({ changes: z.array(z.string()), fault: z.string().nullable() }).nullable(),
});

/** A limit as it stands, for a page that offers to try another. */
export const limitNow = z.object({
  what: trialChange.shape.what,
  of: trialChange.shape.of,
  /** Whose it is, and what it is, in words. */
  name: z.string(),
  limit: z.string(),
  value: z.number(),
  unit: z.string(),
  /** A big step. */
  step: z.number(),
  min: z.number(),
  max: z.number(),
  /** Where its value comes from, in words. */
  source: z.string(),
});
export const trialStart = z.object({
  limits: z.array(limitNow),
  /** The days of readings that may be tried, the last year of them; null without any. */
  days: z.object({ from: calendarDay, to: calendarDay }).nullable(),
  /** What is too little for much to be said; null where nothing is. */
  caution: z.string().nullable(),
  /** The own trial that runs or ended last. */
  newest: z.string().nullable(),
});
export const keepTrial = z.strictObject({ why: z.string().trim().max(300).optional() });
export const keptTrial = z.object({ changes: z.array(z.string()) });

export type TrialChange = z.infer<typeof trialChange>;
export type StartTrial = z.infer<typeof startTrial>;
export type TrialRow = z.infer<typeof trialRow>;
export type Trial = z.infer<typeof trial>;
export type LimitNow = z.infer<typeof limitNow>;
export type TrialStart = z.infer<typeof trialStart>;
export type KeepTrial = z.infer<typeof keepTrial>;
export type KeptTrial = z.infer<typeof keptTrial>;
