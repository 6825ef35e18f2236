import fc from 'fast-check';
import { expect, test } from 'vitest';
import { chanceShort, coverWants, freeTrays, type Supply } from '../../../rules/batches/index.ts';
import { truth } from '../../truth/index.ts';

const columns = ['wanted', 'kg_a', 'sd_a', 'ready_a', 'kg_b', 'sd_b', 'ready_b', 'df'] as const;
test.for(truth('batches/chanceShort.csv', [...columns, 'short']))(
  'a delivery of $wanted kg is short with a chance of $short',
  (row) => {
    const shares = [
      { kilograms: row.kg_a, sd: row.sd_a, ready: row.ready_a },
      { kilograms: row.kg_b, sd: row.sd_b, ready: row.ready_b },
    ].filter(({ kilograms }) => kilograms > 0);
    expect(Math.abs(chanceShort(row.wanted, shares, row.df) - row.short)).toBeLessThan(1e-6);
  },
);

test('nothing comes in: it is short for sure; nothing wanted: never', () => {
  expect(chanceShort(1, [], 5)).toBe(1);
  expect(chanceShort(0, [], 5)).toBe(0);
});

const anyShare = fc.record({
  kilograms: fc.double({ min: 0, max: 10, noNaN: true }),
  sd: fc.double({ min: 0, max: 3, noNaN: true }),
  ready: fc.double({ min: 0, max: 1, noNaN: true }),
});

test('wanting more is never less likely to be short, and the chance is one', () => {
  fc.assert(
    fc.property(
      fc.array(anyShare, { maxLength: 6 }),
      fc.double({ min: 0, max: 20, noNaN: true }),
      fc.double({ min: 0, max: 20, noNaN: true }),
      (shares, a, b) => {
        const [less, more] = a <= b ? [a, b] : [b, a];
        const low = chanceShort(less, shares, 5);
        const high = chanceShort(more, shares, 5);
        expect(low).toBeGreaterThanOrEqual(0);
        expect(high).toBeLessThanOrEqual(1);
        expect(low).toBeLessThanOrEqual(high + 1e-9);
      },
    ),
  );
});

test('shares beyond those that are summed up count as not there', () => {
  const many = Array.from({ length: 18 }, () => ({ kilograms: 1, sd: 0, ready: 0.999 }));
  expect(chanceShort(17, many, 5)).toBe(1);
  expect(chanceShort(16, many, 5)).toBeCloseTo(1 - 0.999 ** 16, 9);
});

const supply = (wish: Partial<Supply>): Supply => ({
  ...{ id: 'a', crop: 'basil', kilograms: 5, from: 0, until: 10, meantFor: null },
  ...wish,
});
const want = (delivery: number, kilograms: number) => ({ delivery, crop: 'basil', kilograms });

test('what is over soonest goes first, and the rest of it to the next delivery it reaches', () => {
  const { covered, open } = coverWants(
    [want(9, 4), want(3, 4)],
    [supply({ id: 'late' }), supply({ id: 'soon', until: 4, kilograms: 3 })],
  );
  expect(covered).toEqual([
    { delivery: 3, crop: 'basil', supply: 'soon', kilograms: 3 },
    { delivery: 3, crop: 'basil', supply: 'late', kilograms: 1 },
    { delivery: 9, crop: 'basil', supply: 'late', kilograms: 4 },
  ]);
  expect(open).toEqual([]);
});

test('a batch goes to the delivery it was sown for, though a nearer one is short', () => {
  const { covered, open } = coverWants([want(3, 4), want(9, 4)], [supply({ meantFor: 9 })]);
  expect(covered.map(({ delivery, kilograms }) => [delivery, kilograms])).toEqual([
    [9, 4],
    [3, 1],
  ]);
  expect(open).toEqual([want(3, 3)]);
});

test('what is not ready by then, or over before it, covers nothing', () => {
  for (const wish of [{ from: 4 }, { until: 2 }, { crop: 'cress' }])
    expect(coverWants([want(3, 4)], [supply(wish)]).open).toEqual([want(3, 4)]);
});

test('every kilogram wanted is covered or open, and no supply gives more than it has', () => {
  const crops = fc.constantFrom('basil', 'cress');
  const anyWant = fc.record({
    delivery: fc.integer({ min: 0, max: 20 }),
    crop: crops,
    kilograms: fc.double({ min: 0, max: 9, noNaN: true }),
  });
  const anySupply = fc.record({
    crop: crops,
    kilograms: fc.double({ min: 0, max: 9, noNaN: true }),
    from: fc.integer({ min: 0, max: 20 }),
    length: fc.integer({ min: 0, max: 9 }),
    meantFor: fc.option(fc.integer({ min: 0, max: 20 })),
  });
  fc.assert(
    fc.property(
      fc.array(anyWant, { maxLength: 8 }),
      fc.array(anySupply, { maxLength: 8 }),
      (wants, some) => {
        const supplies = some.map(({ length, ...one }, i) => ({
          ...{ ...one, id: `s${i}`, until: one.from + length },
        }));
        const { covered, open } = coverWants(wants, supplies);
        const sum = (all: readonly { kilograms: number }[]) =>
          all.reduce((total, { kilograms }) => total + kilograms, 0);
        // Each may leave less than a gram unsaid.
        expect(Math.abs(sum(covered) + sum(open) - sum(wants))).toBeLessThan(0.001 * 9);
        for (const { id, kilograms, from, until } of supplies) {
          const own = covered.filter((one) => one.supply === id);
          expect(sum(own)).toBeLessThanOrEqual(kilograms + 1e-9);
          for (const { delivery } of own) expect(delivery >= from && delivery <= until).toBe(true);
        }
      },
    ),
  );
});

test('free trays are what is left of the capacity, day by day, never less than none', () => {
  const standing = [
    { trays: 10, from: 0, until: 2 },
    { trays: 25, from: 2, until: 3 },
  ];
  expect(freeTrays(30, standing, 5)).toEqual([20, 20, 0, 5, 30]);
  expect(() => freeTrays(-1, [], 5)).toThrow('Expected capacity from 0 to 100000');
  expect(() => freeTrays(1, [{ trays: -1, from: 0, until: 1 }], 5)).toThrow('standing trays');
  expect(() => coverWants([want(367, 1)], [])).toThrow('Expected day of delivery from 0 to 366');
  expect(() => coverWants([], [supply({ kilograms: -1 })])).toThrow('Expected weight of a supply');
  expect(() => chanceShort(-1, [], 5)).toThrow('Expected wanted weight');
});
