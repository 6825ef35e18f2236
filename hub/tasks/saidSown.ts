import type { Evidence } from '../../rules/decide/index.ts';
import type { Store } from '../store/index.ts';
import type { Task } from './task.ts';

/** What was answered to a task that asks to sow, and the sowings it asked for. */
export type SownSaid = {
  readonly answer: 'done' | 'no';
  readonly rows: readonly { readonly crop: string; readonly delivery: string }[];
};

/**
 * Writes down that somebody sowed, or will not: the plan goes on wanting the trays until they are
 * entered as a batch, and these sowings are not asked for again meanwhile.
 */
export function saidSown(
  store: Store,
  task: Task,
  answer: SownSaid['answer'],
  who: string,
  t: number,
) {
  if (task.kind !== 'sow') return;
  const body: SownSaid = { answer, rows: rowsOf(task.because) };
  store.journal.add({ t, who, what: 'sowing-said', place: task.place, subject: task.id, body });
}

/** Each sowing tells its crop, then for which delivery it is. */
function rowsOf(because: readonly Evidence[]): SownSaid['rows'] {
  let crop: Evidence['value'] = null;
  const rows: { crop: string; delivery: string }[] = [];
  for (const { what, value } of because) {
    if (what === 'sow-crop') crop = value;
    else if (what === 'sow-for' && crop !== null && value !== null)
      rows.push({ crop: String(crop), delivery: String(value) });
  }
  return rows;
}
