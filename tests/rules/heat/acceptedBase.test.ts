import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  acceptedBase,
  baseTemperature,
  scanBase,
  startingBase,
  startingBases,
} from '../../../rules/heat/index.ts';
import { HOUR, instant } from '../../../rules/units.ts';
import { truth } from '../../truth/index.ts';

// Sowings as a crop with base 4 and 200 °C d would do them.
const sowings = (temperatures: readonly number[]) =>
  temperatures.map((temperature) => ({ temperature, days: 200 / (temperature - 4) }));

test('six sowings over four degrees replace the starting base', () => {
  const found = acceptedBase(sowings([12, 13, 14, 15, 15.5, 16]), 3);
  expect(found.verdict).toBe('learned');
  expect(found.base).toBeCloseTo(4, 6);
  expect(found.range?.[0]).toBeCloseTo(4, 6);
  expect(found.range?.[1]).toBeCloseTo(4, 6);
});

test.for([
  ['too-few', [12, 13, 14, 15, 16], 3],
  ['too-alike', [12, 12.5, 13, 14, 15, 15.95], 3],
  ['too-cold', [4.99, 8, 12, 14, 15, 16], 3],
  ['too-far', [12, 13, 14, 15, 15.5, 16], -1.05],
] as const)('%s: the starting base is kept', ([verdict, temperatures, start]) => {
  expect(acceptedBase(sowings(temperatures), start)).toMatchObject({ verdict, base: start });
});

test('just inside each limit the learned base is taken', () => {
  expect(acceptedBase(sowings([5.01, 8, 12, 14, 15, 16]), 3).verdict).toBe('learned');
  expect(acceptedBase(sowings([12, 13, 14, 15, 15.5, 16]), -0.95).verdict).toBe('learned');
});

test('the range spans the methods, and the base taken is that of least variation', () => {
  const noisy = [24, 22, 19, 17, 15, 11].map((temperature, index) => ({
    temperature,
    days: [7, 9, 10, 13, 15, 27][index] ?? 0,
  }));
  const methods = baseTemperature(noisy);
  const found = acceptedBase(noisy, 5);
  expect(found.base).toBe(methods.cvDays);
  const all = Object.values(methods).map(Number);
  expect(found.range).toEqual([Math.min(...all), Math.max(...all)]);
});

test('a scan finds the base of batches that were often below it', () => {
  // Days that swing 8 K either way; each batch ends when its units above the base reach 100 °C d.
  const swing = (mean: number, base: number) => {
    const readings = [];
    let units = 0;
    for (let hour = 0; units < 100 && hour < 24 * 200; hour += 0.5) {
      const value = mean + 8 * Math.sin((2 * Math.PI * hour) / 24);
      readings.push({ t: instant(hour * HOUR), value });
      units += Math.max(0, value - base) / 48;
    }
    return readings;
  };
  fc.assert(
    fc.property(fc.integer({ min: 10, max: 80 }), (tenths) => {
      const base = tenths / 10;
      const batches = [7, 10, 13, 16, 19].map((mean) => swing(mean, base));
      const found = scanBase(batches, { from: 0, to: 12 });
      return found !== null && Math.abs(found.base - base) < 0.151 && found.variation < 0.02;
    }),
    { numRuns: 8 },
  );
});

test('a scan needs three batches read for 85 % of their time', () => {
  const whole = (mean: number, hours = 200) =>
    Array.from({ length: hours + 1 }, (_, hour) => ({
      t: instant(hour * HOUR),
      value: mean + Math.sin(hour),
    }));
  const holed = (gone: number) => whole(15, 1000).filter((_, hour) => hour === 0 || hour > gone);
  expect(scanBase([whole(10), whole(20)], { from: 0, to: 5 })).toBeNull();
  expect(scanBase([whole(10), whole(20), holed(149)], { from: 0, to: 5 })).not.toBeNull();
  expect(scanBase([whole(10), whole(20), holed(150)], { from: 0, to: 5 })).toBeNull();
  expect(scanBase([whole(1), whole(1), whole(1)], { from: 20, to: 25 })).toBeNull();
  // The best of bases a tenth apart, by the definition: units (mean - base) x days.
  const steps = scanBase([whole(10, 360), whole(14, 240), whole(18, 180)], { from: 1, to: 3 });
  expect(steps?.base).toBeCloseTo(2, 9);
});

const table = truth('heat/startingBases.csv', ['lower', 'lowest', 'highest', 'upper'], ['crop']);

test.for(table)('$crop starts at $lower °C', (row) => {
  expect(startingBase(row.crop)).toMatchObject({
    lower: row.lower,
    lowerRange: [row.lowest, row.highest],
    upper: row.upper,
  });
});

test('the table has no crop without a check or a source', () => {
  expect(startingBases.map(({ crop }) => crop).sort()).toEqual(
    table.map(({ crop }) => crop).sort(),
  );
  for (const { source } of startingBases) expect(source).toMatch(/\d{4}|no source/);
  expect(startingBase('moss')).toBeNull();
});
