import { expect, test } from 'vitest';
import { type MessageForm, toMessages } from '../../simulators/messages.ts';
import type { Reading } from '../../simulators/reading.ts';

const t = Date.parse('2026-04-23T14:40:00Z');
const now = t + 3000;
const air: Reading[] = [
  { probe: 'p1', quantity: 'temperature', t, value: 12.34 },
  { probe: 'p1', quantity: 'humidity', t, value: 81.5 },
];
const kept: Reading[] = [
  ...air,
  { probe: 'p1', quantity: 'temperature', t: t + 300_000, value: 12 },
];

type Entry = { bn?: string; bt?: number; n: string; u?: string; v: number; t?: number };

/** Name, seconds since 1970 and value of each entry, resolved by the rules of RFC 8428, 4.5 and 4.6. */
function resolved(form: MessageForm, readings: readonly Reading[], at = now) {
  const [message, ...more] = toMessages(form, readings, at);
  expect(more).toEqual([]);
  expect(message?.topic).toBe('garden/p1');
  let base = { bn: '', bt: 0 };
  return (JSON.parse(message?.payload ?? '[]') as Entry[]).map((entry) => {
    base = { bn: entry.bn ?? base.bn, bt: entry.bt ?? base.bt };
    const sum = base.bt + (entry.t ?? 0);
    // Below 2^28 a time is relative to now (RFC 8428, 4.5.3).
    const seconds = sum < 2 ** 28 ? at / 1000 + sum : sum;
    return { name: base.bn + entry.n, seconds, u: entry.u, v: entry.v };
  });
}

test.for(['senml-base', 'senml-absolute'] as const)(
  '%s gives back names, times and values',
  (form) => {
    const entries = resolved(form, kept);
    expect(entries.map(({ seconds }) => seconds * 1000)).toEqual(kept.map((reading) => reading.t));
    expect(entries.map(({ v }) => v)).toEqual(kept.map(({ value }) => value));
    expect(entries.map(({ u }) => u)).toEqual(['Cel', '%RH', 'Cel']);
    expect(entries.every(({ name }) => /(^|:)(temperature|humidity)$/.test(name))).toBe(true);
  },
);

test('a probe without a clock tells how long ago it measured', () => {
  const entries = resolved('senml-ago', air);
  expect(entries.map(({ seconds }) => seconds * 1000)).toEqual([t, t]);
});

test('a probe that counts in Fahrenheit says so', () => {
  const [temperature, humidity] = resolved('senml-fahrenheit', air);
  expect(temperature).toMatchObject({ u: 'Fah', v: 54.21 }); // 12.34 × 1.8 + 32 = 54.212
  expect(humidity).toMatchObject({ u: '%RH', v: 81.5 });
});

test('a bare number stands alone on the topic of its quantity', () => {
  expect(toMessages('bare', air, now)).toEqual([
    { topic: 'garden/p1/temperature', payload: '12.34' },
    { topic: 'garden/p1/humidity', payload: '81.5' },
  ]);
});

test('a stamped value carries its time in ISO 8601', () => {
  const [first] = toMessages('stamped', air, now);
  expect(first).toEqual({
    topic: 'garden/p1/temperature',
    payload: '{"v":12.34,"t":"2026-04-23T14:40:00.000Z"}',
  });
});

test('the mast puts everything of one time in one report on its own topic', () => {
  const messages = toMessages('mast', kept, now);
  expect(messages.map(({ topic }) => topic)).toEqual(['coast/p1/report', 'coast/p1/report']);
  const [first, second] = messages.map(({ payload }) => JSON.parse(payload));
  expect(first).toMatchObject({ taken: t, air: { c: 12.34, rh: 81.5 } });
  expect(second).toMatchObject({ taken: t + 300_000, air: { c: 12 } });
});

test('no readings make no message', () => {
  expect(toMessages('senml-base', [], now)).toEqual([]);
});
