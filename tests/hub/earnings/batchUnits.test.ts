import { expect, test } from 'vitest';
import { DAY, HOUR, T } from '../picks/pickFarm.ts';
import { batch, lot, pick, reckon, SOWN } from './someBatches.ts';

const only = (found: ReturnType<typeof reckon>) => {
  expect(found.units).toHaveLength(1);
  const [unit] = found.units;
  if (!unit) throw new Error('Expected one unit');
  return unit;
};
const figures = (unit: ReturnType<typeof only>) =>
  Object.fromEntries(
    Object.entries(unit.figures).map(([field, { value, from }]) => [field, [value, from]]),
  );

test('what was written down comes first, and each figure says so', () => {
  // By hand: 3.5 kg x 30 - 12 - 8 = 85; over 10 trays, 200 tray-days, (3 x 40 + 60) min = 3 h.
  const unit = only(reckon({ batches: [batch('basil-1')] }));
  expect(figures(unit)).toEqual({
    ...{ trays: [10, 'written'], days: [20, 'written'], kg: [4, 'written'] },
    ...{ lost: [0.5, 'written'], storeLost: [null, 'not-needed'], price: [30, 'written'] },
    ...{ seed: [12, 'written'], other: [8, 'written'], minutes: [180, 'written'] },
  });
  expect(unit.missing).toEqual([]);
  expect(unit.earnings).toMatchObject({ earned: 85, perTray: 8.5, perTrayDay: 0.425 });
  expect(unit.earnings?.perHour).toBeCloseTo(85 / 3, 9);
});

test('what nobody wrote down comes from the farm file, tray by tray, week by week, kilogram by kilogram', () => {
  // By hand: seed 10 x 1, other 10 x 0.5; 3 min a tray sown, 2 a tray and week over 20 days, 6 a
  // tray cut, 4 a kg packed of 3.5: 30 + 400/7 + 60 + 14.
  const plain = batch('basil-1', {
    facts: { seedCost: null, otherCost: null },
    cut: { price: null, minutes: null },
    events: [{ event: 'noted', at: SOWN, look: 'well', note: null, photo: null }],
  });
  const bare = { ...plain, works: [] };
  const unit = only(reckon({ batches: [bare] }));
  expect(figures(unit)).toMatchObject({
    ...{ price: [30, 'farm-file'], seed: [10, 'farm-file'], other: [5, 'farm-file'] },
  });
  expect(unit.figures.minutes?.from).toBe('farm-file');
  expect(unit.minutes).toBeCloseTo(30 + 400 / 7 + 60 + 14, 9);
  const half = only(reckon({ batches: [plain] }));
  expect(half.figures.minutes).toMatchObject({ from: 'both', value: 120 + 60 });
});

test('what neither tells is not known: it is named, and never counts as zero', () => {
  const facts = { crop: 'pea-shoots', seedCost: null, otherCost: null };
  const bare = { ...batch('pea-1', { facts, cut: { lostKg: null, minutes: null } }), works: [] };
  const unit = only(reckon({ batches: [bare] }));
  expect(unit.missing).toEqual([
    'lost',
    'seed',
    'other',
    'sowing',
    'tending',
    'cutting',
    'packing',
  ]);
  expect(unit).toMatchObject({ earnings: null, minutes: null, lost: null });
});

test('with hours not known the trays still tell what they earned', () => {
  const bare = { ...batch('pea-1', { facts: { crop: 'pea-shoots' } }), works: [] };
  const found = reckon({ batches: [bare] });
  expect(only(found).earnings).toMatchObject({ earned: 85, perTray: 8.5, perHour: null });
  const [group] = found.groups;
  expect(group).toMatchObject({ units: 1, counted: 0, leftOut: 1, perHour: null });
  expect(group?.perTray?.ratio).toBe(8.5);
});

test('a batch that brought nothing counts with what it took', () => {
  const failed = batch('basil-1', {
    cut: null,
    events: [{ event: 'thrown-out', trays: 10, at: SOWN + 9 * DAY, look: 'mould', note: null }],
  });
  const unit = only(reckon({ batches: [failed] }));
  expect(unit.missing).toEqual([]);
  expect(unit.earnings).toMatchObject({ earned: -20, trayDays: 90 });
  expect(unit.figures.price).toEqual({ value: null, from: 'not-needed' });
});

test('trays that were cut or thrown out sooner took room for fewer days', () => {
  const two = batch('basil-1', {
    events: [{ event: 'thrown-out', trays: 4, at: SOWN + 5 * DAY, look: 'leggy', note: null }],
    cut: { trays: 6 },
  });
  expect(only(reckon({ batches: [two] })).earnings?.trayDays).toBe(4 * 5 + 6 * 20);
});

test('a growing batch and one that was a mistake are not counted', () => {
  const growing = batch('basil-1', { cut: null });
  const mistake = { ...batch('basil-2'), state: 'withdrawn' as const };
  const found = reckon({ batches: [growing, mistake] });
  expect(found.units).toEqual([]);
  expect(found.growing).toBe(1);
});

test('several cuts at several prices: the price is that of all that was sold', () => {
  const young = { ...{ event: 'cut' as const, at: SOWN + 9 * DAY, kg: 1, trays: 10, note: null } };
  const more = { ...young, stage: 'young' as const, clears: false, minutes: 30, lostKg: 0 };
  const unit = only(reckon({ batches: [batch('basil-1', { events: [{ ...more, price: 40 }] })] }));
  // By hand: (1 x 40 + 3.5 x 30) / 4.5; sums stay as they are.
  expect(unit.figures.price?.value).toBeCloseTo(145 / 4.5, 9);
  expect(unit.earnings?.earned).toBeCloseTo(145 - 20, 9);
});

test('trays carried off take their share of the work before, and stand for their own place after', () => {
  const at = SOWN + 8 * DAY;
  const parted = { event: 'parted', into: 'basil-1b', trays: 4, at } as const;
  const whole = batch('basil-1', { events: [parted], cut: { trays: 6, kg: 2.4, lostKg: 0 } });
  const worked = (['sowing', 'tending'] as const).map(
    (work) => ({ event: 'worked', at: SOWN + DAY, work, minutes: 50 }) as const,
  );
  const parent = batch('basil-1', {
    events: [...worked, parted, { event: 'worked', at: at + DAY, work: 'packing', minutes: 12 }],
    cut: { trays: 6, kg: 2.4, lostKg: 0, minutes: 20 },
  });
  const stays = [
    { place: 'long-house', from: SOWN },
    { place: 'sun-house', from: at },
  ];
  const part = batch('basil-1b', {
    facts: { trays: 4, seedCost: 4, otherCost: 3 },
    partOf: { batch: 'basil-1', stays },
    events: [{ event: 'worked', at: at + DAY, work: 'packing', minutes: 8 }],
    cut: { trays: 4, kg: 2, lostKg: 0, minutes: 15 },
  });
  const found = reckon({ batches: [parent, part] });
  const [one, two] = ['basil-1', 'basil-1b'].map((id) => found.units.find((u) => u.id === id));
  expect(one).toMatchObject({ place: 'long-house', root: 'basil-1', minutes: 60 + 12 + 20 });
  // 40 % of the hundred minutes before, a minute a tray for carrying, and its own.
  expect(two).toMatchObject({ place: 'sun-house', root: 'basil-1', minutes: 40 + 4 + 8 + 15 });
  expect(two?.earnings?.trayDays).toBe(80);
  expect(one?.earnings?.trayDays).toBe(120);
  // One sowing is one batch of its crop, and one in each of its places.
  const crop = found.groups.find(({ by }) => by === 'crop');
  expect(crop).toMatchObject({ units: 1, counted: 1 });
  expect(crop?.sums).toMatchObject({ trays: 10, trayDays: 200, minutes: 92 + 67 });
  expect(found.groups.filter(({ by }) => by === 'place')).toHaveLength(2);
  expect(whole.traysLeft).toBe(0);
});

test('lots thrown out of the store are taken off all that was cut of the crop in that season, once', () => {
  // 9 kg sold and 1 kg thrown out of the store: a tenth of the 3.5 kg that went in.
  const found = reckon({ batches: [batch('basil-1')], lots: [lot('lot-1', 9, 1)] });
  const unit = only(found);
  expect(unit.figures.storeLost).toMatchObject({ from: 'lots' });
  expect(unit.figures.storeLost?.value).toBeCloseTo(0.35, 9);
  expect(unit.lost).toBeCloseTo(0.85, 9);
  expect(unit.earnings?.earned).toBeCloseTo(3.15 * 30 - 20, 9);
  const [group] = found.groups;
  expect(group?.lossShare).toBeCloseTo(0.85 / 4, 9);
  // Of another season they say nothing.
  const late = reckon({
    batches: [batch('basil-1')],
    lots: [lot('lot-1', 9, 1, T - 200 * DAY)],
  });
  expect(only(late).figures.storeLost?.from).toBe('not-needed');
});

test('a picking bears no seed and no space, and the minutes of all pickers', () => {
  const unit = only(reckon({ picks: [pick('strawberry-1', { pickers: 2, minutes: 45 })] }));
  expect(unit).toMatchObject({ of: 'pickings', minutes: 90, missing: [], season: 'autumn' });
  // By hand: 3.5 kg x 9 over an hour and a half.
  expect(unit.earnings?.perHour).toBeCloseTo(21, 9);
  expect(unit.earnings).toMatchObject({ perTray: null, perTrayDay: null });
  expect(unit.figures.seed?.from).toBe('not-needed');
  const bare = pick('x', { crop: 'mystery', lostKg: null, minutes: null });
  expect(only(reckon({ picks: [bare] })).missing).toEqual(['lost', 'price', 'minutes']);
});

test('days asked for are those of the end of a batch, or of a picking', () => {
  const batches = [batch('basil-1'), batch('basil-2', { facts: { sownAt: SOWN - 30 * DAY } })];
  const day = (t: number) => new Date(t).toISOString().slice(0, 10);
  const ended = SOWN + 20 * DAY;
  const found = (from?: string, to?: string) =>
    reckon({ batches }, { ...(from && { from }), ...(to && { to }) }).units.map(({ id }) => id);
  expect(found()).toEqual(['basil-1', 'basil-2']);
  expect(found(day(ended))).toEqual(['basil-1']);
  expect(found(undefined, day(ended - HOUR * 24))).toEqual(['basil-2']);
});
