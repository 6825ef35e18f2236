import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  bestStop,
  keepCleanOrCut,
  mayCutBack,
  rotChance,
  worthCovering,
} from '../../../rules/batches/index.ts';
import { truth } from '../../truth/index.ts';

const table = truth('batches/bestStop.csv', [
  'mass',
  'units',
  'day',
  'survives',
  'sound',
  'worth',
  'value',
  'sound_clean',
  'value_clean',
]);
const patch = {
  cohorts: table.map(({ mass, units }) => ({ mass, units })),
  units: [6, 6, 5.5, 5.5, 5, 5, 5, 4.5, 4.5, 4.5, ...Array<number>(20).fill(4)],
  killed: [
    0.02,
    0.02,
    0.03,
    0.05,
    0.05,
    0.08,
    0.08,
    0.1,
    0.1,
    0.12,
    ...Array<number>(20).fill(0.15),
  ],
  rotWet: 0.1,
  rotDry: 0.02,
  wetChance: 0.3,
  margin: 6,
  perPicking: 12,
  perDay: 1,
};
const clean = { rotWet: 0.04, rotDry: 0.01, cost: 5 };
const cut = { hygiene: 25, cost: 18, nextYear: 400, lostShare: 0.05 };

test.for(table.map((row, index) => ({ ...row, index })))(
  'picking on to day $day brings $value',
  (row) => {
    const stop = bestStop(patch).stops[row.index];
    expect(stop?.day).toBe(row.day);
    for (const key of ['survives', 'sound', 'worth', 'value'] as const) {
      expect(stop?.[key]).toBeCloseTo(row[key], 5);
    }
    const cleaned = bestStop({ ...patch, ...clean }).stops[row.index];
    expect(cleaned?.sound).toBeCloseTo(row.sound_clean, 5);
    expect(cleaned?.value).toBeCloseTo(row.value_clean, 5);
  },
);

test('the best is to pick on day 4 and stop', () => {
  const best = bestStop(patch);
  expect([best.cohort, best.day]).toEqual([0, 4]);
  expect(best.value).toBeCloseTo(11.992145, 5);
  expect(rotChance(patch)).toBeCloseTo(0.044, 12);
});

test('cutting now would lose 24.99; once dormant and picked out it gains 7', () => {
  const now = keepCleanOrCut(patch, clean, cut);
  expect(now.keep).toBeCloseTo(11.992145, 5);
  expect(now.clean).toBeCloseTo(17.52041 - 5, 5);
  expect(now.cut).toBeCloseTo(-24.992145, 5);
  const dormant = keepCleanOrCut({ ...patch, cohorts: [] }, clean, { ...cut, lostShare: 0 });
  expect(dormant).toEqual({ keep: 0, clean: -5, cut: 7 });
});

test('covers are worth what the patch would bring without frost', () => {
  // NumPy: 17.0798, on day 9.
  expect(worthCovering(patch, 17.07)).toBe(true);
  expect(worthCovering(patch, 17.09)).toBe(false);
});

test('fruit that will not ripen in the days ahead is not reckoned with, nor is a loss taken', () => {
  const cold = bestStop({ ...patch, units: [1, 1], killed: [0, 0] });
  expect(cold).toMatchObject({ cohort: null, day: null, value: 0 });
  expect(cold.stops.every(({ day }) => day === null)).toBe(true);
  expect(bestStop({ ...patch, margin: 0 })).toMatchObject({ cohort: null, value: 0 });
  const ripe = bestStop({ ...patch, cohorts: [{ mass: 4, units: 0 }] });
  expect(ripe).toMatchObject({ cohort: 0, day: 0, value: 12 }); // 4 x 6 - 12
});

test('a likelier frost never makes a patch worth more', () => {
  const p = fc.double({ min: 0, max: 0.5, noNaN: true });
  fc.assert(
    fc.property(p, p, (a, b) => {
      const value = (chance: number) =>
        bestStop({ ...patch, killed: patch.killed.map(() => chance) }).value;
      return value(Math.max(a, b)) <= value(Math.min(a, b)) + 1e-9;
    }),
  );
});

const none = {
  juneBearing: true,
  daysSinceLastPicking: 60,
  leavesFlatAndRed: false,
  lows: [-5, -4.05, null, -3, -9],
  dayLength: 10.4,
  growerInsists: false,
};

test.for([
  ['dormant', {}],
  [null, { dayLength: 10.5 }],
  [null, { dayLength: null }],
  [null, { lows: [-5, -4, -3.9, -9] }],
  ['renovation', { daysSinceLastPicking: 28, lows: [] }],
  [null, { daysSinceLastPicking: 28.5, lows: [] }],
  [null, { daysSinceLastPicking: 5, juneBearing: false, lows: [] }],
  [null, { daysSinceLastPicking: 5, juneBearing: null, lows: [] }],
  [null, { daysSinceLastPicking: null, lows: [] }],
  ['dormant', { lows: [], dayLength: 15, leavesFlatAndRed: true }],
  [null, { lows: [], leavesFlatAndRed: null }],
  ['grower', { lows: [], growerInsists: true }],
] as const)('cutting back: %s for %j', ([reason, change]) => {
  expect(mayCutBack({ ...none, ...change })).toBe(reason);
});
