import { existsSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';

const root = new URL('../..', import.meta.url).pathname;
const built = existsSync(`${root}dist/rules/index.js`);

/** What outsiders may count on. */
const names = [
  'saturationVapourPressure',
  'dewPoint',
  'vapourPressureDeficit',
  'absoluteHumidity',
  'wetBulb',
  'wetSpells',
  'botrytisFruitIncidence',
  'anthracnoseFruitIncidence',
  'infectionHours',
  'degreeDaysSine',
  'degreeDaysTriangle',
  'degreeDays',
  'dayLength',
  'sunTimes',
  'baseTemperature',
  'harvestWindow',
  'fitNightLow',
  'predictNightLow',
  'probabilityBelow',
  'worthActing',
  'frostOdds',
  'warmingTime',
  'fitTimeConstant',
  'meanKineticTemperature',
  'remainingLife',
  'fisherExact',
  'spearman',
  'wilson',
  'brierScore',
  'studentQuantile',
];

test.skipIf(!built)('the library is reached by its package name, with plain numbers', async () => {
  const door = 'dewpost/rules';
  const rules = await import(/* @vite-ignore */ door);
  expect(names.filter((name) => typeof rules[name] !== 'function')).toEqual([]);
  // Dew point of 20 °C, 50 %: 9.3 °C (psychrometric tables; from memory).
  expect(rules.dewPoint(20, 50)).toBeCloseTo(9.3, 1);
  expect(() => rules.dewPoint(20, 140)).toThrow(/^Expected .* from .* to .*, got 140$/);
});

test('everything the package names is where it says', () => {
  const { bin, exports } = JSON.parse(readFileSync(`${root}package.json`, 'utf8'));
  expect(bin).toEqual({ dewpost: 'dist/hub/dewpost.js' });
  expect(exports['./rules'].default).toBe('./dist/rules/index.js');
  expect(readFileSync(`${root}hub/dewpost.ts`, 'utf8')).toMatch(/^#!\/usr\/bin\/env /);
});
