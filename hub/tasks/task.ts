import type { AlarmKind, Evidence, Saving, TaskKind } from '../../rules/decide/index.ts';

/** A task as it is kept. Times in ms since 1970. */
export type Task = {
  readonly id: string;
  readonly key: string;
  readonly kind: TaskKind;
  readonly place: string;
  readonly subject: string | null;
  readonly state: 'open' | 'ended';
  readonly verdict: 'act' | 'leave' | 'unknown';
  readonly because: readonly Evidence[];
  readonly missing: readonly string[];
  readonly from: number | null;
  readonly doBy: number | null;
  readonly minutes: number;
  readonly saves: Saving;
  readonly alarm: AlarmKind | null;
  readonly openedAt: number;
  readonly endedAt: number | null;
  readonly answer: 'done' | 'later' | 'no' | null;
  /** Put off until then. */
  readonly until: number | null;
};

export type TaskEventName = 'opened' | 'changed' | 'lapsed' | 'done' | 'no' | 'later';

/** What one decision has been saying from look to look. */
export type Memory = {
  /** When it first said "leave" since it last said "act"; null while it says "act". */
  readonly clearSince: number | null;
  /** The last answer to it, while its reason has not gone since. */
  readonly answered: { readonly answer: 'done' | 'no'; readonly at: number } | null;
};
export const NO_MEMORY: Memory = { clearSince: null, answered: null };

/** A change to carry out; `task` is how it stands afterwards. */
export type Step = { readonly event: TaskEventName; readonly task: Task };

export type Plan = {
  readonly steps: readonly Step[];
  /** Open tasks as they stand now, with today's evidence; nothing of it needs keeping. */
  readonly fresh: readonly Task[];
  /** What to remember of each decision; null: nothing any more. */
  readonly memory: ReadonlyMap<string, Memory | null>;
};
