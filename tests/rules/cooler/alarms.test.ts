import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  type AlarmLatch,
  alarmLatch,
  alarmYardsticks,
  chatters,
  hubSilent,
  type LatchEvent,
  latencyReport,
  RESTING,
  silentAfterMinutes,
  worstAlarmLatency,
} from '../../../rules/cooler/index.ts';
import { instant, MINUTE } from '../../../rules/units.ts';

const settings = { limit: 5, side: 'above', holdOffMinutes: 10, everyMinutes: 1 } as const;
const value = (minute: number, reading: number | null): LatchEvent => ({
  kind: 'value',
  t: instant(minute * MINUTE),
  value: reading,
});
const seen = (minute: number): LatchEvent => ({
  kind: 'seen',
  t: instant(minute * MINUTE),
  by: 'Ana',
});
const time = (minute: number): LatchEvent => ({ kind: 'time', t: instant(minute * MINUTE) });
const run = (events: readonly LatchEvent[], start: AlarmLatch = RESTING) =>
  events.reduce((latch, event) => alarmLatch(latch, event, settings), start);
const minutes = (from: number, to: number, reading: number) =>
  Array.from({ length: to - from + 1 }, (_, i) => value(from + i, reading));

test('a limit passed for the hold-off is an alarm, and stays one to be seen when it goes back', () => {
  expect(run(minutes(0, 9, 6)).state).toBe('pending');
  expect(run(minutes(0, 10, 6)).state).toBe('active-unacknowledged');
  const night = run([...minutes(0, 30, 6), ...minutes(31, 40, 3)]);
  expect(night.state).toBe('cleared-unacknowledged');
  expect(run([time(200), value(201, 3)], night).state).toBe('cleared-unacknowledged');
  expect(run([seen(500)], night)).toMatchObject({ state: 'normal', seenBy: 'Ana' });
});

test('"seen" stops no state, and a seen alarm goes back to normal by itself', () => {
  const told = run([...minutes(0, 10, 6), seen(11), value(12, 6)]);
  expect(told.state).toBe('active-acknowledged');
  expect(run([value(13, 3)], told).state).toBe('normal');
  expect(run([seen(1)]).state).toBe('normal');
});

test('back inside during the hold-off it never was an alarm', () => {
  expect(run([...minutes(0, 8, 6), value(9, 4)]).state).toBe('normal');
});

test('it clears only 0.4 K inside the limit', () => {
  const active = run(minutes(0, 10, 6));
  expect(run([value(11, 4.605)], active).state).toBe('active-unacknowledged');
  expect(run([value(11, 4.595)], active).state).toBe('cleared-unacknowledged');
});

test('a cleared alarm that comes back sounds anew, after its hold-off', () => {
  const night = run([...minutes(0, 12, 6), value(13, 3)]);
  expect(run(minutes(14, 23, 6), night).state).toBe('cleared-unacknowledged');
  expect(run(minutes(14, 24, 6), night).state).toBe('active-unacknowledged');
  expect(run([...minutes(14, 16, 6), seen(16)], night).state).toBe('pending');
});

test('too cold works the other way round', () => {
  const cold = { ...settings, limit: 0, side: 'below' as const, holdOffMinutes: 0 };
  const frozen = alarmLatch(RESTING, value(0, -0.1), cold);
  expect(frozen.state).toBe('active-unacknowledged');
  expect(alarmLatch(frozen, value(1, 0.5), cold).state).toBe('cleared-unacknowledged');
  expect(alarmLatch(RESTING, value(0, 0), cold).state).toBe('normal');
});

test('one missing sample does not restart the hold-off, a long silence does', () => {
  const gap = [...minutes(0, 4, 6), value(5, null), ...minutes(6, 10, 6)];
  expect(run(gap).state).toBe('active-unacknowledged');
  expect(run([...minutes(0, 4, 6), value(7, 6), value(10, 6)]).state).toBe('active-unacknowledged');
  expect(run([...minutes(0, 4, 6), value(8, 6), value(10, 6)]).state).toBe('pending');
});

test('more than three sample periods of silence is an alarm of its own, until a value comes', () => {
  const heard = run([value(0, 3)]);
  expect(run([time(3)], heard).noData).toBe(false);
  expect(run([time(3.03)], heard).noData).toBe(true);
  expect(run([value(1, null), value(2, null), value(3.1, null)], heard).noData).toBe(true);
  expect(run([time(9), value(10, 3)], heard).noData).toBe(false);
  expect(run([time(9)], heard).state).toBe('normal');
});

test('missing values alone never raise or clear a temperature alarm', () => {
  const events = fc.array(fc.constantFrom(null, 3, 4.8, 6), { maxLength: 60 });
  fc.assert(
    fc.property(events, (list) => {
      let latch = RESTING;
      return list.every((reading, minute) => {
        const before = latch.state;
        latch = alarmLatch(latch, value(minute, reading), settings);
        return reading !== null || latch.state === before;
      });
    }),
  );
});

test('an active alarm never becomes normal without being seen', () => {
  const events = fc.array(fc.constantFrom(null, 3, 4.8, 6, 9), { maxLength: 120 });
  fc.assert(
    fc.property(events, (list) => {
      let latch = RESTING;
      let rang = false;
      for (const [minute, reading] of list.entries()) {
        latch = alarmLatch(latch, value(minute, reading), settings);
        rang ||= latch.state === 'active-unacknowledged';
        if (rang && (latch.state === 'normal' || latch.state === 'pending')) return false;
      }
      return true;
    }),
  );
});

test('a sample each minute, ten minutes held and a poll of 30 s make 690 s at worst', () => {
  expect(worstAlarmLatency({ sampleSeconds: 60, holdSeconds: 600, pollSeconds: 30 })).toBe(690);
  expect(worstAlarmLatency({ sampleSeconds: null, holdSeconds: 600, pollSeconds: 30 })).toBeNull();
});

test('latencies are reported with their misses', () => {
  expect(latencyReport([10, null, 20, 30, 40, null, 50])).toEqual({
    median: 30,
    p90: 46,
    misses: 2,
    trials: 7,
  });
  expect(latencyReport([null])).toEqual({ median: null, p90: null, misses: 1, trials: 1 });
});

test('a hub without a heartbeat for 301 s is silent, at 299 s it is not', () => {
  const now = instant(1_000_000);
  expect(hubSilent(instant(now - 301_000), now)).toBe(true);
  expect(hubSilent(instant(now - 299_000), now)).toBe(false);
  expect(hubSilent(null, now)).toBe(true);
});

test('three changes in 30 minutes are one alarm with a count', () => {
  const now = instant(60 * MINUTE);
  const changes = (ago: readonly number[]) => ago.map((minute) => instant(now - minute * MINUTE));
  expect(chatters(changes([29.8, 10, 1]), now)).toBe(true);
  expect(chatters(changes([30.2, 10, 1]), now)).toBe(false);
  expect(chatters(changes([10, 1]), now)).toBe(false);
});

test('a probe is silent after three reports, or after what it promised', () => {
  expect(silentAfterMinutes(5)).toBe(15);
  expect(silentAfterMinutes(5, 60)).toBe(60);
});

test.for([
  // EEMUA 191 and ISA-18.2 / IEC 62682 by open summaries and from memory; the garden's own: none.
  ['alarms-steady-good', 1],
  ['alarms-steady', 2],
  ['alarms-upset', 10],
  ['share-low', 80],
  ['share-medium', 15],
  ['share-high', 5],
  ['alarms-acceptable', 150],
  ['alarms-at-most', 300],
  ['chattering-from', 3],
  ['stale-after', 24],
  ['false-urgent', 1],
  ['notices', 3],
  ['second-person-after', 10],
  ['third-person-after', 20],
  ['shelved-usually', 60],
  ['shelved-longest', 12],
  ['product-shelved-longest', 2],
] as const)('the yardstick %s is %s, with a source', ([what, most]) => {
  const stick = alarmYardsticks.find((each) => each.what === what);
  expect(stick?.most).toBe(most);
  expect(stick?.source).not.toBe('');
});
