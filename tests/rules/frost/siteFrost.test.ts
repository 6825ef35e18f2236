import { expect, test } from 'vitest';
import { siteFrost } from '../../../rules/frost/index.ts';
import { dayAt, dayNumber } from '../../../rules/heat/index.ts';

// Seasons of lows at 6 °C whose nights get colder by a tenth each from the day given on, so that a
// limit one degree higher is met ten nights sooner.
const season = (year: number, coldFrom: number, warmer = 0) =>
  Array.from({ length: 365 }, (_, at) => {
    const night = dayAt(dayNumber(`${year}-07-01`) + at);
    const low = 6 + warmer - Math.max(0, at - coldFrom) / 10;
    return { night, low: at > 300 ? 6 : low };
  });
const STARTS = [60, 70, 65, 75, 80, 62, 68, 77, 72, 66, 61, 79, 74, 63, 69, 71];
const station = STARTS.flatMap((from, index) => season(2000 + index, from));
const rule = { station, threshold: 0, hemisphere: 'north', side: 'first' } as const;

test('eight own seasons speak for themselves', () => {
  const own = STARTS.slice(0, 8).flatMap((from, index) => season(2000 + index, from - 10));
  const found = siteFrost({ ...rule, own, differences: [] });
  expect(found.fitted).toEqual({ way: 'own', shared: 8, by: null });
  expect(found.seasons[0]?.day).toBe(110); // sixty nights of a tenth after day 50
  expect(found.history).toMatchObject({ way: 'counted', known: 8 });
});

test('three shared seasons move the station’s dates', () => {
  const own = [0, 1, 2].flatMap((index) => season(2000 + index, (STARTS[index] ?? 0) - 12));
  const found = siteFrost({ ...rule, own, differences: [-3, -3, -3, -3, -3] });
  expect(found.fitted).toEqual({ way: 'dates', shared: 3, by: -12 });
  expect(found.seasons[0]?.day).toBe(108);
  expect(found.history.way).toBe('curve');
});

test('with fewer, clear nights tell what the station reads when it freezes here', () => {
  const own = season(2000, 60);
  const found = siteFrost({ ...rule, own, differences: [-2, -2.5, -1, -2, -2] });
  expect(found.fitted).toEqual({ way: 'nights', shared: 5, by: -2 });
  expect(found.atStation).toBe(2);
  expect(found.seasons[0]?.day).toBe(100); // forty nights of a tenth: down to 2 °C
});

test('with neither the station stands as it is; without a station nothing is known', () => {
  const alone = siteFrost({ ...rule, own: [], differences: [-2, -2, -2, -2] });
  expect(alone.fitted).toEqual({ way: 'none', shared: 0, by: null });
  expect(alone.seasons[0]?.day).toBe(120);
  const nothing = siteFrost({ ...rule, own: [], station: null, differences: [] });
  expect(nothing.history.way).toBe('unknown');
  expect(nothing.atStation).toBeNull();
});
