import type { z } from 'zod';
import type { BatchEvent, BatchFacts } from '../batches/index.ts';
import { batchChanges, sowBatch } from '../contract/index.ts';
import { refusal, shown } from '../words/index.ts';
import {
  cropCell,
  nameCell,
  needed,
  numberCell,
  placeCell,
  type ReadAbout,
  type Told,
  timeCell,
  yesCell,
} from './cells.ts';
import type { Row } from './readTable.ts';

/** How columns are called where their name is another one in a command. */
const COLUMN: Readonly<Record<string, string>> = {
  lostKg: 'lost_kg',
  seedCost: 'seed_cost',
  otherCost: 'other_cost',
  meantFor: 'meant_for',
};
export const columnOf = (field: string) => COLUMN[field] ?? field;

/** Held against the schema of the command that enters the same. @throws Error naming the column */
function checked<Shape>(schema: z.ZodType<Shape>, said: object): NonNullable<Shape> {
  const read = schema.safeParse(said);
  if (read.success) return read.data as NonNullable<Shape>;
  const issue = read.error.issues[0];
  const [field = ''] = issue?.path ?? [];
  const complaint = { path: [columnOf(String(field))], message: issue?.message ?? '' };
  const value = (said as Record<string, unknown>)[String(field)];
  throw new Error(refusal(complaint, { [columnOf(String(field))]: value }));
}

/** Fields that were told. */
const told = (said: Record<string, unknown>) =>
  Object.fromEntries(
    Object.entries(said).filter(
      ([, value]) => value !== null && value !== '' && value !== undefined,
    ),
  );

/** What a row says of a sowing. @throws Error naming the column */
export function rowFacts(
  row: Row,
  about: ReadAbout,
  timeColumn: 'at' | 'sown',
): { facts: BatchFacts; sown: Told } {
  const sown = needed(timeCell(row, timeColumn, about), timeColumn, 'when it was sown');
  const said = checked(
    sowBatch,
    told({
      ...{ crop: cropCell(row, about), trays: numberCell(row, 'trays') },
      ...{ place: placeCell(row, about), variety: row.cell('variety') },
      seedCost: numberCell(row, 'seed_cost'),
      otherCost: numberCell(row, 'other_cost'),
      meantFor: row.cell('meant_for'),
    }),
  );
  const { crop, trays, place } = said;
  const { variety = null, seedCost = null, otherCost = null, meantFor = null } = said;
  const facts = { crop, trays, place, variety, seedCost, otherCost, meantFor };
  return { facts: { ...facts, sownAt: sown.at }, sown };
}

export type RowEvent = { readonly event: BatchEvent; readonly when: Told };

/** What a row other than a sowing says was done. @throws Error naming the column */
export function rowEvent(
  row: Row,
  kind: string,
  about: ReadAbout,
  { regrows, traysLeft }: { readonly regrows: boolean; readonly traysLeft: number },
  timeColumn: 'at' | 'cut' = 'at',
): RowEvent {
  const when = needed(timeCell(row, timeColumn, about), timeColumn, 'when it was done');
  const { at } = when;
  const note = row.cell('note');
  const minutes = numberCell(row, 'minutes');
  const trays = numberCell(row, 'trays') ?? Math.max(1, traysLeft);
  const as = (event: BatchEvent): RowEvent => ({ event, when });
  if (kind === 'moved') {
    const said = checked(batchChanges.move, told({ place: placeCell(row, about), minutes }));
    return as({ event: 'moved', place: said.place, at, minutes: said.minutes ?? null });
  }
  if (kind === 'parted') {
    const into = needed(nameCell(row, 'into'), 'into', 'the batch that the trays went on as');
    const [seedCost, otherCost] = [numberCell(row, 'seed_cost'), numberCell(row, 'other_cost')];
    const said = checked(sowBatch.pick({ trays: true }), { trays });
    return as({ event: 'parted', into, trays: said.trays, at, seedCost, otherCost });
  }
  if (kind === 'cut') {
    const kg = numberCell(row, 'kg');
    const price = numberCell(row, 'price');
    const lostKg = numberCell(row, 'lost_kg');
    const said = checked(
      batchChanges.cut,
      told({ kg, trays, minutes, price, lostKg, note, stage: row.cell('stage') }),
    );
    return as({
      ...{ event: 'cut', at, kg: said.kg, trays: said.trays ?? trays },
      ...{ stage: said.stage ?? 'later', clears: yesCell(row, 'clears') ?? !regrows },
      ...{ minutes: said.minutes ?? null, price: said.price ?? null },
      ...{ lostKg: said.lostKg ?? null, note: said.note ?? null },
    });
  }
  if (kind === 'thrown-out') {
    const said = checked(batchChanges.throwOut, told({ trays, note, look: row.cell('look') }));
    const { look } = said;
    return as({
      event: 'thrown-out',
      trays: said.trays ?? trays,
      at,
      look,
      note: said.note ?? null,
    });
  }
  if (kind === 'noted') {
    const look = row.cell('look');
    const said = checked(batchChanges.note, told({ look, note, photo: row.cell('photo') }));
    return as({
      ...{ event: 'noted', at, look: said.look },
      ...{ note: said.note ?? null, photo: said.photo ?? null },
    });
  }
  if (kind === 'worked') {
    const said = checked(batchChanges.work, told({ work: row.cell('work'), minutes }));
    return as({ event: 'worked', at, work: said.work, minutes: said.minutes });
  }
  if (kind === 'cleared')
    return as({
      event: 'cleared',
      at,
      note: checked(batchChanges.clear, told({ note })).note ?? null,
    });
  throw new Error(
    `Expected one of sown, stood, moved, parted, cut, thrown-out, noted, worked, cleared in event, got ${shown(kind)}`,
  );
}

/** Whether an entry that is there tells the same as a row. */
export function sameEvent(have: BatchEvent, { event }: RowEvent, isThen: (at: number) => boolean) {
  if (have.event !== event.event || !('at' in have) || !isThen(have.at)) return false;
  if (have.event === 'moved' && event.event === 'moved') return have.place === event.place;
  if (have.event === 'parted' && event.event === 'parted') return have.into === event.into;
  if (have.event === 'noted' && event.event === 'noted')
    return have.look === event.look && have.note === event.note;
  if (have.event === 'worked' && event.event === 'worked')
    return have.work === event.work && have.minutes === event.minutes;
  if (have.event === 'cut' && event.event === 'cut')
    return have.kg === event.kg && have.trays === event.trays;
  if (have.event === 'thrown-out' && event.event === 'thrown-out')
    return have.trays === event.trays && have.look === event.look;
  return have.event === 'cleared';
}
