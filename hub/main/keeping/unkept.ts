import type { Alarm } from '../../alarms/index.ts';
import type { Store } from '../../store/index.ts';
import type { Memory, Plan, Task, Tasks } from '../../tasks/index.ts';

/** What one look wanted to write. */
type Waiting = { readonly plan: Plan; readonly now: number; readonly alarms: readonly Alarm[] };

/**
 * What looks wanted written while the store could not keep anything: counted in at the next look, as
 * if it were there, and written with the first one that can be. So an alarm goes out once, and no
 * task is opened twice.
 */
export function makeUnkept(store: Store, tasks: Tasks) {
  let waiting: Waiting[] = [];
  return {
    isEmpty: () => waiting.length === 0,
    add: (one: Waiting) => {
      waiting.push(one);
    },
    open(): Task[] {
      const open = new Map(tasks.open().map((task) => [task.id, task]));
      for (const { plan } of waiting)
        for (const { task } of plan.steps)
          if (task.state === 'open') open.set(task.id, task);
          else open.delete(task.id);
      return [...open.values()];
    },
    memory(): Map<string, Memory> {
      const all = tasks.memory();
      for (const { plan } of waiting)
        for (const [key, kept] of plan.memory)
          if (kept === null) all.delete(key);
          else all.set(key, kept);
      return all;
    },
    raised(): Alarm[] {
      const raised = new Map<string, Alarm>(store.alarms.raised().map((one) => [one.id, one]));
      for (const { alarms } of waiting)
        for (const alarm of alarms)
          if (alarm.clearedAt === null) raised.set(alarm.id, alarm);
          else raised.delete(alarm.id);
      return [...raised.values()];
    },
    /** Inside the caller's transaction. */
    write() {
      for (const { plan, now, alarms } of waiting) {
        tasks.apply(plan, now);
        for (const alarm of alarms) store.alarms.put(alarm);
      }
    },
    /** After it was committed. */
    written: () => {
      waiting = [];
    },
  };
}
