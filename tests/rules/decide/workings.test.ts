import fc from 'fast-check';
import { expect, test } from 'vitest';
import { readMethods } from '../../../hub/methods/readMethods.ts';
import { inputLabels } from '../../../hub/words/en.ts';
import { ventGain } from '../../../rules/air/index.ts';
import { warmingTime } from '../../../rules/cooler/index.ts';
import { decide, type Evidence } from '../../../rules/decide/index.ts';
import { probabilityBelow } from '../../../rules/frost/index.ts';
import { celsius, percent } from '../../../rules/units.ts';
import { anySnapshot } from './anySnapshot.ts';
import { busyDay } from './busyDay.ts';

// Every number that a decision rests on can be followed back: to a probe, to the grower, or to a
// formula with a source and the numbers put into it.

const methods = new Map(
  readMethods(new URL('../../..', import.meta.url).pathname).map((method) => [method.name, method]),
);

function onEvery(look: (fact: Evidence) => void, numRuns = 300) {
  fc.assert(
    fc.property(fc.oneof(anySnapshot, busyDay), (any) => {
      for (const { because } of decide(any).decisions) for (const fact of because) look(fact);
    }),
    { numRuns },
  );
}

test('every formula that a fact names is described, in words and with its source', () => {
  const named = new Set<string>();
  onEvery(({ what, method }) => {
    if (method === null) return;
    expect(method, what).toBeTypeOf('string');
    named.add(method ?? '');
    const told = methods.get(method ?? '');
    expect(told, `${what} was worked out by ${method}`).toBeDefined();
    expect(told?.words.join(' ').length, `words of ${method}`).toBeGreaterThan(20);
    expect(told?.sources.length, `sources of ${method}`).toBeGreaterThan(0);
  });
  expect(named.size).toBeGreaterThan(17); // otherwise the snapshots were too tame to prove anything
});

test('a fact that names no formula names the probe and the time it was read, or was told', () => {
  onEvery(({ what, method, inputs, source }) => {
    if (method !== null) return expect(inputs?.length, what).toBeGreaterThan(0);
    if (inputs?.length === 0) return expect(source, what).toMatch(/^entered by the grower$/);
    expect(
      inputs?.map((one) => one.what),
      what,
    ).toEqual(['probe', 'read-at']);
    expect(inputs?.[0]?.value).toMatch(/^[a-z]/);
    const at = String(inputs?.[1]?.value);
    expect(new Date(at).toISOString().replace('.000Z', 'Z')).toBe(at);
  });
});

test('every limit says who set it, and there is no setter without a limit', () => {
  onEvery(({ what, limit, limitFrom }) => {
    if (limit === null) expect(limitFrom, what).toBeNull();
    else expect(limitFrom, what).toMatch(/\w{4}/);
  });
});

test('every number put in has a label, and a value that is no half-made number', () => {
  onEvery(({ inputs = [] }) => {
    for (const { what, value } of inputs) {
      expect(inputLabels, what).toHaveProperty(what);
      if (typeof value === 'number') expect(value).not.toBeNaN();
    }
  });
});

const number = ({ inputs }: Evidence, what: string) =>
  Number(inputs?.find((one) => one.what === what)?.value);

test('the numbers put in give the value shown, worked out again', () => {
  const seen = new Set<string>();
  onEvery((fact) => {
    const value = Number(fact.value);
    const put = (what: string) => number(fact, what);
    if (fact.method === 'ventGain') {
      const gain = ventGain(
        {
          temperature: celsius(put('inside-temperature')),
          humidity: percent(put('inside-humidity')),
        },
        {
          temperature: celsius(put('outside-temperature')),
          humidity: percent(put('outside-humidity')),
        },
      );
      expect(Math.abs(Math.abs(gain) - Math.abs(value))).toBeLessThan(0.02);
    } else if (fact.method === 'probabilityBelow') {
      const low = { mean: put('tonight-low'), sd: put('spread'), df: put('degrees-of-freedom') };
      const p = probabilityBelow(low, put('damage-below'));
      expect(Math.abs(100 * p - value)).toBeLessThan(0.2);
    } else if (fact.method === 'warmingTime') {
      const hours = warmingTime({
        inside: put('room-air'),
        outside: put('warmest-outside-ahead'),
        target: put('limit'),
        tauHours: put('time-constant'),
      });
      // Close to the temperature outside a thousandth of a degree is many minutes.
      expect(Math.abs((hours ?? Number.NaN) * 60 - value)).toBeLessThan(2 + value / 50);
    } else if (fact.method === 'heatIn') {
      expect(put('inside-temperature') - put('outside-temperature')).toBeCloseTo(value, 1);
    } else return;
    seen.add(fact.method);
  });
  expect([...seen].sort()).toEqual(['heatIn', 'probabilityBelow', 'ventGain', 'warmingTime']);
});
