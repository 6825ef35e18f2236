import { expect, test } from 'vitest';
import type { Fault } from '../../simulators/faults.ts';
import { createProbe, type ProbePlan } from '../../simulators/probe.ts';
import type { Quantity, Reading } from '../../simulators/reading.ts';
import { scenario } from '../../simulators/scenario.ts';
import { createWorld, type WorldNow } from '../../simulators/world.ts';

const MINUTE = 60_000;
const HOUR = 60 * MINUTE;
const { epoch } = scenario.plan;
const sample: WorldNow = createWorld(scenario.plan, 1).advanceTo(epoch + 10 * MINUTE);

/** A probe of the world's clock only: 10 °C, warming by a degree an hour, with rain in the total. */
const steady: ProbePlan = {
  id: 'p1',
  every: 5,
  form: 'senml-base',
  sense: ({ t }) => ({ temperature: 10 + (t - epoch) / HOUR, rain: (t - epoch) / HOUR / 3 }),
};

function readings(
  plan: ProbePlan,
  hours: number,
  faults: readonly Fault[] = [],
  seed = 1,
): Reading[] {
  const probe = createProbe(plan, seed, faults);
  const all: Reading[] = [];
  for (let t = epoch; t < epoch + hours * HOUR; t += MINUTE)
    all.push(...probe.read({ ...sample, t }));
  return all;
}
const of = (quantity: Quantity, all: readonly Reading[]) =>
  all.filter((reading) => reading.quantity === quantity);

test('a probe reports once in each of its intervals', () => {
  const times = of('temperature', readings(steady, 24)).map(({ t }) => t);
  expect(times).toHaveLength(288);
  for (const [at, t] of times.entries()) {
    if (at > 0) expect(t - (times[at - 1] ?? 0)).toBe(5 * MINUTE);
  }
});

test('readings are near the truth and on the grid of their step', () => {
  const probe = { ...steady, steps: { temperature: 0.0625 } };
  for (const { t, value } of of('temperature', readings(probe, 24))) {
    expect(Math.abs(value - (10 + (t - epoch) / HOUR))).toBeLessThan(0.4);
    expect((value * 16) % 1).toBe(0);
  }
});

test('the tips of the rain gauge add up to the rain', () => {
  const total = of('rain', readings(steady, 24)).reduce((sum, { value }) => sum + value, 0);
  expect(Math.abs(total - 8)).toBeLessThan(0.3); // one tip of 0.2 mm may still be filling
});

test('the same seed gives the same noise, another seed other noise', () => {
  expect(readings(steady, 3)).toEqual(readings(steady, 3));
  expect(readings(steady, 3)).not.toEqual(readings(steady, 3, [], 2));
});

test('lost reports leave gaps about as often as the plan says', () => {
  const kept = of('temperature', readings({ ...steady, drops: 0.1 }, 24 * 20)).length;
  // 5760 reports, 10 % lost: 5184 kept, standard deviation 23 (binomial); five of those.
  expect(Math.abs(kept - 5184)).toBeLessThan(115);
});

test('a battery runs down and reads lower in the cold', () => {
  const battery = { unit: '%', full: 90, fullAt: epoch, perDay: 2 } as const;
  const values = of('battery', readings({ ...steady, battery }, 24 * 10)).map(({ value }) => value);
  expect(values).toHaveLength(40);
  expect(values[0]).toBe(90);
  expect(values.at(-1)).toBeLessThanOrEqual(71);
  const volts = { unit: 'V', full: 3, fullAt: epoch, perDay: 0 } as const;
  const at = (temperature: number) =>
    of('battery', readings({ ...steady, battery: volts, sense: () => ({ temperature }) }, 6))[0]
      ?.value;
  expect(at(-5)).toBeLessThan((at(15) ?? 0) - 0.05);
});

test('a door speaks at once, not only when the probe is due', () => {
  const opens = epoch + 7 * MINUTE + 10 * HOUR;
  const plan: ProbePlan = {
    ...steady,
    every: 1,
    sense: ({ t }) => ({ door: t >= opens && t < opens + 2 * MINUTE ? 1 : 0 }),
  };
  const probe = createProbe(plan, 1);
  const seen: number[] = [];
  for (let t = epoch; t < epoch + 12 * HOUR; t += MINUTE) {
    seen.push(...probe.read({ ...sample, t }, 60).map(({ value }) => value));
  }
  expect(seen.filter((value) => value === 1)).toHaveLength(1);
});

const when = { probe: 'p1', from: epoch + 2 * HOUR, to: epoch + 4 * HOUR } as const;
const during = ({ t }: Reading) => t >= when.from && t < when.to;

test('a silent probe sends nothing while it is silent', () => {
  const all = readings(steady, 6, [{ ...when, kind: 'silent' }]);
  expect(all.filter(during)).toEqual([]);
  expect(all.length).toBeGreaterThan(40);
});

test('a stuck quantity repeats one value while the others move', () => {
  const all = readings(steady, 6, [{ ...when, kind: 'stuck', quantity: 'temperature' }]);
  expect(new Set(of('temperature', all.filter(during)).map(({ value }) => value)).size).toBe(1);
  expect(new Set(of('rain', all.filter(during)).map(({ value }) => value)).size).toBe(2);
});

test('nonsense comes about as often as told and is the value told', () => {
  const fault = { kind: 'nonsense', quantity: 'temperature', value: 85, share: 0.2 } as const;
  const all = of(
    'temperature',
    readings(steady, 24, [{ ...when, to: epoch + 24 * HOUR, ...fault }]),
  );
  const wrong = all.filter(({ value }) => value === 85).length;
  expect(wrong).toBeGreaterThan(30); // of 264: 53 expected, standard deviation 6.5
  expect(wrong).toBeLessThan(80);
});

test('a drifting probe is off by its drift', () => {
  const fault = { kind: 'drift', quantity: 'temperature', perDay: 2 } as const;
  const far = { ...when, to: epoch + 96 * HOUR };
  const [good, bad] = [[], [{ ...far, ...fault }]].map((faults) =>
    readings(steady, 50, faults).at(-2),
  );
  expect((bad?.value ?? 0) - (good?.value ?? 0)).toBeCloseTo(4, 1);
});

test('a clock fault moves the time and not the value', () => {
  const shifted = readings(steady, 6, [{ ...when, kind: 'clock', seconds: 600 }]);
  const honest = readings(steady, 6);
  expect(shifted.map(({ value }) => value)).toEqual(honest.map(({ value }) => value));
  const moved = honest.map(({ t }) => (t >= when.from && t < when.to ? t + 600_000 : t));
  expect(shifted.map(({ t }) => t)).toEqual(moved);
});
