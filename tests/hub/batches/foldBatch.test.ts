import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type BatchEvent, type BatchFacts, foldBatch } from '../../../hub/batches/index.ts';

const HOUR = 3_600_000;
const facts: BatchFacts = {
  ...{ crop: 'basil', variety: null, trays: 12, sownAt: 0, place: 'long-house' },
  ...{ seedCost: 4, otherCost: null, meantFor: null },
};
const sown: BatchEvent = { event: 'sown', facts, partOf: null };
const told = (...events: BatchEvent[]) =>
  foldBatch(
    'basil-0501-1',
    events.map((body, i) => ({ id: i + 1, t: i, who: 'Ann', body })),
  );
const cut = (trays: number, more: object = {}): BatchEvent => ({
  ...{ event: 'cut', at: 20 * HOUR, kg: 2, trays, stage: 'later', clears: true },
  ...{ minutes: 25, price: null, lostKg: null, note: null },
  ...more,
});

test('a batch stands where it was carried last, and its trays go with cuts and what is thrown out', () => {
  const batch = told(
    sown,
    { event: 'moved', place: 'sun-house', at: 5 * HOUR, minutes: 10 },
    { event: 'thrown-out', trays: 2, at: 9 * HOUR, look: 'mould', note: null },
    cut(4),
  );
  expect(batch).toMatchObject({ state: 'growing', place: 'sun-house', traysLeft: 6 });
  expect(batch?.stays).toEqual([
    { place: 'long-house', from: 0 },
    { place: 'sun-house', from: 5 * HOUR },
  ]);
  expect(batch?.readyAt).toEqual({ young: null, later: 20 * HOUR });
});

test('a cut that grows again takes no trays, and the last tray ends the batch', () => {
  expect(told(sown, cut(12, { clears: false }))).toMatchObject({ traysLeft: 12, endedAt: null });
  expect(told(sown, cut(12))).toMatchObject({ state: 'ended', endedAt: 20 * HOUR });
  expect(told(sown, { event: 'cleared', at: 7, note: null })).toMatchObject({
    ...{ state: 'ended', traysLeft: 0, endedAt: 7 },
  });
});

test('what was a mistake counts no more, and taking that back makes it count again', () => {
  const undone: BatchEvent = { event: 'undone', entry: 2 };
  expect(told(sown, cut(4), undone)?.traysLeft).toBe(12);
  expect(told(sown, cut(4), undone, { event: 'undone', entry: 3 })?.traysLeft).toBe(8);
  expect(told(sown, { event: 'undone', entry: 1 })?.state).toBe('withdrawn');
  expect(told(cut(4))).toBeNull();
});

test('trays carried off go on with the past they had', () => {
  const stays = [
    { place: 'long-house', from: 0 },
    { place: 'sun-house', from: 5 * HOUR },
  ];
  const part = told({
    ...{ event: 'sown', facts: { ...facts, trays: 3 } },
    partOf: { batch: 'basil-0501-1', stays },
  });
  expect(part).toMatchObject({ stays, place: 'sun-house', partOf: 'basil-0501-1' });
  expect(told(sown, { event: 'parted', into: 'b', trays: 3, at: 5 })?.traysLeft).toBe(9);
});

test('trays are never fewer than none, whatever is entered', () => {
  const trays = fc.integer({ min: 1, max: 30 });
  const event = fc.oneof(
    trays.map((n) => cut(n)),
    trays.map(
      (n): BatchEvent => ({
        ...{ event: 'thrown-out', trays: n, at: 3, look: 'mould', note: null },
      }),
    ),
    fc.integer({ min: 1, max: 8 }).map((entry): BatchEvent => ({ event: 'undone', entry })),
  );
  fc.assert(
    fc.property(fc.array(event, { maxLength: 8 }), (events) => {
      const batch = told(sown, ...events);
      expect(batch?.traysLeft).toBeGreaterThanOrEqual(0);
      expect(batch?.traysLeft).toBeLessThanOrEqual(12);
      expect((batch?.endedAt ?? null) === null).toBe(batch?.traysLeft !== 0);
    }),
  );
});
