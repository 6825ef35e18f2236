import { expect, test } from 'vitest';
import { demoPicks } from '../../simulators/demoPicks.ts';
import { scenario } from '../../simulators/index.ts';

const all = demoPicks(scenario);

test('the made-up pickings lie before the story, in order, each with a weight and no more lost than picked', () => {
  expect(all.length).toBeGreaterThan(40);
  for (const [i, { at, kg, lostKg, minutes }] of all.entries()) {
    expect(Date.parse(at)).toBeLessThan(scenario.start);
    expect(at >= (all[i - 1]?.at ?? '')).toBe(true);
    expect(kg).toBeGreaterThan(0);
    expect(lostKg ?? 0).toBeLessThanOrEqual(kg);
    expect(minutes ?? 1).toBeGreaterThan(0);
  }
});

test('somebody forgot minutes now and then, and what was sorted out', () => {
  expect(all.some(({ minutes }) => minutes === null)).toBe(true);
  expect(all.some(({ lostKg }) => lostKg === null)).toBe(true);
});

test('a season has a flush, and slows down towards its end', () => {
  const speeds = all.flatMap(({ place, kg, minutes }) =>
    place === 'south-patch' && minutes !== null ? [kg / minutes] : [],
  );
  const mean = (list: readonly number[]) => list.reduce((sum, one) => sum + one, 0) / list.length;
  expect(mean(speeds.slice(-5))).toBeLessThan(mean(speeds) / 2);
});

test('the same story has the same pickings', () => {
  expect(demoPicks(scenario)).toEqual(all);
});
