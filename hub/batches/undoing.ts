import { undoneIn } from '../journal/index.ts';
import type { Batch, BatchEntry, BatchEvent } from './batch.ts';
import { earliestEntry, leastTrays } from './eventFault.ts';
import { foldBatch } from './foldBatch.ts';

type Undo = { readonly id: string; readonly place: string; readonly event: BatchEvent };
type Ask = { readonly batch: Batch; readonly entry: number };

/** The entry that an undoing, or an undoing of one, is about in the end. */
function about({ entries }: Batch, entry: number): BatchEntry | undefined {
  const found = entries.find(({ id }) => id === entry);
  return found?.body.event === 'undone' && found.body.entry < entry
    ? about({ entries } as Batch, found.body.entry)
    : found;
}

/** What has to be taken back so that an entry counts no more, or counts again. */
function turn({ entries }: Batch, entry: number): number {
  const undone = undoneIn(entries);
  if (!undone.has(entry)) return entry;
  const by = entries.findLast(
    ({ id, body }) => body.event === 'undone' && body.entry === entry && !undone.has(id),
  );
  return by?.id ?? entry;
}

/** The same act as it stands in other batches: trays that left one came to another. */
function twins({ body }: BatchEntry, batch: Batch, all: readonly Batch[]): Ask[] {
  const others = all.filter(({ id }) => id !== batch.id);
  const found = (one: Batch, is: (event: BatchEvent) => boolean): Ask[] =>
    one.entries.filter((entry) => is(entry.body)).map(({ id }) => ({ batch: one, entry: id }));
  if (body.event === 'parted')
    return others
      .filter(({ id }) => id === body.into)
      .flatMap((one) => found(one, ({ event }) => event === 'sown'));
  if (body.event === 'sown' && body.partOf !== null) {
    const from = body.partOf.batch;
    return others
      .filter(({ id }) => id === from)
      .flatMap((one) => found(one, (event) => event.event === 'parted' && event.into === batch.id));
  }
  if (body.event === 'corrected' && body.together !== undefined) {
    const { together } = body;
    return others.flatMap((one) =>
      found(one, (event) => event.event === 'corrected' && event.together === together),
    );
  }
  return [];
}

const holdsMore = ({ parted, cuts, thrownOut, moves }: Batch) =>
  parted.length + cuts.length + thrownOut.length + moves.length > 0;

/**
 * The entries that take back one of a batch: what was done to two batches at once is taken back in
 * both.
 * @returns a sentence instead where that would leave trays that never were
 */
export function undoing(batch: Batch, entry: number, all: readonly Batch[]): Undo[] | string {
  const wrong = `Expected an entry of ${batch.id} that holds in undo, got ${entry}`;
  const first = about(batch, entry);
  if (!first || undoneIn(batch.entries).has(entry)) return wrong;
  const back = !undoneIn(batch.entries).has(first.id);
  const asks = [
    { batch, entry: first.id },
    ...twins(first, batch, all).filter(
      (twin) => undoneIn(twin.batch.entries).has(twin.entry) !== back,
    ),
  ];
  const undos: Undo[] = [];
  for (const { batch: one, entry: said } of asks) {
    const event: BatchEvent = { event: 'undone', entry: turn(one, said) };
    const after = foldBatch(one.id, [
      ...one.entries,
      { id: Number.MAX_SAFE_INTEGER, t: 0, who: '', body: event },
    ]);
    if (after === null) return wrong;
    if (leastTrays(after) > after.trays)
      return `Expected an entry that can be taken back in undo, got ${entry}: ${one.id} would have ${leastTrays(after)} of ${after.trays} trays gone`;
    if (back && first.body.event === 'parted' && one !== batch && holdsMore(one))
      return `Expected ${one.id} with nothing entered of it since in undo, got ${entry}: take that back first`;
    if (after.sownAt > earliestEntry(after))
      return `Expected an entry that can be taken back in undo, got ${entry}: ${one.id} would be sown after what was done with it`;
    const gone = after.state === 'withdrawn' && one.state !== 'withdrawn';
    if (gone && one.parted.length > 0)
      return `Expected a batch that no trays were carried off from in undo, got ${entry}: take back ${one.parted.map(({ into }) => into).join(', ')} first`;
    if (gone && one.partOf !== null && holdsMore(one))
      return `Expected ${one.id} with nothing entered of it since in undo, got ${entry}: take that back first`;
    undos.push({ id: one.id, place: one.place, event });
  }
  return undos;
}
