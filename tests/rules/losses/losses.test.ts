import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  associationWords,
  exposureSplit,
  isExposed,
  lossAssociation,
  lossAssociations,
  lossMoney,
  pooledLoss,
} from '../../../rules/losses/index.ts';
import { truth } from '../../truth/index.ts';

test('420 of 12,000 g are 35 per thousand, also when they come from two lots', () => {
  // By hand; the mean of the two rates, 75 and 15, would be 45.
  expect(pooledLoss([{ harvested: 12_000, lost: 420 }]).perThousand).toBe(35);
  const two = pooledLoss([
    { harvested: 4000, lost: 300 },
    { harvested: 8000, lost: 120 },
  ]);
  expect(two).toEqual({ perThousand: 35, harvested: 12_000, lost: 420, lots: 2, unknownLots: 0 });
});

test('a lot nobody weighed is left out and counted; nothing harvested has no rate', () => {
  const lots = [
    { harvested: 100, lost: 10 },
    { harvested: null, lost: 5 },
    { harvested: 50, lost: null },
  ];
  expect(pooledLoss(lots)).toMatchObject({ perThousand: 100, lots: 1, unknownLots: 2 });
  expect(pooledLoss([]).perThousand).toBeNull();
  expect(() => pooledLoss([{ harvested: 1, lost: 2 }])).toThrow('Expected loss from 0 to 1, got 2');
});

test('splitting a lot changes no pooled loss, and the rate lies among those of the lots', () => {
  const lot = fc
    .tuple(fc.integer({ min: 1, max: 1e5 }), fc.double({ min: 0, max: 1, noNaN: true }))
    .map(([harvested, share]) => ({ harvested, lost: harvested * share }));
  fc.assert(
    fc.property(fc.array(lot, { minLength: 1 }), (lots) => {
      const halves = lots.flatMap(({ harvested, lost }) => [
        { harvested: harvested / 2, lost: lost / 2 },
        { harvested: harvested / 2, lost: lost / 2 },
      ]);
      const rate = pooledLoss(lots).perThousand ?? -1;
      const rates = lots.map(({ harvested, lost }) => (1000 * lost) / harvested);
      return (
        Math.abs((pooledLoss(halves).perThousand ?? -9) - rate) < 1e-6 &&
        rate >= Math.min(...rates) - 1e-6 &&
        rate <= Math.max(...rates) + 1e-6
      );
    }),
  );
});

test('0.42 kg at 16 are 6.72', () => {
  expect(lossMoney(0.42, 16)).toBeCloseTo(6.72, 12);
  expect(lossMoney(0.42, null)).toBeNull();
});

test('an exposure is sure only where what is not known cannot change it', () => {
  expect(isExposed({ known: 2.1, unknown: 0 }, 2)).toBe(true);
  expect(isExposed({ known: 1.5, unknown: 0.5 }, 2)).toBe(false);
  expect(isExposed({ known: 1.5, unknown: 0.6 }, 2)).toBeNull();
});

test('lots of unknown exposure or outcome are counted apart', () => {
  const lots = [
    { exposed: true, lost: true },
    { exposed: true, lost: false },
    { exposed: false, lost: true },
    { exposed: false, lost: false },
    { exposed: null, lost: true },
    { exposed: true, lost: null },
  ];
  expect(exposureSplit(lots)).toEqual({
    exposedLost: 1,
    exposedKept: 1,
    otherLost: 1,
    otherKept: 1,
    lots: 4,
    unknownLots: 2,
  });
});

const facts = (exposedLost: number, exposedKept: number, otherLost: number, otherKept: number) => ({
  exposedLost,
  exposedKept,
  otherLost,
  otherKept,
  lots: exposedLost + exposedKept + otherLost + otherKept,
  unknownLots: 0,
});

test.for(
  truth('losses/splits.csv', ['a', 'b', 'c', 'd', 'p', 'difference', 'low', 'high', 'least']),
)('[$a $b; $c $d] has chance $p and a difference of $difference', ({ a, b, c, d, ...row }) => {
  const found = lossAssociation(facts(a, b, c, d));
  expect(found.p).toBeCloseTo(row.p, 6);
  expect(found.difference?.difference).toBeCloseTo(row.difference, 6);
  expect(found.difference?.low).toBeCloseTo(row.low, 5);
  expect(found.difference?.high).toBeCloseTo(row.high, 5);
  expect(found.leastP).toBeCloseTo(row.least, 6);
});

test.for([
  [2, 0, 1, 9],
  [9, 1, 0, 2],
  [2, 0, 0, 3],
  [0, 0, 4, 4],
] as const)('[%s %s; %s %s] may show counts only', ([a, b, c, d]) => {
  const found = lossAssociation(facts(a, b, c, d));
  expect([found.p, found.difference]).toEqual([null, null]);
});

test.for([
  [0.049, 12, 'worth-a-trial'],
  [0.051, 12, 'a-hint'],
  [0.01, 11, 'a-hint'],
  [0.198, 30, 'a-hint'],
  [0.202, 30, 'nothing-to-see'],
  [null, 30, 'counts-only'],
] as const)('a rate of %s over %s lots is %s', ([q, lots, words]) => {
  expect(associationWords(q, lots)).toBe(words);
});

const lost = [
  true,
  true,
  true,
  true,
  true,
  true,
  true,
  true,
  false,
  false,
  false,
  false,
  false,
  false,
];
const warm = lost.map((each, i) => (i === 0 ? false : i === 13 ? true : each));
const big = warm.map((each, i) => (i === 1 ? !each : each));
const idle = lost.map((_, i) => i % 2 === 0);
const dark = lost.map((_, i) => (i < 2 ? true : null));
const factors = [
  { what: 'warm', exposed: warm },
  { what: 'big-harvest', exposed: big },
  { what: 'even-row', exposed: idle },
  { what: 'unseen', exposed: dark },
];

test('every factor offered counts, and each is shown with its rival', () => {
  const { associations, tried } = lossAssociations(lost, factors);
  expect(tried).toBe(4);
  // SciPy 1.17: fisher_exact of [7 1; 1 5] and [6 1; 2 5]; false_discovery_control over p, p, 1, 1.
  expect(associations.map(({ p }) => p === null || Number(p.toFixed(6)))).toEqual([
    0.025641,
    0.102564,
    1,
    true,
  ]);
  expect(associations[0]?.q).toBeCloseTo(0.1025641, 6);
  expect(associations[1]?.q).toBeCloseTo(0.2051282, 6);
  expect(associations[3]?.q).toBeNull();
  expect(associations.map(({ words }) => words)).toEqual([
    'a-hint',
    'nothing-to-see',
    'nothing-to-see',
    'counts-only',
  ]);
  expect(associations.map(({ rival }) => rival)).toEqual(['big-harvest', 'warm', null, null]);
  expect(associations[3]?.facts.unknownLots).toBe(12);
});

test('offering more useless factors never makes a find stronger', () => {
  const one = lossAssociations(lost, factors.slice(0, 1)).associations[0]?.q ?? 0;
  const many = lossAssociations(lost, factors).associations[0]?.q ?? 0;
  expect(many).toBeGreaterThan(one);
  expect(lossAssociations(lost, []).associations).toEqual([]);
  expect(() => lossAssociations(lost, [{ what: 'warm', exposed: [true] }])).toThrow(
    'Expected entries of warm from 14 to 14, got 1',
  );
});

test('a factor is a rival from a kappa of 0.5 on', () => {
  // By hand, 8 lots, 4 exposed in both: kappa = (agreement - 0.5) / 0.5; 6 agree 0.5, 4 agree 0.
  const half = Array.from({ length: 8 }, (_, i) => i < 4);
  const like = half.map((each, i) => (i === 0 || i === 7 ? !each : each));
  const unlike = half.map((each, i) => (i < 2 || i > 5 ? !each : each));
  const rival = (other: readonly boolean[]) =>
    lossAssociations(half, [
      { what: 'a', exposed: half },
      { what: 'b', exposed: other },
    ]).associations[0]?.rival;
  expect(rival(like)).toBe('b');
  expect(rival(unlike)).toBeNull();
});
