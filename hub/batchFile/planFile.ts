import type { Batches } from '../batches/index.ts';
import { planEvents } from './planEvents.ts';
import type { PlanAbout, Planned } from './planned.ts';
import { planSimple } from './planSimple.ts';
import { readTable } from './readTable.ts';

export type FilePlan = Planned & {
  /** Columns that say nothing to the hub. */
  readonly ignored: readonly string[];
};

/**
 * What a file of batches would enter: nothing that is there already, and no row that is refused.
 * @throws Error in one sentence for a file that is no table of batches
 */
export function planFile(csv: string, about: PlanAbout): FilePlan {
  const table = readTable(csv);
  const plan = table.form === 'events' ? planEvents : planSimple;
  const { batches, known, refused } = plan(table.rows, about);
  return {
    batches: batches.filter(({ events }) => events.length > 0),
    known,
    refused: refused.toSorted((a, b) => a.line - b.line),
    ignored: table.ignored,
  };
}

/** Enters what was planned, all of it or nothing. @returns the number of entries */
export function enterPlan(
  { batches }: Pick<FilePlan, 'batches'>,
  book: Batches,
  who: string,
  now: number,
): number {
  const adds = batches.flatMap(({ id, facts, events }) =>
    events.map((event) => ({ id, place: facts.place, event })),
  );
  book.addAll(adds, who, now);
  return adds.length;
}
