import fc from 'fast-check';
import { afterEach, describe, expect, test } from 'vitest';
import * as en from '../../../hub/words/en.ts';
import {
  chooseUnits,
  keptFrom,
  screens,
  shownIn,
  shownUnit,
  speak,
  USUAL_UNITS,
} from '../../../hub/words/index.ts';

// Equivalences as NIST Special Publication 811, Appendix B, prints them (from memory): the pound is
// 0.453 592 37 kg exactly, the ounce 28.349 523 125 g, a temperature in °F is 1.8 times that in °C and
// 32, and a step of 1 K is one of 1.8 °F.

const american = { temperature: 'F', weight: 'lb', clock: 12, weekStart: 'sunday' } as const;
afterEach(() => speak(en));

test.for([
  [-40, '°C', -40],
  [0, '°C', 32],
  [37, '°C', 98.6],
  [100, '°C', 212],
  [1, 'K', 1.8],
  [10, '°C d', 18],
  [1, '°C/h', 1.8],
  [1.8, 'kWh/K', 1],
  [0.45359237, 'kg', 1],
  [1, '/kg', 0.45359237],
  [28.349523125, 'gram', 1],
  [1, 'g/m³', 1],
  [70, '%', 70],
] as const)('%d of %s is shown as %d', ([kept, unit, shown]) => {
  chooseUnits(american);
  expect(shownIn(kept, unit)).toBeCloseTo(shown, 9);
});

test.for(['°C', 'K', '°C d', 'kg', '/kg'])('what is typed for %s comes back as typed', (unit) => {
  chooseUnits(american);
  fc.assert(
    fc.property(fc.integer({ min: -100_000, max: 100_000 }), (hundredths) => {
      const typed = hundredths / 100;
      expect(Number(shownIn(keptFrom(typed, unit), unit).toFixed(2)) + 0).toBe(typed + 0);
    }),
  );
});

test('where nobody chose, nothing is turned', () => {
  chooseUnits({});
  fc.assert(
    fc.property(fc.double({ noNaN: true, min: -1e6, max: 1e6 }), (value) => {
      for (const unit of ['°C', 'K', 'kg', '/kg', 'kWh/K']) {
        expect(shownIn(value, unit)).toBe(value + 0);
        expect(shownUnit(unit)).toBe(unit);
      }
    }),
  );
  expect(shownUnit('gram')).toBe('g');
});

test('a choice that leaves things out is as usual in them', () => {
  chooseUnits({ weight: 'lb', clock: undefined });
  expect(shownUnit('°C')).toBe('°C');
  expect(shownUnit('kg')).toBe('lb');
  expect(USUAL_UNITS.clock).toBe(24);
});

describe('a clock of twelve hours', () => {
  const at = (hour: number, minute = 0) => Date.UTC(2026, 4, 21, hour, minute);
  test.for([
    [0, '12:00\u00a0am'],
    [6.5, '6:30\u00a0am'],
    [12, '12:00\u00a0pm'],
    [12.5, '12:30\u00a0pm'],
    [23.75, '11:45\u00a0pm'],
  ] as const)('%d h of the day is %s', ([hour, said]) => {
    speak(en, american);
    expect(screens.clock(at(Math.floor(hour), (hour % 1) * 60), 'UTC')).toBe(said);
  });
  test('one of twenty-four says 00:00 and 12:00', () => {
    expect(screens.clock(at(0), 'UTC')).toBe('00:00');
    expect(screens.clock(at(12), 'UTC')).toBe('12:00');
  });
});

test('differences have no 32 in them', () => {
  speak(en, american);
  expect(screens.temperature(0)).toBe('32.0\u00a0°F');
  expect(screens.difference(0.5)).toBe('0.9\u00a0°F');
  expect(en.roomNowWords(4, 3, 5)).toBe(
    '39.2\u00a0°F, 1.8\u00a0°F above the set temperature of 37.4, 1.8\u00a0°F under the limit of 41.0.',
  );
});
