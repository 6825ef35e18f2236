import fc from 'fast-check';
import { expect, test } from 'vitest';
import { calendarOf } from '../../../hub/clock.ts';
import { undoneIn } from '../../../hub/journal/index.ts';
import {
  foldLoss,
  type LossEntry,
  type LossEvent,
  type LossFacts,
  mayUndo,
  weekOf,
  weeksBetween,
  weekToSay,
} from '../../../hub/losses/index.ts';

const facts: LossFacts = {
  ...{ place: 'long-house', crop: 'basil', amount: 4, unit: 'trays', of: null },
  ...{ look: 'wilted', day: '2026-05-15', batch: null, note: null },
};
const entered: LossEvent = { event: 'entered', facts, photo: null, another: false };
const entriesOf = (events: readonly LossEvent[]): LossEntry[] =>
  events.map((body, i) => ({ id: i + 1, t: i, who: 'Ada', body }));

const change = fc.oneof(
  fc.record({
    event: fc.constant('corrected' as const),
    set: fc.record({ amount: fc.integer({ min: 1, max: 50 }) }),
    why: fc.constant(null),
  }),
  fc.record({
    event: fc.constant('photo' as const),
    photo: fc.option(fc.constantFrom('a.jpg', 'b.jpg')),
  }),
  fc.record({ event: fc.constant('undone' as const), entry: fc.integer({ min: 1, max: 12 }) }),
);
const history = fc.array(change, { maxLength: 11 }).map((later) =>
  // A taking back points to what was there before it.
  entriesOf([entered, ...(later as LossEvent[])]).filter(
    ({ id, body }) => body.event !== 'undone' || body.entry < id,
  ),
);

test('taking back an entry, and that again, leaves the loss as it was', () => {
  fc.assert(
    fc.property(history, fc.nat(11), (entries, at) => {
      const undone = undoneIn(entries);
      const may = entries.filter((entry) => mayUndo(entry, undone));
      const target = may[at % Math.max(1, may.length)];
      if (!target) return true;
      const id = (entries.at(-1)?.id ?? 0) + 1;
      const back = [
        ...entries,
        { id, t: 99, who: 'Ada', body: { event: 'undone', entry: target.id } as LossEvent },
        { id: id + 1, t: 99, who: 'Ada', body: { event: 'undone', entry: id } as LossEvent },
      ];
      const [a, b] = [foldLoss('x', entries), foldLoss('x', back)];
      return JSON.stringify({ ...a, entries: [] }) === JSON.stringify({ ...b, entries: [] });
    }),
  );
});

test('an entry is never changed, and a further one only adds to the list', () => {
  fc.assert(
    fc.property(history, (entries) => {
      const before = JSON.stringify(entries);
      const loss = foldLoss('x', entries);
      return JSON.stringify(entries) === before && loss?.entries.length === entries.length;
    }),
  );
});

test('a loss is withdrawn exactly while its first entry is taken back', () => {
  fc.assert(
    fc.property(history, (entries) => {
      return foldLoss('x', entries)?.withdrawn === undoneIn(entries).has(1);
    }),
  );
});

test('a photo that was deleted never comes back, whatever is taken back', () => {
  fc.assert(
    fc.property(history, (entries) => {
      const id = (entries.at(-1)?.id ?? 0) + 1;
      const gone = [
        ...entries,
        { id, t: 99, who: 'Ada', body: { event: 'photo', photo: null } as LossEvent },
      ];
      const back = [
        ...gone,
        { id: id + 1, t: 99, who: 'Ada', body: { event: 'undone', entry: id } as LossEvent },
      ];
      return foldLoss('x', gone)?.photo === null && foldLoss('x', back)?.photo === null;
    }),
  );
});

test('the newest correction that holds counts', () => {
  const correct = (amount: number): LossEvent => ({
    event: 'corrected',
    set: { amount },
    why: null,
  });
  const events: LossEvent[] = [entered, correct(5), correct(6)];
  expect(foldLoss('x', entriesOf(events))?.amount).toBe(6);
  expect(foldLoss('x', entriesOf([...events, { event: 'undone', entry: 3 }]))?.amount).toBe(5);
  expect(foldLoss('x', [])).toBeNull();
});

test('weeks begin on Monday, and one can be spoken for from its Friday on', () => {
  // By the calendar: 15 May 2026 is a Friday, 1 January 2027 too.
  expect(weekOf('2026-05-15')).toBe('2026-05-11');
  expect(weekOf('2026-05-17')).toBe('2026-05-11');
  expect(weekOf('2026-05-18')).toBe('2026-05-18');
  expect(weekOf('2027-01-01')).toBe('2026-12-28');
  expect(weeksBetween('2026-05-15', '2026-05-25')).toEqual([
    '2026-05-11',
    '2026-05-18',
    '2026-05-25',
  ]);
  const calendar = calendarOf('Europe/Dublin');
  expect(weekToSay(calendar, Date.UTC(2026, 4, 14, 22, 30))).toBe('2026-05-04');
  expect(weekToSay(calendar, Date.UTC(2026, 4, 14, 23, 30))).toBe('2026-05-11'); // Friday there
});
