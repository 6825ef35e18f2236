import type { BatchEvent } from '../batches/index.ts';
import type { Store } from '../store/index.ts';
import type { Task } from './task.ts';

/**
 * "Done" to a task that asks to carry trays is a move: it is entered in the batch's journal, in the
 * same commit as the answer. Where nobody keeps batches the move itself is written down. Minutes
 * are entered only where the farm file tells them; a guess of ours is no record.
 */
export function movedTrays(store: Store, task: Task, who: string, t: number) {
  if (task.kind !== 'move-trays') return;
  const said = (what: string) => task.because.find((fact) => fact.what === what);
  const to = said('move-to')?.inputs?.find(({ what }) => what === 'place')?.value;
  if (typeof to !== 'string') return;
  const { subject, place } = task;
  if (subject === null) {
    const body = { to, is: true };
    store.journal.add({ t, who, what: 'trays-moved', place, subject: task.id, body });
    return;
  }
  const told = said('carrying-minutes');
  const isTold = told?.inputs?.some(
    ({ what, value }) => what === 'minutes-from' && value === 'told',
  );
  const minutes = isTold && typeof told?.value === 'number' ? told.value : null;
  const body: BatchEvent = { event: 'moved', place: to, at: t, minutes };
  store.journal.add({ t, who, what: 'batch', place: to, subject, body });
}
