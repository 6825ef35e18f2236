import fc from 'fast-check';
import { afterEach, expect, test } from 'vitest';
import { limitOf, movedBy, shownOf, stepOf } from '../../../dashboard/trial/limitTyped.ts';
import { words } from '../../../dashboard/words.ts';
import { chooseUnits } from '../../../hub/words/page.ts';

// °F = °C × 9/5 + 32, exact; a difference has no zero of its own.

const ROOM = { value: 5, unit: '°C', step: 0.5, min: -5, max: 25 };
const WET = { value: 90, unit: '%', step: 1, min: 50, max: 100 };

afterEach(() => chooseUnits({}));
const plain = (text: string) => text.replaceAll('\u00a0', ' ');

test('a temperature is typed in °F where they are read, moved by whole ones, and sent in °C', () => {
  chooseUnits({ temperature: 'F' });
  expect(shownOf(ROOM)).toBe('41');
  expect(movedBy(ROOM, shownOf(ROOM), 1)).toBe('42');
  expect(movedBy(ROOM, '42', -3)).toBe('39');
  expect(limitOf(ROOM, '50')).toBe(10);
  expect(plain(words.trial.step(stepOf(ROOM), '°C'))).toBe('1 °F');
  expect(plain(words.trial.value('°C'))).toBe('New value, °F');
  expect(plain(words.trial.step(stepOf({ ...ROOM, step: 1 }), '°C'))).toBe('2 °F');
  // -5 °C and 25 °C are as far as it goes.
  expect(movedBy(ROOM, '76.5', 1)).toBe('77');
  expect(movedBy(ROOM, '23.5', -1)).toBe('23');
});

test('in °C it is moved by half degrees, and what is no temperature is as it is', () => {
  expect(movedBy(ROOM, '5', -1)).toBe('4.5');
  expect(plain(words.trial.step(stepOf(ROOM), '°C'))).toBe('0.5 °C');
  chooseUnits({ temperature: 'F' });
  expect([shownOf(WET), limitOf(WET, '85'), movedBy(WET, '85', 1)]).toEqual(['90', 85, '86']);
});

test('a limit that nobody moved is the same limit in either unit', () => {
  const half = fc.integer({ min: -10, max: 50 }).map((n) => n / 2);
  fc.assert(
    fc.property(half, fc.constantFrom('C' as const, 'F' as const), (value, temperature) => {
      chooseUnits({ temperature });
      const limit = { ...ROOM, value };
      expect(limitOf(limit, shownOf(limit))).toBe(value);
    }),
  );
});
