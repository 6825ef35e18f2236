import { TONIGHT } from '../../rules/decide/index.ts';

import type { Store, TaskRow } from '../store/index.ts';
import { movedTrays } from './movedTrays.ts';
import { saidSown } from './saidSown.ts';
import { type Memory, NO_MEMORY, type Plan, type Step, type Task } from './task.ts';

const rowOf = (task: Task): TaskRow => ({
  id: task.id,
  key: task.key,
  state: task.state,
  body: JSON.stringify(task),
  openedAt: task.openedAt,
  endedAt: task.endedAt,
});
const taskOf = (row: TaskRow): Task => JSON.parse(row.body);

export type Answer = {
  readonly answer: 'done' | 'later' | 'no';
  readonly until: number | null;
  readonly note: string | null;
};

/** Tasks in the store, and what was said of them in the journal. */
export function makeTasks(store: Store) {
  const write = ({ event, task }: Step, t: number, who: string, note: string | null = null) => {
    store.tasks.put(rowOf(task));
    store.journal.add({
      t,
      who,
      what: 'task',
      place: task.place,
      subject: task.id,
      body: { id: task.id, kind: task.kind, event, ...(note ? { note } : {}) },
    });
  };
  const remember = (key: string, memory: Memory | null) =>
    memory === null
      ? store.tasks.dropDecision(key)
      : store.tasks.putDecision(key, JSON.stringify(memory));

  return {
    open: (): Task[] => store.tasks.open().map(taskOf),
    endedSince: (t: number): Task[] => store.tasks.endedSince(t).map(taskOf),
    endedOf: (kind: Task['kind'], t: number): Task[] => store.tasks.endedOf(kind, t).map(taskOf),
    /** Those opened from `from` on and before `to`, whatever became of them; oldest first. */
    openedBetween: (from: number, to: number): Task[] =>
      store.tasks.openedBetween(from, to).map(taskOf),
    get: (id: string): Task | undefined => {
      const row = store.tasks.get(id);
      return row && taskOf(row);
    },
    memory: (): Map<string, Memory> =>
      new Map([...store.tasks.decisions()].map(([key, body]) => [key, JSON.parse(body)])),

    /** Carries out a plan; inside the caller's transaction. */
    apply({ steps, memory }: Plan, now: number) {
      for (const step of steps) write(step, now, 'hub');
      for (const [key, kept] of memory) remember(key, kept);
    },

    /** What a person answers; nothing is changed when it was answered or lapsed already. */
    answer(task: Task, { answer, until, note }: Answer, who: string, now: number): Task {
      const ended = answer !== 'later';
      const next: Task = {
        ...task,
        state: ended ? 'ended' : 'open',
        endedAt: ended ? now : null,
        answer,
        until: ended ? null : until,
      };
      store.transaction(() => {
        write({ event: answer, task: next }, now, who, note);
        // What lapsed before this was told has a memory of its own by now.
        if (ended && task.state === 'open')
          remember(task.key, { ...NO_MEMORY, answered: { answer, at: now } });
        if (answer === 'done') says(store, task, who, now);
        if (answer === 'done') movedTrays(store, task, who, now);
        if (answer !== 'later') saidSown(store, task, answer, who, now);
      });
      return next;
    },
  };
}
export type Tasks = ReturnType<typeof makeTasks>;

/** What "done" tells about vents, covers and shade, for the next decisions. */
const told: Partial<Record<Task['kind'], { what: string; is: boolean }>> = {
  'open-up': { what: 'vents', is: true },
  'close-up': { what: 'vents', is: false },
  cover: { what: 'covers', is: true },
  uncover: { what: 'covers', is: false },
  shade: { what: 'shade', is: true },
};

function says(store: Store, task: Task, who: string, t: number) {
  const fact = told[task.kind];
  // What was said later, and sent sooner, holds.
  const newest = fact && store.journal.newestOf(task.place, fact.what);
  if (fact && (newest === undefined || newest.t <= t))
    store.journal.add({
      t,
      who,
      what: fact.what,
      place: task.place,
      subject: null,
      body: { is: fact.is, ...(task.subject === TONIGHT ? { overnight: true } : {}) },
    });
}
