import type { TaskKind } from '../../rules/decide/index.ts';

const MINUTE = 60_000;
const HOUR = 60 * MINUTE;

export type Patience = {
  /** A reason must be gone this long before the task is no longer needed. */
  readonly lapse: number;
  /** After "done", the reason may stay this long before the task is asked again. */
  readonly done: number;
  /** After "not doing", likewise. */
  readonly no: number;
};

const usual: Patience = { lapse: 30 * MINUTE, done: 2 * HOUR, no: 12 * HOUR };

// All ours, from no source: long enough that nothing flickers, short enough that a thing done in
// vain comes back while it can still be mended.
const patience: Partial<Record<TaskKind, Patience>> = {
  uncover: { lapse: 15 * MINUTE, done: 2 * HOUR, no: 6 * HOUR },
  // A patch that was cleared stays cleared; by then somebody has counted again.
  'cut-back': { lapse: 12 * HOUR, done: 14 * 24 * HOUR, no: 14 * 24 * HOUR },
  // What was answered is not asked for again (saidSown); what is due beside it is, at once.
  sow: { lapse: 30 * MINUTE, done: 0, no: 0 },
  // Cut and not entered: asked again the next day.
  harvest: { lapse: 30 * MINUTE, done: 18 * HOUR, no: 24 * HOUR },
  'shut-door': { lapse: 5 * MINUTE, done: 15 * MINUTE, no: 2 * HOUR },
  'run-generator': { lapse: 10 * MINUTE, done: 30 * MINUTE, no: 2 * HOUR },
  'see-to-unit': { lapse: 30 * MINUTE, done: 2 * HOUR, no: 4 * HOUR },
  'move-produce': { lapse: 15 * MINUTE, done: 1 * HOUR, no: 2 * HOUR },
  // Ten days are compared, so a better place is better for days; carrying is no small matter.
  'move-trays': { lapse: 12 * HOUR, done: 7 * 24 * HOUR, no: 7 * 24 * HOUR },
  // A day's watering; a probe below the roots may feel it late.
  water: { lapse: 30 * MINUTE, done: 12 * HOUR, no: 12 * HOUR },
  // Asked once a day.
  shade: { lapse: 1 * HOUR, done: 12 * HOUR, no: 12 * HOUR },
  'see-to-probe': { lapse: 10 * MINUTE, done: 1 * HOUR, no: 72 * HOUR },
};

export const patienceOf = (kind: TaskKind): Patience => patience[kind] ?? usual;
