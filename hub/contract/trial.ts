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

/** Losses of a place, and how many had such a task in the seven days before. */
const lossSide = z.object({ entries: count, before: count, after: count });

export const trialRow = z.object({
  place: z.string(),
  name: z.string(),
  kind: taskKind,
  kindName: z.string(),
  before: side,
  after: side,
  losses: lossSide,
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
      losses: z.array(z.object({ place: z.string(), day: calendarDay, words: z.string() })),
      words: z.array(z.string()),
      /** What a trial leaves out. */
      notes: z.array(z.string()),
    })
    .nullable(),
});

export type TrialChange = z.infer<typeof trialChange>;
export type StartTrial = z.infer<typeof startTrial>;
export type TrialRow = z.infer<typeof trialRow>;
export type Trial = z.infer<typeof trial>;
