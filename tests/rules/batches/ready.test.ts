import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  batchQuantile,
  batchSpread,
  daysToHarvest,
  flowerToRipe,
  harvestWindow,
  lightTerm,
  readyProbability,
  sowingDay,
} from '../../../rules/batches/index.ts';
import { truth } from '../../truth/index.ts';

const past = [142, 151, 138, 147, 155, 149];
const six = { pastDegreeDays: past, soFar: 96, perDay: 9.5 };

test('six batches: 147.0, spread 6.1644; half widths 9.8269 and 17.1158', () => {
  // NumPy and SciPy 1.17 (stats.t).
  const spread = batchSpread(past);
  expect(spread.mean).toBe(147);
  expect(spread.sd / Math.sqrt(7 / 6)).toBeCloseTo(6.164414, 6);
  expect(batchQuantile(spread, 0.9) * spread.sd).toBeCloseTo(9.82692, 5);
  expect(batchQuantile(spread, 0.975) * spread.sd).toBeCloseTo(17.115777, 5);
});

test('5.3684 days left, with a spread of 0.9752', () => {
  expect(daysToHarvest({ ...six, perDaySd: 1.2 })?.days).toBeCloseTo(5.368421, 6);
  expect(daysToHarvest({ ...six, perDaySd: 1.2 })?.sd).toBeCloseTo(0.975228, 6);
  expect(daysToHarvest({ ...six, soFar: 200, perDaySd: 1.2 })?.days).toBe(0);
  expect(daysToHarvest({ ...six, perDay: 0, perDaySd: 1.2 })).toBeNull();
  expect(daysToHarvest({ ...six, soFar: null, perDaySd: 1.2 })).toBeNull();
});

test.for(truth('batches/readyProbability.csv', ['units', 'p']))(
  'at $units units it is ready with chance $p',
  ({ units, p }) => {
    expect(readyProbability(past, units)).toBeCloseTo(p, 6);
  },
);

test('the first batches: a spread of 12 %, two of it, and no chance that anybody knows', () => {
  const spread = batchSpread([90, 110]);
  expect(spread).toMatchObject({ n: 2, mean: 100, df: null });
  expect(spread.sd).toBeCloseTo(12 * Math.sqrt(1.5), 12);
  expect([0.1, 0.495, 0.5, 0.505].map((p) => batchQuantile(spread, p))).toEqual([-2, -2, 0, 2]);
  expect(readyProbability([90, 110], 100)).toBeNull();
  expect(readyProbability([90, 110, 100], 100)).toBe(0.5);
});

test('batches all alike keep a spread of 3 %', () => {
  expect(batchSpread([200, 200, 200, 200]).sd).toBeCloseTo(6 * Math.sqrt(1.25), 12);
});

test('while salad only stands the window is half as wide again', () => {
  const usual = harvestWindow({ ...six, confidence: 0.8 });
  const standing = harvestWindow({ ...six, confidence: 0.8, standing: true });
  const half = Number(usual.late) - Number(usual.expected);
  expect(Number(standing.late) - Number(standing.expected)).toBeCloseTo(1.5 * half, 9);
  expect(Number(standing.expected) - Number(standing.early)).toBeCloseTo(1.5 * half, 9);
  expect(harvestWindow({ ...six, soFar: null, confidence: 0.8 })).toBeNull();
});

const unitsBefore = Array.from({ length: 40 }, (_, index) => 10 - 0.2 * index);
const plan = { pastDegreeDays: past, unitsBefore };

test.for(truth('batches/sowingDay.csv', ['chance', 'keep', 'target', 'days', 'ready', 'early']))(
  'to be ready with chance $chance and keep $keep days, sow $days days before',
  (row) => {
    const found = sowingDay({ ...plan, keepDays: row.keep, chance: row.chance });
    expect(found.target).toBeCloseTo(row.target, 5);
    expect(found.daysBefore).toBe(row.days);
    expect(found.ready).toBeCloseTo(row.ready, 6);
    expect(found.tooEarly).toBeCloseTo(row.early, 6);
    expect(found.late).toBe(false);
  },
);

test('nine in ten is the usual chance, and one in ten the most that may be early', () => {
  expect(sowingDay({ ...plan, keepDays: 3 }).target).toBeCloseTo(156.82692, 5);
  expect(sowingDay({ ...plan, keepDays: 3 }).second).toBeNull();
  // SciPy 1.17 (stats.t): sown 19 days before, 0.0797 would be ready two days early; 18 and one
  // day: 0.1527; 17 and one day: 0.0431.
  expect(sowingDay({ ...plan, keepDays: 2 }).second).toBe(19);
  expect(sowingDay({ ...plan, keepDays: 1 }).second).toBe(17);
  expect(sowingDay({ ...plan, keepDays: 1, mostEarly: 0.16 }).second).toBe(18);
  expect(sowingDay({ ...plan, keepDays: 2, mostEarly: 0.26 }).second).toBeNull();
  expect(sowingDay({ ...plan, keepDays: 2, mostEarly: 0.0797 }).second).toBe(18);
  // 137.17308 units (147 - 1.475884 x 6.6584) is where one batch in ten is ready.
  const second = (units: number) =>
    sowingDay({ ...plan, unitsBefore: [30, 50, 50, units - 100], keepDays: 1 }).second;
  expect(second(137.1)).toBeNull();
  expect(second(137.25)).toBe(3);
});

test('a date that is past is told with the chance of making the day all the same', () => {
  const found = sowingDay({ ...plan, keepDays: 2, daysLeft: 15 });
  expect(found).toMatchObject({ daysBefore: 20, late: true, second: null });
  expect(found.ready).toBeCloseTo(0.021306, 6); // SciPy 1.17 (stats.t)
  expect(sowingDay({ ...plan, keepDays: 2, daysLeft: 20 }).late).toBe(false);
});

test('too few days to look back on say nothing, and no past chance gives none', () => {
  const short = sowingDay({ ...plan, unitsBefore: [9, 9], keepDays: 2 });
  expect(short).toMatchObject({ daysBefore: null, ready: null, tooEarly: null, late: false });
  const first = sowingDay({ ...plan, pastDegreeDays: [147], keepDays: 0 });
  expect(first).toMatchObject({ ready: null, tooEarly: null, second: null });
  expect(first.target).toBeCloseTo(147 * (1 + 0.24 * Math.SQRT2), 9);
});

test('wanting to be surer never lets one sow later', () => {
  const chance = fc.double({ min: 0.5, max: 0.99, noNaN: true });
  fc.assert(
    fc.property(chance, chance, (a, b) => {
      const days = (wanted: number) =>
        sowingDay({ ...plan, keepDays: 2, chance: wanted }).daysBefore ?? 99;
      return days(Math.min(a, b)) <= days(Math.max(a, b));
    }),
  );
});

const lit = (count: number, wobble: number) =>
  Array.from({ length: count }, (_, index) => ({
    light: 5 + index,
    degreeDays: 300 - 4 * index + (index % 2 === 0 ? wobble : -wobble),
  }));

test('light is taken in when eight batches say so clearly', () => {
  expect(lightTerm(lit(7, 0))).toBeNull();
  const term = lightTerm(lit(8, 0));
  expect(term?.slope).toBeCloseTo(-4, 9);
  expect(term?.at).toBeCloseTo(8.5, 9);
  expect(term?.correlation).toBeCloseTo(-1, 9);
});

test('a weak or a contrary light leaves heat units alone', () => {
  // NumPy (corrcoef): -0.4961 with a wobble of 27 and -0.5048 with 26.
  expect(lightTerm(lit(8, 27))).toBeNull();
  expect(lightTerm(lit(8, 26))).not.toBeNull();
  expect(lightTerm(lit(8, 0).map((each) => ({ ...each, light: 30 - each.light })))).toBeNull();
  expect(lightTerm(lit(8, 0).map((each) => ({ ...each, light: 9 })))).toBeNull();
  expect(lightTerm([...lit(7, 0), { light: null, degreeDays: 200 }])).toBeNull();
});

test('thirty days at 15 °C take a flower to ripe fruit', () => {
  expect(flowerToRipe(15)).toBe(360); // 30 x (15 - 3), by hand
  expect(flowerToRipe(1)).toBe(0);
  expect(flowerToRipe(null)).toBeNull();
});
