import { expect, test } from 'vitest';
import { hubTime } from '../../dashboard/clock.ts';

test('the hub’s clock runs on at its own speed between two pulses', () => {
  const anchor = { hub: 1_000_000, wall: 500, speed: 60 };
  expect(hubTime(anchor, 500)).toBe(1_000_000);
  expect(hubTime(anchor, 1500)).toBe(1_060_000);
});

test('a browser’s clock set back does not turn the hub’s back', () => {
  expect(hubTime({ hub: 1_000_000, wall: 500, speed: 1 }, 100)).toBe(1_000_000);
});
