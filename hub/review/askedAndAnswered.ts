import type { TaskKind } from '../../rules/decide/index.ts';
import type { Task } from '../tasks/index.ts';

/** Tasks of one kind and what became of them; each task is in one of the five counts. */
export type KindAnswered = {
  readonly kind: TaskKind;
  readonly asked: number;
  /** Done by its deadline; a task without one is never late. */
  readonly done: number;
  readonly late: number;
  readonly no: number;
  /** Ended without an answer: no longer needed. */
  readonly lapsed: number;
  readonly open: number;
  /** As the tasks reckoned them. */
  readonly minutesAsked: number;
  readonly minutesDone: number;
  /** What done tasks were to spare; null where none of them named money. */
  readonly spared: SparedRange | null;
  /** Done tasks that named no money. */
  readonly unvalued: number;
};

/**
 * Money that done tasks were expected to spare. `high` counts every task. `low` counts of each
 * place and day the largest only: what two tasks of one day protect may be the same trays.
 */
export type SparedRange = { readonly low: number; readonly high: number };

type Became = 'done' | 'late' | 'no' | 'lapsed' | 'open';

const becameOf = ({ state, answer, endedAt, doBy }: Task): Became => {
  if (state === 'open') return 'open';
  if (answer === 'no') return 'no';
  if (answer !== 'done') return 'lapsed';
  return doBy !== null && endedAt !== null && endedAt > doBy ? 'late' : 'done';
};

/** Counts by kind, those asked most first. @param dayOf the farm's day of an instant */
export function askedAndAnswered(
  tasks: readonly Task[],
  dayOf: (t: number) => string,
): KindAnswered[] {
  const kinds = new Map<TaskKind, Task[]>();
  for (const task of tasks) kinds.set(task.kind, [...(kinds.get(task.kind) ?? []), task]);
  return [...kinds]
    .map(([kind, own]): KindAnswered => {
      const count: Record<Became, number> = { done: 0, late: 0, no: 0, lapsed: 0, open: 0 };
      for (const task of own) count[becameOf(task)] += 1;
      const done = own.filter(({ answer, state }) => state === 'ended' && answer === 'done');
      return {
        ...{ kind, asked: own.length, ...count },
        minutesAsked: minutesOf(own),
        minutesDone: minutesOf(done),
        spared: sparedBy(done, dayOf),
        unvalued: done.filter(({ saves }) => saves.money === null).length,
      };
    })
    .sort((a, b) => b.asked - a.asked || (a.kind < b.kind ? -1 : 1));
}

const minutesOf = (tasks: readonly Task[]) => tasks.reduce((sum, { minutes }) => sum + minutes, 0);

/** null where no task names money. A task that would have cost more than it spared counts as nothing. */
export function sparedBy(done: readonly Task[], dayOf: (t: number) => string): SparedRange | null {
  const largest = new Map<string, number>();
  let high = 0;
  for (const { place, openedAt, saves } of done) {
    if (saves.money === null) continue;
    const money = Math.max(0, saves.money);
    const key = `${place}\n${dayOf(openedAt)}`;
    high += money;
    largest.set(key, Math.max(largest.get(key) ?? 0, money));
  }
  if (largest.size === 0) return null;
  return { low: [...largest.values()].reduce((sum, money) => sum + money, 0), high };
}
