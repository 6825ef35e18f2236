import { setTimeout as pause } from 'node:timers/promises';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { commitQueue } from '../../../hub/intake/commitQueue.ts';
import { steadyPace } from '../../../hub/intake/pace.ts';

test('after a quiet time some go at once, then one in each interval', () => {
  let now = 0;
  const pace = steadyPace(2000, 3, () => now);
  for (let i = 0; i < 3; i++) {
    expect(pace.wait()).toBe(0);
    pace.spend();
  }
  expect(pace.wait()).toBe(2000);
  now = 1500;
  expect(pace.wait()).toBe(500);
  now = 2000;
  expect(pace.wait()).toBe(0);
});

test('never more than one in each interval and what went ahead, never a longer wait than it', () => {
  fc.assert(
    fc.property(fc.array(fc.integer({ min: 0, max: 5000 }), { maxLength: 200 }), (gaps) => {
      let now = 0;
      let spent = 0;
      const pace = steadyPace(2000, 5, () => now);
      for (const gap of gaps) {
        now += gap;
        const wait = pace.wait();
        expect(wait).toBeLessThanOrEqual(2000);
        if (wait > 0) continue;
        pace.spend();
        spent++;
      }
      expect(spent).toBeLessThanOrEqual(5 + now / 2000 + 1e-6);
    }),
  );
});

test('an interval of nothing never waits', () => {
  const pace = steadyPace(0, 5);
  for (let i = 0; i < 100; i++) {
    expect(pace.wait()).toBe(0);
    pace.spend();
  }
});

test('those that must wait are written together, and a full batch does not wait', async () => {
  const batches: number[][] = [];
  let wait = 0;
  const queue = commitQueue<number>((batch) => batches.push([...batch]), 3, 5, undefined, {
    wait: () => wait,
    spend: () => {},
  });
  queue.hold(1, () => {});
  await pause(50);
  expect(batches).toEqual([[1]]);
  wait = 60_000;
  queue.hold(2, () => {});
  queue.hold(3, () => {});
  await pause(50);
  expect(batches).toEqual([[1]]);
  queue.hold(4, () => {});
  expect(batches).toEqual([[1], [2, 3, 4]]);
});
