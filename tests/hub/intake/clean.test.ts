import { expect, test } from 'vitest';
import { type Cleaned, cleaner, type Recall } from '../../../hub/intake/clean.ts';
import type { RawReading } from '../../../hub/intake/index.ts';

const MINUTE = 60_000;
const HOUR = 60 * MINUTE;
const NOON = Date.UTC(2026, 4, 10, 12);

/** Readings at their own time; each `at` is minutes after noon. */
function series(recall: Recall = () => [], offset = 0) {
  const clean = cleaner(recall, () => offset);
  return (
    value: number,
    at: number,
    quantity: RawReading['quantity'] = 'temperature',
    probe = 'p1',
  ): Cleaned => {
    const t = NOON + at * MINUTE;
    return clean({ probe, quantity, t, value }, t);
  };
}
const flags = (cleaned: readonly Cleaned[]) => cleaned.map(({ reading }) => reading.flag);

test.for([
  ['temperature', -40, null],
  ['temperature', -40.1, 'out-of-range'],
  ['temperature', 60, null],
  ['temperature', 85, 'out-of-range'], // what a common digital probe says after power-on
  ['temperature', -127, 'out-of-range'], // and what it says when a wire is off
  ['humidity', 0.5, 'out-of-range'],
  ['humidity', 105, null],
  ['humidity', 105.1, 'out-of-range'],
  ['door', 2, 'out-of-range'],
  ['battery', 101, 'out-of-range'],
  ['battery-voltage', 3.1, null],
  ['wind', -1, 'out-of-range'],
] as const)('%s of %d is flagged %s', ([quantity, value, flag]) => {
  const { reading, refused } = series()(value, 0, quantity);
  expect(reading.flag).toBe(flag);
  if (flag) expect(refused?.sentence).toMatch(/^Expected .* from .* to .*, got .* from p1$/);
  else expect(refused).toBeNull();
});

test('a humidity a little over full is read as full, and what was sent is kept', () => {
  expect(series()(104, 0, 'humidity').reading).toMatchObject({ value: 100, raw: 104, flag: null });
});

test('the correction is added, and what was sent is kept', () => {
  expect(series(undefined, -1.5)(20, 0).reading).toMatchObject({ value: 18.5, raw: 20 });
  expect(series(undefined, 0)(20, 0).reading).toMatchObject({ value: 20, raw: null });
  expect(series(undefined, 5)(98, 0, 'humidity').reading).toMatchObject({ value: 100, raw: 98 });
});

test.for([
  ['an hour ahead', NOON + HOUR],
  ['just over five minutes ahead', NOON + 5 * MINUTE + 1],
  ['in 1970', 86_400_000],
  ['before all dates', Number.NEGATIVE_INFINITY],
] as const)('a probe whose clock is %s is doubted and dated by arrival', ([, t]) => {
  const clean = cleaner(
    () => [],
    () => 0,
  );
  const { reading, refused } = clean({ probe: 'p1', quantity: 'temperature', t, value: 20 }, NOON);
  expect(reading).toMatchObject({ t: NOON, flag: 'clock', value: 20 });
  expect(refused?.sentence).toMatch(/^Expected a time between 2000 and now, got .* from p1$/);
});

test('a clock five minutes ahead, or a reading a week late, is believed', () => {
  const clean = cleaner(
    () => [],
    () => 0,
  );
  for (const t of [NOON + 5 * MINUTE, NOON - 7 * 24 * HOUR])
    expect(
      clean({ probe: 'p1', quantity: 'temperature', t, value: 20 }, NOON).reading,
    ).toMatchObject({ t, flag: null });
});

test('a bare number that comes while the hub has no time of its own is not believed', () => {
  const clean = cleaner(
    () => [],
    () => 0,
  );
  const { reading } = clean({ probe: 'p1', quantity: 'temperature', t: null, value: 20 }, 60_000);
  expect(reading.flag).toBe('clock');
});

test('a spike that the next reading does not confirm stays doubted', () => {
  const send = series();
  const cleaned = [send(20, 0), send(27, 5), send(20.2, 10), send(20.4, 15)];
  expect(flags(cleaned)).toEqual([null, 'spike', null, null]);
  expect(cleaned.flatMap(({ amendments }) => amendments)).toEqual([]);
  expect(cleaned[1]?.refused?.sentence).toBe(
    'Expected temperature near 20 after 5 min, got 27 from p1',
  );
});

test('a jump that the next reading confirms is believed from its first reading on', () => {
  const send = series();
  const cleaned = [send(20, 0), send(27, 5), send(27.5, 10)];
  expect(flags(cleaned)).toEqual([null, 'spike', null]);
  expect(cleaned[2]?.amendments).toMatchObject([
    {
      probe: 'p1',
      quantity: 'temperature',
      from: NOON + 5 * MINUTE,
      to: NOON + 10 * MINUTE - 1,
      flag: null,
      was: 'spike',
    },
  ]);
});

test.for([27, 30, 35, 12])('the first reading of a step from 20 to %d °C is not lost', (to) => {
  const send = series();
  send(20, 0);
  const first = send(to, 5).reading;
  const confirmed = send(to, 10);
  expect([first.flag, confirmed.reading.flag]).toEqual(['spike', null]);
  expect(confirmed.amendments).toMatchObject([{ from: first.t, flag: null }]);
});

test('a change that air cannot make needs two confirmations', () => {
  const send = series();
  const cleaned = [send(20, 0), send(35, 1), send(35, 2), send(35.5, 3)];
  expect(flags(cleaned).slice(0, 2)).toEqual([null, 'impossible-rate']);
  expect(flags(cleaned)[2]).not.toBeNull();
  expect(flags(cleaned)[3]).toBeNull();
  expect(cleaned[3]?.amendments[0]?.from).toBe(NOON + MINUTE);
});

test('over a longer step a larger change is believed, and after half an hour any', () => {
  const send = series();
  expect(flags([send(10, 0), send(18, 10), send(40, 41)])).toEqual([null, null, null]);
});

test('two readings a second apart that differ by noise are both believed', () => {
  const send = series();
  expect(flags([send(20, 0), send(20.2, 1 / 60)])).toEqual([null, null]);
});

test('a garbage value between a jump and its confirmation is not made good with it', () => {
  const send = series();
  send(20, 0);
  send(35, 5);
  const garbage = send(-127, 7).reading;
  const { amendments } = send(35, 10);
  expect(garbage.flag).toBe('out-of-range');
  const cleared = amendments.filter(
    ({ from, to, was }) => was === garbage.flag && from <= garbage.t && garbage.t <= to,
  );
  expect(cleared).toEqual([]);
});

const hours = (count: number) => Array.from({ length: count * 12 + 1 }, (_, i) => i * 5);

test('one value for six hours is stuck when another probe moved', () => {
  const send = series();
  const cleaned: Cleaned[] = [];
  for (const at of hours(7)) {
    send(10 + at / 30, at, 'temperature', 'other');
    cleaned.push(send(18.5, at));
  }
  expect(cleaned[71]?.reading.flag).toBeNull();
  expect(cleaned[72]?.reading.flag).toBe('stuck');
  expect(cleaned[72]?.amendments).toMatchObject([{ from: NOON, flag: 'stuck' }]);
  expect(cleaned[72]?.refused?.sentence).toMatch(/^Expected temperature to change within 6 h/);
  expect(cleaned.at(-1)?.amendments).toEqual([]);
  expect(send(18.6, 425).reading.flag).toBeNull();
});

test('one value for six hours is not stuck when nothing else moved', () => {
  const send = series();
  const cleaned = hours(8).map((at) => {
    send(12 + (at % 10) / 10, at, 'temperature', 'other');
    return send(18.5, at);
  });
  expect(new Set(flags(cleaned))).toEqual(new Set([null]));
});

test('air that is full is not a stuck probe', () => {
  const send = series();
  const cleaned = hours(8).map((at) => {
    send(5 + at / 30, at, 'temperature', 'other');
    return send(100, at, 'humidity');
  });
  expect(new Set(flags(cleaned))).toEqual(new Set([null]));
});

test('a probe that was silent for seven hours and comes back alike is not stuck', () => {
  const send = series();
  send(18.5, 0);
  for (const at of hours(7)) send(10 + at / 30, at, 'temperature', 'other');
  expect(send(18.5, 425).reading.flag).toBeNull();
});

test('after a restart the newest stored reading is still what a jump is held against', () => {
  const send = series((probe) =>
    probe === 'p1' ? [{ t: NOON - 5 * MINUTE, value: 20, raw: null, flag: null }] : [],
  );
  expect(send(27, 0).reading.flag).toBe('spike');
});

test('after a restart a stuck probe is still stuck', () => {
  const stored = hours(7).map((at) => ({
    t: NOON + (at - 425) * MINUTE,
    value: 18.5,
    raw: null,
    flag: 'stuck',
  }));
  const send = series((probe) => (probe === 'p1' ? stored : []));
  expect(send(18.5, 0).reading.flag).toBe('stuck');
  expect(send(18.9, 5).reading.flag).toBeNull();
});

test('what was recalled is compared as it was sent, without the correction', () => {
  const send = series(() => [{ t: NOON - 5 * MINUTE, value: 26, raw: 20, flag: null }], 6);
  expect(send(20.1, 0).reading).toMatchObject({ flag: null, value: 26.1 });
});

test('late readings pass without being held against newer ones', () => {
  const send = series();
  expect(flags([send(20, 60), send(5, 10), send(33, 20), send(20.3, 65)])).toEqual([
    null,
    null,
    null,
    null,
  ]);
});
