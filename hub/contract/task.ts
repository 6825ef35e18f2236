import { z } from 'zod';
import { taskKind, time } from './terms.ts';

/** One number put into a formula; a term for hub/words, and a time as ISO 8601. */
export const input = z.object({
  what: z.string(),
  value: z.union([z.number(), z.string()]).nullable(),
  unit: z.string(),
});

export const evidence = z.object({
  /** A term; hub/words has its label. */
  what: z.string(),
  value: z.union([z.number(), z.string()]).nullable(),
  unit: z.string(),
  limit: z.union([z.number(), z.string()]).nullable(),
  source: z.string(),
  /** Name for /api/methods/{name}; null for what was measured or told. Missing in tasks of old. */
  method: z.string().nullable().optional(),
  inputs: z.array(input).readonly().optional(),
  /** Who set the limit. */
  limitFrom: z.string().nullable().optional(),
});

export const answerWord = z.enum(['done', 'later', 'no']);

export const task = z.object({
  id: z.string(),
  kind: taskKind,
  place: z.string(),
  subject: z.string().nullable(),
  state: z.enum(['open', 'ended']),
  /** What the rule says now; an open task whose rule cannot tell stays open. */
  verdict: z.enum(['act', 'leave', 'unknown']),
  title: z.string(),
  because: z.array(evidence),
  /** The reason in one or two sentences. */
  why: z.string(),
  doBy: time.nullable(),
  from: time.nullable(),
  minutes: z.number(),
  saves: z.object({ amount: z.number().nullable(), money: z.number().nullable() }),
  /** Set while it is an alarm. */
  alarm: z.boolean(),
  /** Care to take, where the work can hurt. */
  caution: z.string().nullable(),
  openedAt: time,
  endedAt: time.nullable(),
  /** An ended task without an answer was no longer needed. */
  answer: answerWord.nullable(),
  /** Put off until then. */
  until: time.nullable(),
});

export const answerTask = z.strictObject({
  answer: answerWord,
  until: time.optional(),
  note: z.string().max(500).optional(),
});

export type Input = z.infer<typeof input>;
export type Evidence = z.infer<typeof evidence>;
export type Task = z.infer<typeof task>;
export type AnswerTask = z.infer<typeof answerTask>;
