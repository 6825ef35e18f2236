import type { Instant, Minutes } from './units.ts';

/** One number put into a formula. `what` is a term that hub/words turns into a label. */
export type Input = {
  readonly what: string;
  /** An instant is written as ISO 8601, UTC. null where it was not known. */
  readonly value: number | string | null;
  readonly unit: string;
};

/** One fact a decision rests on. `what` is a term that hub/words turns into a label. */
export type Evidence = {
  readonly what: string;
  readonly value: number | string | null;
  readonly unit: string;
  /** What the value was held against; null where there is no limit to compare with. */
  readonly limit: number | string | null;
  /** Where the formula or the limit comes from. */
  readonly source: string;
  /** Exported function of rules/ that made the value or the verdict; null for what was measured or told. */
  readonly method?: string | null;
  /** What was put in; for a measurement, the probe and the time. */
  readonly inputs?: readonly Input[];
  /** Who set the limit, where `source` tells of the formula; null where there is no limit. */
  readonly limitFrom?: string | null;
};

/** What a task is expected to spare; null where it is not known. `amount` in kg of produce. */
export type Saving = { readonly amount: number | null; readonly money: number | null };

/** The decisions that can wake somebody, by what went wrong. */
export type AlarmKind = 'warm' | 'door' | 'unit' | 'power' | 'probe' | 'frost';

export type TaskKind =
  | 'open-up'
  | 'close-up'
  | 'shade'
  | 'move-trays'
  | 'cover'
  | 'uncover'
  | 'pick-now'
  | 'cut-back'
  | 'water'
  | 'shut-door'
  | 'see-to-unit'
  | 'run-generator'
  | 'move-produce'
  | 'sell-first'
  | 'throw-out'
  | 'sow'
  | 'harvest'
  | 'see-to-probe';

export type Subject = {
  readonly kind: TaskKind;
  /** Id of the place the task is about. */
  readonly place: string;
  /** What else tells two tasks of one kind and place apart (a probe, a spot); null when nothing does. */
  readonly subject: string | null;
};

export type Act = {
  readonly verdict: 'act';
  readonly because: readonly Evidence[];
  /** Earliest moment it makes sense to do it; null for at once. */
  readonly from: Instant | null;
  readonly doBy: Instant | null;
  /** Minutes of work. */
  readonly minutes: Minutes;
  readonly saves: Saving;
  /** Set when it cannot wait for the next look at the list. */
  readonly alarm: AlarmKind | null;
};
export type Leave = { readonly verdict: 'leave'; readonly because: readonly Evidence[] };
export type Unknown = {
  readonly verdict: 'unknown';
  readonly because: readonly Evidence[];
  /** What would have to be known, as terms that hub/words turns into words. */
  readonly missing: readonly string[];
};

export type Answer = Act | Leave | Unknown;
export type Decision = Subject & Answer;

/** The same task has the same key from one look to the next. */
export const taskKey = ({ kind, place, subject }: Subject) =>
  subject === null ? `${kind}:${place}` : `${kind}:${place}:${subject}`;
