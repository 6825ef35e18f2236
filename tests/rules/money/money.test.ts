import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  breakEvenFall,
  contribution,
  costPerKilogramSold,
  expectedSaving,
  harvestHours,
  valuePerAreaDay,
  valuePerLabourHour,
} from '../../../rules/money/index.ts';
import { truth } from '../../truth/index.ts';

// All money here is invented.
const tray = { revenue: 7.2, directCost: 1.6, area: 0.125, days: 10 };
const harvest = {
  harvestKilograms: 12,
  lossShare: 0.15,
  fixed: 30,
  hours: 4.5,
  wage: 14,
  packingPerKilogram: 0.35,
};

test('a tray of 180 g at 40 a kg earns 4.48 per m² and day, and 37.33 an hour for nine minutes', () => {
  // By hand: 5.60 / (0.125 x 10) and 5.60 / 0.15.
  expect(valuePerAreaDay(tray)).toBeCloseTo(4.48, 12);
  const labour = { revenue: 7.2, directCost: 1.6, labourMinutes: 9 };
  expect(valuePerLabourHour(labour)).toBeCloseTo(37.333333, 6);
});

test('no place, no time or no labour gives no figure; unknown gives unknown', () => {
  expect(valuePerAreaDay({ ...tray, days: 0 })).toBeNull();
  expect(valuePerAreaDay({ ...tray, area: 0 })).toBeNull();
  expect(valuePerLabourHour({ revenue: 7, directCost: 1, labourMinutes: 0 })).toBeNull();
  expect(valuePerAreaDay({ ...tray, revenue: null })).toBeNull();
  expect(() => valuePerAreaDay({ ...tray, revenue: -1 })).toThrow('Expected revenue from 0');
});

test.for(truth('money/costPerKilogramSold.csv', ['loss', 'cost']))(
  'with a loss of $loss a kilogram sold costs $cost',
  ({ loss, cost }) => {
    expect(costPerKilogramSold({ ...harvest, lossShare: loss })).toBeCloseTo(cost, 7);
  },
);

test('picking 12 kg at 4 kg/h and 1.5 h more are 4.5 h', () => {
  expect(harvestHours(12, 4, 1.5)).toBe(4.5);
  expect(harvestHours(12, null, 1.5)).toBeNull();
});

test('when all is lost there is no cost per kilogram sold', () => {
  expect(costPerKilogramSold({ ...harvest, lossShare: 1 })).toBeNull();
  expect(costPerKilogramSold({ ...harvest, harvestKilograms: 0 })).toBeNull();
  expect(costPerKilogramSold({ ...harvest, wage: null })).toBeNull();
  expect(() => costPerKilogramSold({ ...harvest, lossShare: 1.01 })).toThrow('Expected loss');
});

test('more loss never makes a kilogram cheaper, and the break-even price leaves nothing', () => {
  const loss = fc.double({ min: 0, max: 0.99, noNaN: true });
  fc.assert(
    fc.property(loss, loss, (a, b) => {
      const cost = (lossShare: number) => costPerKilogramSold({ ...harvest, lossShare }) ?? 0;
      const dear = cost(Math.max(a, b));
      return cost(Math.min(a, b)) <= dear + 1e-9 && contribution(dear, dear) === 0;
    }),
  );
  expect(contribution(16, 9.5)).toBe(6.5);
  expect(contribution(5, null)).toBeNull();
});

test.for(
  truth('money/expectedSaving.csv', [
    'value',
    'without',
    'with',
    'minutes',
    'saving',
    'break_even',
  ]),
)('$value at risk, $without to $with in $minutes min, saves $saving', (row) => {
  const task = { valueAtRisk: row.value, minutes: row.minutes, wage: 14 };
  const saving = expectedSaving({ ...task, without: row.without, with: row.with });
  expect(saving).toBeCloseTo(row.saving, 9);
  if (row.value === 0) expect(breakEvenFall(task)).toBeNull();
  else expect(breakEvenFall(task)).toBeCloseTo(row.break_even, 8);
});

test('at the break-even fall a task saves nothing', () => {
  const value = fc.double({ min: 1, max: 1e4, noNaN: true });
  fc.assert(
    fc.property(value, fc.double({ min: 0, max: 60, noNaN: true }), (valueAtRisk, minutes) => {
      const fall = breakEvenFall({ valueAtRisk, minutes, wage: 14 }) ?? 9;
      if (fall > 1) return true;
      const saving = expectedSaving({ valueAtRisk, without: fall, with: 0, minutes, wage: 14 });
      return Math.abs(saving) < 1e-9;
    }),
  );
  const task = { valueAtRisk: 180, without: null, with: 0.05, minutes: 12, wage: 14 };
  expect(expectedSaving(task)).toBeNull();
});
