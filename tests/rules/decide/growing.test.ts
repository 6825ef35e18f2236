import { expect, test } from 'vitest';
import { title, why } from '../../../hub/words/index.ts';
import { decide, type HarvestNow, type SowingNow } from '../../../rules/decide/index.ts';
import { HOUR, instant } from '../../../rules/units.ts';
import { at, snapshot, tunnel } from './makeSnapshot.ts';

const now = at('2026-05-04T08:00');
const DAY = 24 * HOUR;
const today = at('2026-05-04T00:00');
const soft = (text: string) => text.replaceAll('\u00a0', ' ');

const sowing = (wish: Partial<SowingNow> = {}): SowingNow => ({
  ...{ place: 'long-house', crop: 'Basil', trays: 3, kilograms: 1.2, pricePerKilogram: 30 },
  ...{ on: today, late: false, delivery: '2026-05-21', ready: 0.92, batches: 6 },
  minutesPerTray: 4,
  ...wish,
});
const harvest = (wish: Partial<HarvestNow> = {}): HarvestNow => ({
  ...{ id: 'basil-0410-1', place: 'long-house', crop: 'Basil', trays: 6, kilograms: 2.1 },
  pricePerKilogram: 30,
  ...{ seenReady: null, readyAt: instant(now - DAY), ready: 0.8, overAt: instant(now + 4 * DAY) },
  delivery: { day: '2026-05-05', at: instant(at('2026-05-05T12:00')) },
  minutesPerTray: null,
  ...wish,
});
const decided = (rows: readonly SowingNow[], harvests: readonly HarvestNow[] = []) =>
  decide(
    snapshot(now, { places: [tunnel()], sowings: { rows, untimed: [] }, harvests }),
  ).decisions.filter(({ kind }) => kind === 'sow' || kind === 'harvest');

test('what is due in one place on one day is one task, named by its trays', () => {
  const found = decided([
    sowing({
      crop: 'Pea shoots',
      trays: 2,
      kilograms: 1,
      pricePerKilogram: 18,
      delivery: '2026-05-22',
    }),
    sowing(),
    sowing({ place: 'sun-house' }),
    sowing({ on: instant(today + DAY) }),
  ]);
  expect(found).toHaveLength(2);
  const [both] = found.filter(({ place }) => place === 'long-house');
  expect(both).toMatchObject({ kind: 'sow', subject: '2026-05-21', verdict: 'act' });
  expect(title({ ...both, place: 'Long House' } as never)).toBe(
    'Sow 3 trays of basil and 2 of pea shoots in Long House',
  );
  // By hand: 3 x 4 + 2 x 4 minutes; (1.2 x 30 + 1 x 18) x 0.92.
  expect(both).toMatchObject({ minutes: 20, doBy: at('2026-05-04T18:00') });
  expect((both as { saves: { money: number } }).saves.money).toBeCloseTo(49.68, 9);
});

test('a sowing before its day asks for nothing', () => {
  expect(decided([sowing({ on: instant(today + DAY) })])).toEqual([]);
});

test('what is late says so, and what rests on told days gives no chance', () => {
  const [late] = decided([sowing({ late: true, ready: 0.6 })]);
  expect(soft(why('sow', late?.because ?? []))).toBe(
    'Its right day is past: it may not be ready by Thursday 21 May. The chance of being ready in time is 60 %.',
  );
  const [told] = decided([sowing({ ready: null, batches: 0 })]);
  expect(soft(why('sow', told?.because ?? []))).toBe(
    'For Thursday 21 May. By the days told in the farm file, as no batch has ended yet.',
  );
  expect(told?.because.map(({ what }) => what)).toContain('drop-in-risk');
});

test('without a price there is no money to name', () => {
  const [found] = decided([sowing(), sowing({ pricePerKilogram: null })]);
  expect(found).toMatchObject({ saves: { money: null } });
});

test('a crop that nobody can time is unknown, and is no task', () => {
  const { decisions } = decide(
    snapshot(now, {
      places: [tunnel()],
      sowings: { rows: [], untimed: [{ place: 'long-house', id: 'cress', crop: 'Cress' }] },
    }),
  );
  const found = decisions.find(({ kind }) => kind === 'sow');
  expect(found).toMatchObject({ verdict: 'unknown', missing: ['growing-days'], subject: 'cress' });
});

// The window by hand: a delivery at noon tomorrow is 28 h away, less than a day and a half.
test.for<[string, Partial<HarvestNow>, 'act' | 'leave' | 'unknown', string | null]>([
  ['ready, delivery tomorrow', {}, 'act', '2026-05-05T12:00'],
  ['seen ready counts as ready', { seenReady: now, ready: 0.1 }, 'act', '2026-05-05T12:00'],
  ['less likely ready than not', { ready: 0.49 }, 'leave', null],
  [
    'delivery two days off',
    { delivery: { day: '2026-05-06', at: at('2026-05-06T12:00') } },
    'leave',
    null,
  ],
  ['no delivery, days left', { delivery: null }, 'leave', null],
  [
    'no delivery, over tomorrow',
    { delivery: null, overAt: instant(now + DAY) },
    'act',
    '2026-05-05T08:00',
  ],
  [
    'over already: by tonight',
    { delivery: null, overAt: instant(now - DAY) },
    'act',
    '2026-05-05T00:00',
  ],
  ['no spread, its days are past', { ready: null }, 'act', '2026-05-05T12:00'],
  ['no spread, days to go', { ready: null, readyAt: instant(now + DAY) }, 'leave', null],
  ['nothing known', { ready: null, readyAt: null, overAt: null }, 'unknown', null],
])('harvest: %s', ([, wish, verdict, by]) => {
  const [found] = decided([], [harvest(wish)]);
  expect(found).toMatchObject({ kind: 'harvest', subject: 'basil-0410-1', verdict });
  if (verdict === 'act') expect(found).toMatchObject({ doBy: at(by ?? '') });
});

test('a harvest says its trays, its crop and the delivery', () => {
  const [found] = decided([], [harvest()]);
  expect(title({ ...found, place: 'Long House' } as never)).toBe(
    'Harvest 6 trays of basil in Long House',
  );
  expect(soft(why('harvest', found?.because ?? []))).toBe(
    'It is ready by now with a chance of 80 %. It is for Tuesday 5 May.',
  );
  // 2.1 kg x 30 x 0.8; 6 trays at 4 minutes, ours.
  expect(found).toMatchObject({ minutes: 24 });
  expect((found as { saves: { money: number } }).saves.money).toBeCloseTo(50.4, 9);
});
