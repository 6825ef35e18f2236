import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  cycleBottom,
  cycleDrift,
  DRIFT_WINDOWS,
  fitDriftMargin,
} from '../../../rules/cooler/index.ts';
import { instant, MINUTE } from '../../../rules/units.ts';

const now = instant(1000 * MINUTE);
/** Readings ending now, one each `every` minutes. */
const ending = (values: readonly (number | null)[], every: number) =>
  values.map((value, i) => ({
    t: instant(now - (values.length - 1 - i) * every * MINUTE),
    value,
  }));
const level = (value: number, minutes = 180) => ending(new Array(minutes / 5).fill(value), 5);
const settings = { setPoint: 3, everyMinutes: 5 };
const good = [2.1, 2.4, 2.9, 3.3, 3.8, 4.0, 3.6, 3.1, 2.7, 2.2];
const raised = [3.9, 4.1, 4.4, 4.0, 3.8, 4.6, 4.9, 5.1, 4.3, 4.2];

test('ten readings of a good cycle have a bottom of 2.19 °C, of a raised one 3.89', () => {
  // Type 7 of Hyndman & Fan 1996; NumPy's default percentile gives the same.
  const window = { windowMinutes: 120, everyMinutes: 12 };
  expect(cycleBottom(ending(good, 12), now, window)).toBeCloseTo(2.19, 9);
  expect(cycleBottom(ending(raised, 12), now, window)).toBeCloseTo(3.89, 9);
});

test('3.89 °C over a set point of 3 is an alarm; the good cycle is not', () => {
  const every = { setPoint: 3, everyMinutes: 12 };
  expect(cycleDrift(ending(raised, 12), now, every)).toMatchObject({ A: 'alarm', limit: 3.7 });
  expect(cycleDrift(ending(good, 12), now, every).A).toBe('normal');
});

test.for([
  [3.71, 'alarm'],
  [3.695, 'normal'],
] as const)('a bottom of %s °C over set point 3 is %s', ([value, verdict]) => {
  const drift = cycleDrift(level(value), now, settings);
  expect([drift.A, drift.B]).toEqual([verdict, verdict]);
});

test('the quick rule looks back 120 minutes, the sure one 180', () => {
  const colder = (minutesAgo: number) =>
    level(4, 240).map((reading) =>
      reading.t < now - minutesAgo * MINUTE ? { ...reading, value: 2 } : reading,
    );
  // Of 24 samples three cold ones pull the 10th percentile down, of 36 five.
  expect(cycleDrift(colder(104), now, settings).A).toBe('normal');
  expect(cycleDrift(colder(119), now, settings)).toMatchObject({ A: 'alarm', B: 'normal' });
  expect(cycleDrift(colder(156), now, settings).B).toBe('normal');
  expect(cycleDrift(colder(178), now, settings).B).toBe('alarm');
});

test('under 80 % of the samples there is not enough data', () => {
  const holes = (missing: number) =>
    level(4, 120).map((reading, i) => (i < missing ? { ...reading, value: null } : reading));
  expect(cycleDrift(holes(4), now, settings).A).toBe('alarm'); // 20 of 24
  expect(cycleDrift(holes(5), now, settings).A).toBe('unknown'); // 19 of 24
  expect(cycleDrift([], now, settings)).toMatchObject({
    A: 'unknown',
    B: 'unknown',
    bottomA: null,
  });
});

test('80 of 100 samples are enough, 79 are not', () => {
  const holes = (missing: number) =>
    ending(
      Array.from({ length: 100 }, (_, i) => (i < missing ? null : 4)),
      1,
    );
  const window = { windowMinutes: 100, everyMinutes: 1 };
  expect(cycleBottom(holes(20), now, window)).toBe(4);
  expect(cycleBottom(holes(21), now, window)).toBeNull();
});

test.for([
  [0.91, 'alarm'],
  [0.89, 'normal'],
  [null, 'unknown'],
] as const)('a running share of %s is %s', ([runningShare, verdict]) => {
  expect(cycleDrift(level(3), now, { ...settings, runningShare }).E).toBe(verdict);
});

test('with power off by plan nothing is judged', () => {
  const off = cycleDrift(level(9), now, { ...settings, runningShare: 1, plannedOff: true });
  expect([off.A, off.B, off.E]).toEqual(['suspended', 'suspended', 'suspended']);
});

test('a site whose good days reach high is given a wider margin', () => {
  // 99.5th percentile of 0..1000 thousandths over 3 °C is 3.995; by hand, + 0.2.
  const bottoms = Array.from({ length: 1001 }, (_, i) => 3 + i / 1000);
  expect(fitDriftMargin(bottoms, 3, 14)).toBeCloseTo(1.195, 9);
  expect(fitDriftMargin([2.1, 2.2], 3, 20)).toBe(0.7);
  expect(fitDriftMargin(bottoms, 3, 13)).toBeNull();
  expect(fitDriftMargin([], 3, 20)).toBeNull();
  const margin = fitDriftMargin(bottoms, 3, 14) ?? 0;
  expect(cycleDrift(level(4.19), now, { ...settings, margin }).A).toBe('normal');
});

test('a warmer room never alarms less', () => {
  const anyLevel = fc.double({ min: 0, max: 8, noNaN: true });
  fc.assert(
    fc.property(anyLevel, anyLevel, (a, b) => {
      const of = (value: number) => cycleDrift(level(value), now, settings).A;
      return of(Math.min(a, b)) !== 'alarm' || of(Math.max(a, b)) === 'alarm';
    }),
  );
});

test('the windows are those that were tried: 2 h, 3 h and 3 h', () => {
  expect(DRIFT_WINDOWS).toEqual({ A: 120, B: 180, E: 180 });
});
