import fc from 'fast-check';
import { expect, test } from 'vitest';
import { watchClock } from '../../../hub/main/time/clockWatch.ts';
import { jumpingClock } from '../jumpingClock.ts';

const MINUTE = 60_000;
const HOUR = 60 * MINUTE;
const YEAR = 365 * 24 * HOUR;
const T = Date.UTC(2026, 4, 10, 9);

function watched(start = T) {
  const clock = jumpingClock(start);
  const told: string[] = [];
  const watch = watchClock(clock, {
    onJump: (by) => told.push(`jumped ${Math.round(by / MINUTE)}`),
    onSettled: (by) => told.push(`settled ${by === null ? 'first' : Math.round(by / MINUTE)}`),
  });
  const pass = (minutes: number) => {
    for (let i = 0; i < minutes; i++) {
      clock.pass(MINUTE);
      watch.check();
    }
  };
  return { clock, watch, told, pass };
}

test('a clock that runs on is believed, also when it is put right little by little', () => {
  const { clock, watch, told, pass } = watched();
  for (let i = 0; i < 100; i++) {
    clock.jump(i % 3 === 0 ? 30_000 : -20_000);
    pass(1);
  }
  expect(watch.state()).toBe('ok');
  expect(told).toEqual([]);
});

test.for([HOUR, -HOUR, YEAR, -YEAR, 2 * MINUTE, -2 * MINUTE])(
  'a jump of %i ms is noticed at once, and believed when it has stood for five minutes',
  (by) => {
    const { clock, watch, told, pass } = watched();
    pass(3);
    const offset = watch.offset();
    clock.jump(by);
    expect(watch.check()).toBe('jumped');
    expect(watch.offset()).toBe(offset);
    pass(4);
    expect(watch.state()).toBe('jumped');
    pass(2);
    expect(watch.state()).toBe('ok');
    expect(watch.offset()).toBe(offset + by);
    expect(told).toEqual([`jumped ${by / MINUTE}`, `settled ${by / MINUTE}`]);
  },
);

test('one that comes back leaves no trace', () => {
  const { clock, watch, told, pass } = watched();
  const offset = watch.offset();
  clock.jump(YEAR);
  pass(4);
  clock.jump(-YEAR);
  pass(1);
  expect(watch.state()).toBe('ok');
  expect(watch.offset()).toBe(offset);
  expect(told).toEqual([`jumped ${YEAR / MINUTE}`, 'settled 0']);
});

test('one that keeps jumping is not believed until it stands', () => {
  const { clock, watch, told, pass } = watched();
  for (let i = 1; i <= 5; i++) {
    clock.jump(HOUR);
    pass(4);
  }
  expect(watch.state()).toBe('jumped');
  expect(told).toHaveLength(5);
  pass(2);
  expect(told.at(-1)).toBe(`settled ${5 * 60}`);
});

test('a clock without a time is believed as soon as it has one', () => {
  const { clock, watch, told, pass } = watched(0);
  pass(20);
  expect(watch.state()).toBe('unset');
  clock.jump(T);
  expect(watch.check()).toBe('ok');
  expect(watch.offset() + clock.steady()).toBe(clock.now());
  expect(told).toEqual(['settled first']);
});

test('a clock that falls back to 1970 and is set again leaves no trace', () => {
  const { clock, watch, told, pass } = watched();
  clock.jump(-T);
  pass(60);
  expect(watch.state()).toBe('unset');
  clock.jump(T);
  expect(watch.check()).toBe('ok');
  expect(told.at(-1)).toBe('settled 0');
});

test('however a clock is set about, once it stands it is believed and agrees with itself', () => {
  const step = fc.record({
    by: fc.integer({ min: -2 * YEAR, max: 2 * YEAR }),
    stays: fc.integer({ min: 0, max: 12 }),
  });
  fc.assert(
    fc.property(fc.array(step, { maxLength: 6 }), (steps) => {
      const { clock, watch, pass } = watched();
      for (const { by, stays } of steps) {
        clock.jump(by);
        watch.check();
        pass(stays);
      }
      pass(7);
      const set = clock.isSet();
      expect(watch.state()).toBe(set ? 'ok' : 'unset');
      if (set) expect(Math.abs(watch.offset() + clock.steady() - clock.now())).toBeLessThan(MINUTE);
    }),
  );
});
