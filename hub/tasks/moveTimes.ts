import type { Store } from '../store/index.ts';
import type { Memory, Task } from './task.ts';

/**
 * The clock was put forward by `by` ms (back: negative). How long a reason has been gone, an answer
 * holds or a task is put off are lengths of time, and stay as long as they were.
 */
export function moveTimes(store: Store, by: number) {
  store.transaction(() => {
    for (const [key, body] of store.tasks.decisions()) {
      const { clearSince, answered }: Memory = JSON.parse(body);
      const moved: Memory = {
        clearSince: clearSince === null ? null : clearSince + by,
        answered: answered && { ...answered, at: answered.at + by },
      };
      store.tasks.putDecision(key, JSON.stringify(moved));
    }
    for (const row of store.tasks.open()) {
      const task: Task = JSON.parse(row.body);
      if (task.until !== null)
        store.tasks.put({ ...row, body: JSON.stringify({ ...task, until: task.until + by }) });
    }
  });
}
