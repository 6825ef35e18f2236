import { expect, test } from 'vitest';
import {
  breakEvenFall,
  costPerKilogramSold,
  expectedSaving,
  harvestHours,
  valuePerAreaDay,
  valuePerLabourHour,
} from '../../../rules/money/index.ts';

// Invented.
const harvest = {
  harvestKilograms: 10,
  lossShare: 0,
  fixed: 0,
  hours: 1,
  wage: 10,
  packingPerKilogram: 0,
};
const tray = { revenue: 2, directCost: 1, area: 1, days: 1 };
const sale = { revenue: 2, directCost: 1 };
const task = { valueAtRisk: 100, minutes: 60, wage: 10 };
const chances = { without: 0.5, with: 0.5 };

// Each call is given a bound, and then a number beyond it. What comes out at the bound is by hand.
test.for<[string, (value: number) => unknown, at: number, out: number, beyond: number]>([
  [
    'harvest from 0 to 10000000 kg',
    (harvestKilograms) => costPerKilogramSold({ ...harvest, harvestKilograms }),
    10_000_000,
    0.000001,
    10_100_000,
  ],
  [
    'hours from 0 to 1000000 h',
    (hours) => costPerKilogramSold({ ...harvest, hours }),
    1_000_000,
    1_000_000,
    1_010_000,
  ],
  ['loss from 0 to 1 ', (lossShare) => costPerKilogramSold({ ...harvest, lossShare }), 0, 1, 1.01],
  [
    'harvest from 0 to 10000000 kg',
    (value) => harvestHours(value, 100, 0),
    10_000_000,
    100_000,
    10_100_000,
  ],
  [
    'picking speed from 5e-324 to 100000 kg/h',
    (value) => harvestHours(100_000, value, 0),
    100_000,
    1,
    101_000,
  ],
  [
    'other hours from 0 to 1000000 h',
    (value) => harvestHours(0, 1, value),
    1_000_000,
    1_000_000,
    1_010_000,
  ],
  [
    'minutes of work from 0 to 100000 min',
    (minutes) => breakEvenFall({ ...task, minutes, wage: 6 }),
    100_000,
    100,
    101_000,
  ],
  [
    'minutes of work from 0 to 100000 min',
    (minutes) => expectedSaving({ ...task, ...chances, minutes, wage: 6 }),
    100_000,
    -10_000,
    101_000,
  ],
  [
    'chance of loss without the task from 0 to 1 ',
    (without) => expectedSaving({ ...task, ...chances, without }),
    1,
    40,
    1.01,
  ],
  ['area from 0 to 10000 m²', (area) => valuePerAreaDay({ ...tray, area }), 10_000, 1e-4, 10_100],
  ['days from 0 to 3650 d', (days) => valuePerAreaDay({ ...tray, days }), 3650, 1 / 3650, 3686.5],
  [
    'labour from 0 to 100000 min',
    (labourMinutes) => valuePerLabourHour({ ...sale, labourMinutes }),
    100_000,
    0.0006,
    101_000,
  ],
])('%s: the bound counts, beyond it is refused', ([sentence, call, at, out, beyond]) => {
  expect(call(at)).toBeCloseTo(out, 9);
  const refusal = `Expected ${sentence.trim()}, got ${beyond}`;
  expect(() => call(beyond)).toThrow(new RangeError(refusal));
});
