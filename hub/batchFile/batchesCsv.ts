import type { Batch, BatchEntry } from '../batches/index.ts';
import { undoneIn } from '../journal/index.ts';
import { csv } from '../record/index.ts';
import { COLUMNS, type Column, guard } from './columns.ts';

type Cells = Partial<Record<Column, string | number | null>>;

const iso = (t: number) => new Date(t).toISOString();
const yes = (is: boolean) => (is ? 'yes' : 'no');

/**
 * All that holds of batches as a file, one row for each thing that was done (RFC 4180); what was
 * taken back is left out, and a correction is in the row of the sowing. Times ISO 8601 in UTC.
 */
export function batchesCsv(batches: readonly Batch[]): string {
  const rows = batches
    .filter(({ state }) => state !== 'withdrawn')
    .toSorted((a, b) => (a.entries[0]?.id ?? 0) - (b.entries[0]?.id ?? 0))
    .flatMap((batch) => {
      const undone = undoneIn(batch.entries);
      return batch.entries
        .filter(({ id }) => !undone.has(id))
        .flatMap((entry) => rowsOf(batch, entry).map((cells) => ({ cells, who: entry.who })))
        .map(({ cells, who }) => whole(batch, cells, who));
    });
  return csv(COLUMNS, rows);
}

function whole({ id, crop, variety }: Batch, cells: Cells, who: string) {
  const all: Cells = { batch: id, crop, variety, who, ...cells };
  return COLUMNS.map((column) => {
    const cell = all[column] ?? null;
    return typeof cell === 'string' ? guard(cell) : cell;
  });
}

/** Costs as they were told of the whole batch, before trays took their share along. */
const told = (batch: Batch, cost: 'seedCost' | 'otherCost') => {
  const kept = batch[cost];
  if (kept === null) return null;
  return Number(batch.parted.reduce((sum, gone) => sum + (gone[cost] ?? 0), kept).toFixed(6));
};

function rowsOf(batch: Batch, { body }: BatchEntry): Cells[] {
  const { event } = body;
  if (body.event === 'sown') {
    const sown: Cells = {
      ...{ event, at: iso(batch.sownAt), place: batch.firstPlace, trays: batch.trays },
      ...{ seed_cost: told(batch, 'seedCost'), other_cost: told(batch, 'otherCost') },
      ...{ meant_for: batch.meantFor, part_of: body.partOf?.batch ?? null },
    };
    const stood = body.partOf?.stays.slice(1) ?? [];
    return [sown, ...stood.map(({ place, from }) => ({ event: 'stood', place, at: iso(from) }))];
  }
  if (body.event === 'corrected' || body.event === 'undone') return [];
  const at = iso(body.at);
  if (body.event === 'moved') return [{ event, at, place: body.place, minutes: body.minutes }];
  const place = batch.stays.findLast(({ from }) => from <= body.at)?.place ?? batch.firstPlace;
  if (body.event === 'parted') {
    const { trays, into, seedCost: seed_cost = null, otherCost: other_cost = null } = body;
    return [{ event, at, place, trays, into, seed_cost, other_cost }];
  }
  if (body.event === 'cut') {
    const { trays, kg, minutes, price, stage, lostKg: lost_kg, note } = body;
    const clears = yes(body.clears);
    return [{ event, at, place, trays, kg, minutes, price, stage, clears, lost_kg, note }];
  }
  if (body.event === 'thrown-out') {
    const { trays, look, note } = body;
    return [{ event, at, place, trays, look, note }];
  }
  if (body.event === 'noted') {
    const { look, note, photo } = body;
    return [{ event, at, place, look, note, photo }];
  }
  if (body.event === 'worked')
    return [{ event, at, place, work: body.work, minutes: body.minutes }];
  return [{ event, at, place, note: body.note }];
}
