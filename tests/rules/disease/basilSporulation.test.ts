import { expect, test } from 'vitest';
import {
  basilSporulation,
  cautiousSporulationNight,
  sporulationNight,
} from '../../../rules/disease/index.ts';
import { at } from '../wetness/series.ts';
import { circumstances, tenMinutes } from './circumstances.ts';

const dark = { from: at(8), to: at(20) };
/** Damp in the dark for so many hours, silent for as many as told, then dry. */
const nightAir = (damp: number, silent: number, humidity = 99, temperature = 18) => ({
  air: tenMinutes(24, (hour) => {
    if (hour >= 8 && hour < 8 + damp - 1e-9) return [temperature, humidity];
    return hour >= 8 && hour < 8 + damp + silent - 1e-9 ? null : [temperature, 70];
  }),
});

test('basil sporulation: 7.5 h of the dark at 95 % and more', () => {
  // Cohen & Ben-Naim 2016.
  expect(sporulationNight(nightAir(7.5, 0), dark)).toBe('yes');
  expect(sporulationNight(nightAir(7 + 1 / 3, 0), dark)).toBe('no');
  // 6 h known and silence that may hide two more: unknown. 5 h and an hour: no.
  expect(sporulationNight(nightAir(6, 3), dark)).toBe('unknown');
  expect(sporulationNight(nightAir(4, 3), dark)).toBe('no');
});

test('95 % lies within a probe’s error: 93, 95 and 97 have to agree', () => {
  const at9h = (humidity: number) => sporulationNight(nightAir(9, 0, humidity), dark);
  expect([92.9, 93, 95, 96.9, 97].map(at9h)).toEqual([
    'no',
    'unknown',
    'unknown',
    'unknown',
    'yes',
  ]);
});

test('the more cautious sheet: 7 h over 85 % at 10 to 25.6 °C', () => {
  // Univ. of Massachusetts fact sheet.
  const asked = (length: number, rh: number, t: number) =>
    cautiousSporulationNight(nightAir(length, 0, rh, t), dark);
  expect(asked(7, 86, 18)).toBe('yes');
  expect(asked(6 + 5 / 6, 86, 18)).toBe('no');
  expect(asked(9, 85, 18)).toBe('no');
  expect(asked(9, 85.1, 18)).toBe('yes');
  expect([asked(9, 90, 10), asked(9, 90, 25.6)]).toEqual(['yes', 'yes']);
  expect([asked(9, 90, 9.9), asked(9, 90, 25.7)]).toEqual(['no', 'no']);
});

test('a sporulation night is a reason to watch, and needs to know when it was dark', () => {
  const judge = (damp: number, humidity = 99) =>
    basilSporulation.judge(circumstances(nightAir(damp, 0, humidity).air, { dark }));
  expect(judge(9)).toMatchObject({ verdict: 'yes', risk: { least: 'watch', most: 'watch' } });
  expect(judge(9, 90)).toMatchObject({ verdict: 'no', risk: { least: 'quiet', most: 'watch' } });
  expect(judge(2)).toMatchObject({ verdict: 'no', risk: { least: 'quiet', most: 'quiet' } });
  const blind = basilSporulation.judge(circumstances(nightAir(9, 0).air, { dark: null }));
  expect(blind).toMatchObject({ verdict: 'unknown', missing: ['sun-times'] });
});
