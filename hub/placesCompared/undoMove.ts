import { taskKey } from '../../rules/decide/index.ts';
import type { Batches } from '../batches/index.ts';
import type { Store } from '../store/index.ts';
import type { Task } from '../tasks/index.ts';
import { destination } from './makePlacesCompared.ts';

/**
 * Takes back the move that "done" to a task entered: a further entry says so, nothing is removed.
 * @returns whether there was one to take back
 */
export function undoMove(
  { store, batches }: { readonly store: Store; readonly batches: Batches },
  task: Task,
  who: string,
  now: number,
): boolean {
  const to = destination(task);
  if (task.kind !== 'move-trays' || task.answer !== 'done' || to === null) return false;
  return store.transaction(() => {
    if (task.subject === null) {
      const said = store.journal
        .between('trays-moved', (task.endedAt ?? now) - 1, now + 1)
        .findLast(({ subject }) => subject === task.id);
      if (said === undefined || !(said.body as { is: boolean }).is) return false;
      const body = { to, is: false };
      store.journal.add({
        t: now,
        who,
        what: 'trays-moved',
        place: task.place,
        subject: task.id,
        body,
      });
    } else {
      const moved = batches.get(task.subject)?.moves.at(-1);
      if (moved === undefined || moved.place !== to || moved.at !== task.endedAt) return false;
      batches.add(task.subject, task.place, { event: 'undone', entry: moved.entry }, who, now);
    }
    // It was not done after all: it may be asked for again at once.
    store.tasks.dropDecision(taskKey(task));
    return true;
  });
}
