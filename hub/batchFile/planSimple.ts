import { type Batch, type BatchEvent, eventFault, factsFault } from '../batches/index.ts';
import { sameTime } from './cells.ts';
import { isSowing, type PlanAbout, type Planned, type PlannedBatch, tellings } from './planned.ts';
import type { Row } from './readTable.ts';
import { columnOf, rowEvent, rowFacts, sameEvent } from './rowEvent.ts';

/** The form with one row a batch: where and when it was sown and, if known, what was cut of it. */
export function planSimple(rows: readonly Row[], about: PlanAbout): Planned {
  const batches: PlannedBatch[] = [];
  const refused: { line: number; reason: string }[] = [];
  const taken = new Set<string>();
  let known = 0;
  for (const row of rows) {
    try {
      if (row.tooLong) throw new Error('Expected as many cells as the first line has, got more');
      const planned = planRow(row, about, taken);
      if (planned.events.length === 0) known++;
      taken.add(planned.id);
      batches.push(planned);
    } catch (error) {
      refused.push({ line: row.line, reason: (error as Error).message });
    }
  }
  return { batches, known, refused };
}

/** The batch of the hub that a row tells of; two rows alike are two batches. */
function found(row: Row, about: PlanAbout, taken: ReadonlySet<string>): Batch | undefined {
  const { facts, sown } = rowFacts(row, about, 'sown');
  return about.batches
    .all()
    .find(
      (batch) =>
        batch.partOf === null &&
        !taken.has(batch.id) &&
        isSowing(batch, facts.crop, sown, about) &&
        tellings(batch).some(
          (one) =>
            one.trays === facts.trays &&
            one.place === facts.place &&
            one.variety === facts.variety &&
            sameTime(sown, one.sownAt, about),
        ),
    );
}

/** @throws Error in one sentence */
function planRow(row: Row, about: PlanAbout, taken: ReadonlySet<string>): PlannedBatch {
  const { farm, now, batches, calendar } = about;
  const { facts } = rowFacts(row, about, 'sown');
  const field = (name: string) =>
    name === 'sownAt' ? 'sown' : name === 'at' ? 'cut' : columnOf(name);
  const sentence = factsFault(facts, { farm, now, field });
  if (sentence !== null) throw new Error(sentence);
  const have = found(row, about, taken);
  const id = have?.id ?? batches.nextId(facts.crop, calendar.dayOf(facts.sownAt), taken);
  const begins: BatchEvent[] = have ? [] : [{ event: 'sown', facts, partOf: null }];
  const plan = (events: BatchEvent[]): PlannedBatch => {
    return { line: row.line, id, facts, fresh: have === undefined, events };
  };
  if (row.cell('cut') === '') {
    const told = row.cell('kg') === '' ? 'minutes' : 'kg';
    if (row.cell(told) !== '')
      throw new Error(`Expected the day it was cut in cut beside ${told}, got nothing`);
    return plan(begins);
  }
  const regrows = farm.crop(facts.crop)?.regrows === true;
  const batch = have ?? batches.foretold(id, begins, 'file', now);
  if (!batch) throw new Error(`Expected a batch that was sown, got none (${id})`);
  const traysLeft = have ? have.traysLeft : facts.trays;
  const read = rowEvent(row, 'cut', about, { regrows, traysLeft: facts.trays }, 'cut');
  const isThen = (when: number) => sameTime(read.when, when, about);
  const there = have?.entries.some(({ body }) => {
    const cut = read.event.event === 'cut' && body.event === 'cut';
    // Trays are not told in this form: the cut of that day with that weight is the one.
    return cut && sameEvent({ ...body, trays: facts.trays }, read, isThen);
  });
  if (there || have?.state === 'withdrawn') return plan(begins);
  const event = read.event.event === 'cut' ? { ...read.event, trays: traysLeft } : read.event;
  const wrong = eventFault(batch, event, { farm, now, field });
  if (wrong !== null) throw new Error(wrong);
  return plan([...begins, event]);
}
