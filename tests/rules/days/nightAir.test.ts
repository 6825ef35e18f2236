import { expect, test } from 'vitest';
import { coldHours, nightAir, type PlaceDay, type PlaceHour } from '../../../rules/days/index.ts';
import { celsius, instant } from '../../../rules/units.ts';

const HOUR = 3_600_000;
const hour = (temperature: number, open: boolean | null): PlaceHour => ({
  ...{ known: 1, inBand: 0, hot: 0, cold: 0, wet: 0, wetInBand: 0, hurt: 0 },
  ...{ temperature, humidity: 90, open },
});
const days = (
  count: number,
  from: number,
  temperature: number,
  damp: number,
  open: boolean | null,
) =>
  Array.from(
    { length: count },
    (_, i): PlaceDay => ({
      day: `2026-05-${String(from + i).padStart(2, '0')}`,
      hours: Array.from({ length: 24 }, () => hour(temperature, open)),
      ...{ lowest: temperature, highest: temperature },
      disease: { hours: [damp, damp], risk: { least: 'watch', most: 'watch' }, of: ['grey-mould'] },
    }),
  );
const outside = days(20, 1, 8, 2, null);

test('shut nights and open nights of a place speak for themselves', () => {
  const here = [...days(5, 1, 11, 9, false), ...days(5, 6, 9, 3, true)];
  const air = nightAir(here, outside);
  expect(air.keeps.shut).toBeCloseTo(3, 9);
  expect(air.keeps.open).toBeCloseTo(1, 9);
  expect(air.damp).toEqual({ shut: 9, open: 3 });
});

test('where nobody left it open yet, the air outside speaks for an open house', () => {
  const air = nightAir(days(5, 1, 11, 9, null), outside);
  expect(air.damp).toEqual({ shut: 9, open: 2 });
  expect(air.keeps.open).toBe(0);
});

test('a place without a night that was looked at knows nothing of damp', () => {
  expect(nightAir([], []).damp).toEqual({ shut: null, open: null });
  expect(nightAir(days(9, 1, 9, 3, true), outside).damp.shut).toBeNull();
});

test('cold hours are counted on last night moved to tonight, those of frost ten times', () => {
  const night = [10, 8, 6, 8].map((t, i) => ({ t: instant(i * HOUR), temperature: celsius(t) }));
  const sure = (mean: number) => ({ mean, sd: 0 });
  expect(coldHours(night, sure(6), 0, 7, 8)).toBeCloseTo(2, 9); // one reading of four, of 8 h
  expect(coldHours(night, sure(6), 2, 7, 8)).toBe(0); // the house keeps 2 K
  expect(coldHours(night, sure(-1), 0, null, 8)).toBeCloseTo(20, 9); // a quarter below zero
  expect(coldHours([], sure(6), 0, 7, 8)).toBeNull();
});
