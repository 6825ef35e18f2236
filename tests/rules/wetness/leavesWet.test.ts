import fc from 'fast-check';
import { expect, test } from 'vitest';
import { leavesWet } from '../../../rules/wetness/index.ts';
import { anySeries, at, hourly, reading, rule } from './series.ts';

test('wet since 02:00, with the spell so far', () => {
  const now = leavesWet(hourly([70, 70, 95, 95, 95]), rule, at(4.5));
  expect(now).toMatchObject({ wet: true, since: at(2) });
  expect(now.spell).toMatchObject({ from: at(2), to: at(4.5), wetHours: 2.5 });
});

test('dry for an hour, but the spell still stands', () => {
  const now = leavesWet(hourly([95, 95, 95, 70]), rule, at(4));
  expect(now).toMatchObject({ wet: false, since: at(3), spell: { wetHours: 3, to: at(3) } });
});

test('dry for four hours, and the spell is over', () => {
  const now = leavesWet(hourly([95, 95, 70, 70, 70, 70]), rule, at(6));
  expect(now).toEqual({ wet: false, since: at(2), spell: null });
});

test('a probe silent for more than 90 minutes can not say', () => {
  const readings = hourly([95, 95]);
  expect(leavesWet(readings, rule, at(2.5)).wet).toBe(true);
  expect(leavesWet(readings, rule, at(2.6))).toMatchObject({ wet: null, since: null });
  expect(leavesWet(readings, rule, at(2.6)).spell).not.toBeNull();
  expect(leavesWet(readings, rule, at(6)).spell).toBeNull();
});

test('a silent leaf probe gives unknown', () => {
  expect(leavesWet([], rule, at(0))).toEqual({ wet: null, since: null, spell: null });
});

test('readings of the future are left out', () => {
  const readings = [...hourly([70, 70]), reading(5, 15, 99)];
  expect(leavesWet(readings, rule, at(1.2))).toEqual({ wet: false, since: at(0), spell: null });
});

test('a single reading tells the state but no spell', () => {
  expect(leavesWet(hourly([95]), rule, at(0.5))).toMatchObject({ wet: true, since: at(0) });
});

test('what is known does not depend on what came later', () => {
  fc.assert(
    fc.property(anySeries, fc.integer({ min: 0, max: 80 }), (readings, hour) => {
      const now = at(hour);
      const sofar = readings.filter(({ t }) => t <= now);
      expect(leavesWet(readings, rule, now)).toEqual(leavesWet(sofar, rule, now));
    }),
  );
});
