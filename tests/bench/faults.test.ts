import { expect, test } from 'vitest';
import type { TrialFault } from '../../simulators/coolRoomTrial.ts';
import type { Fitted } from './faultBase.ts';
import { falseRow, faultRow } from './faultTable.ts';
import { runTrial } from './faultTrial.ts';

// The short form of `npm run bench -- faults`: two invented rooms through the whole hub. What the
// long form measures over thirty seeds is held here with room to spare.

const SEEDS = [1, 4];
const runs = (fault: TrialFault, fitted: Fitted, hours: number) =>
  SEEDS.map((seed) => runTrial({ seed, fault, fitted, openings: 8 }, hours));

test('a stop, a door left open, a wrong unit and a stuck probe are seen by one probe in the air', {
  timeout: 240_000,
}, () => {
  for (const fault of ['power-cut', 'door-open', 'set-in-fahrenheit', 'probe-stuck'] as const) {
    const row = faultRow(runs(fault, 'air', 3));
    expect(row.found, fault).toBe(SEEDS.length);
    expect(row.last, fault).toBeLessThanOrEqual(90);
    expect(row.wrong, fault).toBe(0);
  }
});

test('a setting turned by a kelvin is named as one, and wakes nobody below the limit', {
  timeout: 240_000,
}, () => {
  const row = faultRow(
    SEEDS.map((seed) =>
      runTrial({ seed, fault: 'set-colder', fitted: 'air', openings: 8 }, 4, false),
    ),
  );
  expect(row.found).toBe(SEEDS.length);
  expect(row.rightAtEnd).toBe(SEEDS.length);
  expect(row.woke).toBe(0);
});

test('with a meter, a coil or a contact it is known sooner, and as far as they tell, which it is', {
  timeout: 240_000,
}, () => {
  for (const [fault, fitted, most] of [
    ['power-cut', 'meter', 6],
    ['door-open', 'contact', 6],
    ['fan-stopped', 'coil', 60],
  ] as const) {
    const row = faultRow(runs(fault, fitted, 2));
    expect(row.right, fault).toBe(SEEDS.length);
    expect(row.last, fault).toBeLessThanOrEqual(most);
  }
});

test('defrosts, a load of warm produce and two ordinary days ask for nothing', {
  timeout: 240_000,
}, () => {
  expect(falseRow(runs('defrosts', 'air', 12)).tasks).toBe(0);
  expect(falseRow(runs('warm-load', 'air', 12)).alarms).toBe(0);
  expect(falseRow(runs('none', 'air', 2 * 24)).alarms).toBe(0);
});
