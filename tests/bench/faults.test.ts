import { expect, test } from 'vitest';
import type { Fitted } from './faultBase.ts';
import { falseRow, faultRow } from './faultTable.ts';
import { runTrial } from './faultTrial.ts';

// The short form of `npm run bench -- faults`: two invented rooms through the whole hub. What the
// long form measures over thirty seeds is held here with room to spare.

const SEEDS = [1, 4];
const runs = (fault: Parameters<typeof runTrial>[0]['fault'], fitted: Fitted, hours: number) =>
  SEEDS.map((seed) => runTrial({ seed, fault, fitted, openings: 8 }, hours));

test('a stop, a door left open, a wrong unit and a stuck probe are seen by one probe in the air', {
  timeout: 240_000,
}, () => {
  for (const fault of ['power-cut', 'door-open', 'set-in-fahrenheit', 'probe-stuck'] as const) {
    const row = faultRow(runs(fault, 'air', 4));
    expect(row.found, fault).toBe(SEEDS.length);
    expect(row.last, fault).toBeLessThanOrEqual(120);
  }
});

test('with a meter or a contact it is known within minutes, and which it is', {
  timeout: 240_000,
}, () => {
  for (const [fault, fitted] of [
    ['power-cut', 'meter'],
    ['door-open', 'contact'],
  ] as const) {
    const row = faultRow(runs(fault, fitted, 2));
    expect(row.right, fault).toBe(SEEDS.length);
    expect(row.last, fault).toBeLessThanOrEqual(6);
  }
});

test('a load of warm produce and an ordinary week ask for nothing', { timeout: 240_000 }, () => {
  expect(falseRow(runs('warm-load', 'air', 18)).tasks).toBe(0);
  expect(falseRow(runs('none', 'air', 4 * 24)).alarms).toBe(0);
});
