import fc from 'fast-check';
import { expect, test } from 'vitest';
import { yearSeason } from '../../../hub/earnings/yearSeason.ts';
import { DAY } from '../picks/pickFarm.ts';
import { batch, groupOf, lot, pick, reckon, SOWN } from './someBatches.ts';

/** Basil whose cut brings so many kilograms. */
const basil = (id: string, kg: number, facts: object = {}) => batch(id, { cut: { kg }, facts });

test('a group says how many, what they took and brought, and from which price it pays', () => {
  const found = reckon({ batches: [basil('a', 4), basil('b', 3), basil('c', 5)] });
  const group = groupOf(found, 'crop', { crop: 'basil' });
  expect(group).toMatchObject({ units: 3, counted: 3, leftOut: 0, verdict: 'pays' });
  // By hand: 12 kg cut, 1.5 lost; 10.5 x 30 - 60 = 255 in 9 h on 30 trays for 20 days.
  expect(group.sums).toEqual({
    ...{ trays: 30, trayDays: 600, minutes: 540, kg: 12, lost: 1.5, sold: 10.5 },
    ...{ revenue: 315, seed: 36, other: 24, earned: 255 },
  });
  expect(group.perHour?.ratio).toBeCloseTo(255 / 9, 9);
  expect(group.perTrayKg?.ratio).toBeCloseTo(0.4, 9);
  // (36 + 24 + 9 x 16) / 10.5, at which an hour earns just the wage.
  expect(group.breakEven?.ratio).toBeCloseTo(204 / 10.5, 9);
  expect(group.lossShare).toBeCloseTo(1.5 / 12, 9);
});

test('two batches never tell, however well they did', () => {
  const found = reckon({ batches: [basil('a', 40), basil('b', 40)] });
  const group = groupOf(found, 'crop', { crop: 'basil' });
  expect(group).toMatchObject({ verdict: 'cannot-tell', moreNeeded: 1 });
  expect(group.perHour?.low).toBeNull();
  expect(found.stops[0]?.answer).toBe('cannot-tell');
});

test('batches and pickings are never counted together', () => {
  const found = reckon({
    batches: [basil('a', 4)],
    picks: [pick('p', { crop: 'basil', place: 'long-house' })],
  });
  const crops = found.groups.filter(({ by }) => by === 'crop');
  expect(crops.map(({ of, units }) => [of, units])).toEqual([
    ['batches', 1],
    ['pickings', 1],
  ]);
});

test('a crop that does not pay is to be stopped, with the price that would pay and the crop that earns more', () => {
  const poor = ['a', 'b', 'c', 'd'].map((id, i) => basil(id, 1.2 + i / 50));
  const shoots = ['e', 'f', 'g'].map((id, i) =>
    basil(id, 4 + i / 10, { crop: 'pea-shoots', place: 'sun-house' }),
  );
  const { stops } = reckon({ batches: [...poor, ...shoots] });
  const [one, other] = ['basil', 'pea-shoots'].map((id) => stops.find(({ crop }) => crop === id));
  expect(one).toMatchObject({ answer: 'stop', price: 30 });
  expect(one?.priceToPay?.low ?? 0).toBeGreaterThan(30);
  expect(one?.instead).toMatchObject({ crop: 'pea-shoots', brings: 'more' });
  expect(other).toMatchObject({ answer: 'go-on' });
  expect(other?.instead).toMatchObject({ crop: 'basil', brings: 'less' });
});

test('a crop with fewer than three batches is nobody’s example', () => {
  const few = ['e', 'f'].map((id) => basil(id, 9, { crop: 'pea-shoots' }));
  const { stops } = reckon({ batches: [basil('a', 1), basil('b', 1), basil('c', 1), ...few] });
  expect(stops.find(({ crop }) => crop === 'basil')?.instead).toBeNull();
});

test.for([
  ['2025-12-01', 51.9, 'winter', '2026-0'],
  ['2026-02-28', 51.9, 'winter', '2026-0'],
  ['2026-03-01', 51.9, 'spring', '2026-1'],
  ['2026-08-31', 51.9, 'summer', '2026-2'],
  ['2026-11-30', 51.9, 'autumn', '2026-3'],
  ['2025-12-01', -41, 'summer', '2026-0'],
  ['2026-07-01', -41, 'winter', '2026-2'],
] as const)('%s at %f° is %s', ([day, lat, season, key]) => {
  // WMO-No. 1203: seasons of three calendar months from December (from memory).
  expect(yearSeason(day, lat)).toEqual({ season, key });
});

// Properties: what holds whatever people wrote down.

const kilograms = fc.double({ min: 0.6, max: 20, noNaN: true });
const some = fc.array(
  fc.record({
    kg: kilograms,
    trays: fc.integer({ min: 1, max: 30 }),
    place: fc.constantFrom('long-house', 'sun-house'),
    crop: fc.constantFrom('basil', 'pea-shoots'),
    later: fc.integer({ min: 0, max: 300 }),
    known: fc.boolean(),
  }),
  { minLength: 1, maxLength: 14 },
);
const made = (told: typeof some extends fc.Arbitrary<infer All> ? All : never) =>
  told.map(({ kg, trays, place, crop, later, known }, i) =>
    batch(`batch-${i}`, {
      facts: { trays, place, crop, sownAt: SOWN - later * DAY },
      cut: { kg, lostKg: known ? 0.5 : null },
    }),
  );

test('the order in which batches are told changes nothing', () => {
  fc.assert(
    fc.property(
      some.chain((told) =>
        fc.tuple(fc.constant(told), fc.shuffledSubarray(made(told), { minLength: told.length })),
      ),
      ([told, mixed]) => {
        const key = (group: { by: string; crop: unknown; place: unknown; season: unknown }) =>
          [group.by, group.crop, group.place, group.season].join(' ');
        const sorted = (batches: ReturnType<typeof made>) =>
          reckon({ batches, lots: [lot('l', 5, 1)] }).groups.toSorted((a, b) =>
            key(a) < key(b) ? -1 : 1,
          );
        expect(sorted(mixed)).toEqual(sorted(made(told)));
      },
    ),
    { numRuns: 40 },
  );
});

test('a batch of which something is not known changes no verdict, no range and no sum', () => {
  fc.assert(
    fc.property(some, fc.constantFrom('lost', 'minutes'), (told, what) => {
      const batches = made(told);
      const whole = batch('zz', {
        facts: { crop: 'pea-shoots' },
        cut: { kg: 500, lostKg: what === 'lost' ? null : 0 },
      });
      const vague = what === 'minutes' ? { ...whole, works: [] } : whole;
      const before = reckon({ batches });
      const after = reckon({ batches: [...batches, vague] });
      for (const group of before.groups) {
        const same = after.groups.find(
          (one) =>
            one.by === group.by &&
            one.crop === group.crop &&
            one.place === group.place &&
            one.season === group.season,
        );
        const { verdict, perHour, sums, counted, moreNeeded } = group;
        expect(same).toMatchObject({ verdict, perHour, sums, counted, moreNeeded });
      }
    }),
    { numRuns: 40 },
  );
});

test('a figure that is not known never counts as zero: nothing is earned of it at all', () => {
  fc.assert(
    fc.property(some, (told) => {
      for (const unit of reckon({ batches: made(told) }).units) {
        const money = (['lost', 'price', 'seed', 'other'] as const).some(
          (field) => unit.figures[field]?.from === 'unknown',
        );
        expect(unit.earnings === null).toBe(money);
        if (unit.figures.minutes?.from === 'unknown') expect(unit.minutes).toBeNull();
      }
    }),
    { numRuns: 40 },
  );
});

test('what groups earn is what their batches earn: nothing is counted twice or lost', () => {
  fc.assert(
    fc.property(some, (told) => {
      const found = reckon({ batches: made(told) });
      const all = found.units.reduce(
        (sum, { earnings, minutes }) => sum + (minutes === null ? 0 : (earnings?.earned ?? 0)),
        0,
      );
      for (const by of ['crop', 'place', 'season', 'crop-place', 'crop-season'])
        expect(
          found.groups
            .filter((one) => one.by === by)
            .reduce((sum, one) => sum + one.sums.earned, 0),
        ).toBeCloseTo(all, 6);
    }),
    { numRuns: 40 },
  );
});
