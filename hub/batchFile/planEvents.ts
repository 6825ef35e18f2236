import {
  type Batch,
  type BatchEvent,
  eventFault,
  factsFault,
  type Stay,
  traysGone,
} from '../batches/index.ts';
import { nameCell, needed, placeCell, sameTime, timeCell } from './cells.ts';
import { isSowing, type PlanAbout, type Planned, type Refusal, tellings } from './planned.ts';
import type { Row } from './readTable.ts';
import { columnOf, rowEvent, rowFacts, sameEvent } from './rowEvent.ts';
import { twinFaults } from './twinFaults.ts';

/** Rows of one batch, and what came of them. */
export type Group = {
  readonly id: string;
  readonly rows: readonly Row[];
  readonly line: number;
  readonly batch: Batch;
  readonly fresh: boolean;
  /** What its rows would enter. */
  readonly events: { readonly line: number; readonly event: BatchEvent }[];
};

const WHO = 'file'; // nobody reads it: the entries here are only thought of

/** The form with one row for each thing that was done. */
export function planEvents(rows: readonly Row[], about: PlanAbout): Planned {
  const refused: Refusal[] = [];
  const groups: Group[] = [];
  let known = 0;
  const byName = new Map<string, Row[]>();
  for (const row of rows) {
    const name = nameCell(row, 'batch');
    if (row.tooLong || name === null)
      refused.push({
        line: row.line,
        reason: row.tooLong
          ? 'Expected as many cells as the first line has, got more'
          : 'Expected the name of a batch in batch, got nothing',
      });
    else byName.set(name, [...(byName.get(name) ?? []), row]);
  }
  for (const [id, own] of byName) {
    try {
      const { group, had } = planGroup(id, own, about, refused);
      groups.push(group);
      known += had;
    } catch (error) {
      const { sentence, line } = refusalOf(error, own);
      for (const row of own)
        refused.push({
          line: row.line,
          reason: row.line === line ? sentence : `Its batch cannot be entered (line ${line})`,
        });
    }
  }
  const twins = twinFaults(groups, about.batches);
  refused.push(...twins.refused);
  return {
    known,
    refused,
    batches: twins.groups.map(({ id, line, batch, fresh, events }) => ({
      ...{ id, line, fresh, facts: { ...batch, place: batch.firstPlace } },
      events: events.map(({ event }) => event),
    })),
  };
}

class InRow extends Error {
  readonly line: number;
  constructor(line: number, sentence: string) {
    super(sentence);
    this.line = line;
  }
}
const refusalOf = (error: unknown, rows: readonly Row[]) => ({
  sentence: (error as Error).message,
  line: error instanceof InRow ? error.line : (rows[0]?.line ?? 0),
});
const at = <Value>(row: Row, read: () => Value): Value => {
  try {
    return read();
  } catch (error) {
    throw new InRow(row.line, (error as Error).message);
  }
};

/** @throws InRow where nothing of the batch can be entered */
function planGroup(id: string, rows: readonly Row[], about: PlanAbout, refused: Refusal[]) {
  const { farm, now, batches } = about;
  const fault = { farm, now, field: (name: string) => (name === 'sownAt' ? 'at' : columnOf(name)) };
  const is = (row: Row, ...kinds: string[]) => kinds.includes(row.cell('event').toLowerCase());
  const [sowing, second] = rows.filter((row) => is(row, 'sown'));
  const have = batches.get(id);
  if (second) throw new InRow(second.line, `Expected one row sown for ${id}, got another`);
  const events: Group['events'] = [];
  let had = 0;
  let batch = have;
  if (sowing) {
    const begun = at(sowing, () => sow(id, sowing, rows, about));
    const sentence = factsFault(begun.facts, fault);
    if (sentence !== null) throw new InRow(sowing.line, sentence);
    if (have) {
      const { crop, trays } = begun.facts;
      if (!isSowing(have, crop, begun.sown, about))
        throw new InRow(
          sowing.line,
          `Expected a name that no other batch has in batch, got ${id}: that one is another sowing`,
        );
      const told = tellings(have).map((one) => one.trays);
      if (!told.includes(trays))
        throw new InRow(
          sowing.line,
          `Expected the ${told[0]} trays that the hub has of ${id} in trays, got ${trays}: correct it on the page`,
        );
      had++;
    } else {
      events.push({ line: sowing.line, event: begun.event });
      batch = batches.foretold(id, [begun.event], WHO, now) ?? undefined;
    }
  }
  if (!batch) throw new Error(`Expected a row sown for ${id}, got none`);
  const used = new Set<number>();
  for (const row of rows) {
    if (is(row, 'sown', 'stood')) continue;
    try {
      const crop = farm.crop(batch.crop);
      const ready = { regrows: crop?.regrows === true, traysLeft: batch.traysLeft };
      const read = rowEvent(row, row.cell('event').toLowerCase(), about, ready);
      const isThen = (when: number) => sameTime(read.when, when, about);
      const same = have?.entries.find(
        (entry) => !used.has(entry.id) && sameEvent(entry.body, read, isThen),
      );
      if (same || have?.state === 'withdrawn') {
        if (same) used.add(same.id);
        had++;
        continue;
      }
      const sentence = eventFault(inAnyOrder(batch, read.event), read.event, fault);
      if (sentence !== null) throw new Error(sentence);
      events.push({ line: row.line, event: read.event });
      const next = events.map(({ event }) => event);
      batch = batches.foretold(id, next, WHO, now) ?? batch;
    } catch (error) {
      refused.push({ line: row.line, reason: (error as Error).message });
    }
  }
  const line = rows[0]?.line ?? 0;
  const group: Group = { id, rows, line, batch, fresh: have === undefined, events };
  return { group, had };
}

/**
 * A batch as its entries are held against it: what was taken back and then counted again may stand
 * before entries that were made meanwhile, so only the sum of all trays that went has to be right.
 */
function inAnyOrder(batch: Batch, event: BatchEvent): Batch {
  if (batch.state === 'withdrawn') return batch;
  const takes = event.event !== 'cut' || event.clears;
  const left = takes ? batch.trays - traysGone(batch) : batch.trays;
  // All that is left by now may have been some of it then.
  const some = event.event === 'parted' ? 1 : 0;
  return { ...batch, state: 'growing', traysLeft: left + some };
}

/** A part goes on with the places its trays stood in before it was one. */
function sow(id: string, row: Row, rows: readonly Row[], about: PlanAbout) {
  const { facts, sown } = rowFacts(row, about, 'at');
  const from = nameCell(row, 'part_of');
  if (from === id) throw new Error(`Expected another batch in part_of, got ${id}`);
  const stood = rows
    .filter((one) => one.cell('event').toLowerCase() === 'stood')
    .map((one): Stay => at(one, () => stay(one, about)));
  const stays = [{ place: facts.place, from: facts.sownAt }, ...stood];
  const event: BatchEvent = {
    ...{ event: 'sown', facts },
    partOf: from === null ? null : { batch: from, stays },
  };
  return { facts, sown, event };
}

function stay(row: Row, about: PlanAbout): Stay {
  const place = placeCell(row, about);
  const told = needed(timeCell(row, 'at', about), 'at', 'when it came there');
  if (about.farm.place(place)) return { place, from: told.at };
  throw new Error(`Expected a place of the farm in place, got ${JSON.stringify(place)}`);
}
