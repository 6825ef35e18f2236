import fc from 'fast-check';
import { expect, test } from 'vitest';
import { wetSpells, wetTime } from '../../../rules/wetness/index.ts';
import { anySeries, at, hourly, reading, rule } from './series.ts';

const day = { from: at(0), to: at(24) };

test('a night that began the evening before counts only from midnight', () => {
  const readings = [-3, -2, -1, 0, 1, 2, 3].map((hour) => reading(hour, 12, hour < 2 ? 96 : 80));
  expect(wetTime(readings, rule, { from: at(0), to: at(4) })).toEqual({
    wetHours: 2,
    unknownHours: 0,
  });
});

test('time before the first and after the last reading is unknown', () => {
  const readings = [6, 7, 8].map((hour) => reading(hour, 12, 96));
  expect(wetTime(readings, rule, day)).toEqual({ wetHours: 3, unknownHours: 21 });
  expect(wetTime([], rule, day)).toEqual({ wetHours: 0, unknownHours: 24 });
});

test('a reading up to 90 minutes off speaks until then; further off only for the usual step', () => {
  const near = [0, 1.5].map((hour) => reading(hour, 12, 96));
  expect(wetTime(near, rule, { from: at(0), to: at(1.5) }).wetHours).toBe(1.5);
  const far = [0, 0.5, 1, 3].map((hour) => reading(hour, 12, 96));
  expect(wetTime(far, rule, { from: at(0), to: at(3) })).toEqual({
    wetHours: 1.5,
    unknownHours: 1.5,
  });
});

test('wet, dry and unknown make up the window', () => {
  fc.assert(
    fc.property(anySeries, (readings) => {
      const { wetHours, unknownHours } = wetTime(readings, rule, day);
      return wetHours >= 0 && unknownHours >= -1e-9 && wetHours + unknownHours <= 24 + 1e-9;
    }),
  );
});

test('the wet time of the whole series is that of its spells', () => {
  fc.assert(
    fc.property(anySeries, (readings) => {
      const spells = wetSpells(readings, rule).reduce((sum, spell) => sum + spell.wetHours, 0);
      const { wetHours } = wetTime(readings, rule, { from: at(-1), to: at(1000) });
      return Math.abs(spells - wetHours) < 1e-9;
    }),
  );
});

test('a gap never lowers wet hours and unknown hours together', () => {
  // Humidities clear of the band in which leaves stay as they were, so that no state is lost.
  const clear = fc.constantFrom(70, 80, 92, 98);
  fc.assert(
    fc.property(
      fc.array(clear, { minLength: 24, maxLength: 24 }),
      fc.integer({ min: 1, max: 20 }),
      fc.integer({ min: 1, max: 12 }),
      (humidities, from, length) => {
        const whole = hourly(humidities);
        const holed = whole.filter((_, hour) => hour < from || hour >= from + length);
        const sum = (readings: typeof whole) => {
          const { wetHours, unknownHours } = wetTime(readings, { ...rule, maxGapMinutes: 60 }, day);
          return wetHours + unknownHours;
        };
        return sum(holed) >= sum(whole) - 1e-9;
      },
    ),
  );
});

test('a window that ends before it begins is refused', () => {
  expect(() => wetTime([], rule, { from: at(2), to: at(1) })).toThrow(
    'Expected a window to end from',
  );
});
