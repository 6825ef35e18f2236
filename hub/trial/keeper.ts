import type { Decision, TaskKind } from '../../rules/decide/index.ts';
import { type Memory, patienceOf, planTasks, type Task } from '../tasks/index.ts';

/** One task that would have come. Times in ms since 1970; `to` is null while it still stood. */
export type WouldAsk = {
  readonly kind: TaskKind;
  readonly from: number;
  readonly to: number | null;
  readonly minutes: number;
};

/**
 * Tasks of one place as the hub keeps them, with its own patience, as if nobody had answered.
 * @param apart ms between two looks: a reason went between them, and the hub would have waited
 *   from there
 */
export function keeper(apart: number) {
  const asked: { kind: TaskKind; from: number; to: number | null; minutes: number }[] = [];
  const running = new Map<string, (typeof asked)[number]>();
  const memory = new Map<string, Memory>();
  let open: Task[] = [];
  return {
    asked: (): readonly WouldAsk[] => asked,
    /** Keys of what stands. */
    standing: () => open.map(({ key }) => key),
    /** Whether this decision has to be taken again: it stands, or has only just gone. */
    holds: (key: string) => running.has(key) || memory.has(key),
    idle: () => open.length === 0 && memory.size === 0,
    take(decisions: readonly Decision[], now: number) {
      const since = new Map([...memory].map(([key, { clearSince }]) => [key, clearSince]));
      const plan = planTasks(open, decisions, memory, now);
      for (const [key, kept] of plan.memory) {
        if (kept === null) memory.delete(key);
        else memory.set(key, kept);
      }
      open = [
        ...plan.fresh,
        ...plan.steps.map(({ task }) => task).filter(({ state }) => state === 'open'),
      ];
      for (const { event, task } of plan.steps) {
        if (event === 'opened') {
          const one = { kind: task.kind, from: now, to: null, minutes: task.minutes };
          running.set(task.key, one);
          asked.push(one);
        }
        if (event === 'lapsed') {
          const one = running.get(task.key);
          const clear = since.get(task.key) ?? now;
          if (one) one.to = Math.min(now, clear - apart / 2 + patienceOf(task.kind).lapse);
          running.delete(task.key);
        }
      }
    },
  };
}
export type Keeper = ReturnType<typeof keeper>;
