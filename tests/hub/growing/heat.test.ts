import { expect, test } from 'vitest';
import { HOUR } from '../smallFarm.ts';
import { cutOf, DAY, growingHub, noted } from './growingFarm.ts';

const MAY = Date.UTC(2026, 4, 1);
const NOW = Date.UTC(2026, 4, 10);
const rule = { lower: 10, upper: null };
const daily = (mean: number, swing: number) => (t: number) =>
  mean + swing * Math.sin((2 * Math.PI * (t % DAY)) / DAY - Math.PI / 2);

test('heat is counted exactly at each place, for the time the plants stood there', () => {
  const { growing, measure } = growingHub({ now: NOW });
  measure('p1', MAY, NOW, () => 20);
  measure('p2', MAY, NOW, () => 25);
  const stays = [
    { place: 'long-house', from: MAY },
    { place: 'sun-house', from: MAY + 3 * DAY + 6 * HOUR },
  ];
  const lived = growing.heat.lived(stays, MAY, MAY + 5 * DAY, rule);
  expect(lived.degreeDays).toBeCloseTo(3.25 * 10 + 1.75 * 15, 9);
  expect(lived).toMatchObject({ unknownHours: 0, variance: 0, lightPerDay: null });
});

test('what is over is not counted again, until its readings change', () => {
  const { growing, measure } = growingHub({ now: NOW });
  measure('p1', MAY, NOW, () => 20);
  const stays = [{ place: 'long-house', from: MAY }];
  const once = growing.heat.lived(stays, MAY, MAY + 2 * DAY, rule).degreeDays;
  expect(growing.heat.lived(stays, MAY, MAY + 2 * DAY, rule).degreeDays).toBe(once);
  measure('p1', MAY + 6 * HOUR + 1, MAY + 18 * HOUR, () => 30); // a late message
  const again = growing.heat.lived(stays, MAY, MAY + 2 * DAY, rule).degreeDays ?? 0;
  expect(again).toBeGreaterThan((once ?? 0) + 1);
});

test('hours without readings are told, and a usual day stands in for them', () => {
  const { growing, measure } = growingHub({ now: NOW });
  const gone = (t: number) => t >= MAY + 2 * DAY && t < MAY + 3 * DAY;
  measure('p1', MAY, NOW, (t) => (gone(t) ? null : daily(20, 6)(t)));
  const whole = growingHub({ now: NOW });
  whole.measure('p1', MAY, NOW, daily(20, 6));
  const stays = [{ place: 'long-house', from: MAY }];
  const told = growing.heat.lived(stays, MAY, MAY + 5 * DAY, rule);
  const truth = whole.growing.heat.lived(stays, MAY, MAY + 5 * DAY, rule);
  expect(told.unknownHours).toBeGreaterThan(23);
  expect(told.unknownHours).toBeLessThan(25);
  expect(Math.abs((told.degreeDays ?? 0) - (truth.degreeDays ?? 0))).toBeLessThan(0.5);
});

test('where nothing was ever measured nobody knows', () => {
  const { growing } = growingHub({ now: NOW });
  const stays = [{ place: 'long-house', from: MAY }];
  expect(growing.heat.lived(stays, MAY, MAY + DAY, rule)).toMatchObject({
    ...{ degreeDays: null, unknownHours: 24 },
  });
  expect(growing.heat.ahead('long-house', rule, '2026-05-10', 5)).toMatchObject({
    ...{ mean: null, years: [], from: null, lately: null },
  });
});

test('a year of readings tells what dates bring, and the year runs again', () => {
  const { growing, measure } = growingHub({ now: NOW });
  const year = (t: number) =>
    14 +
    8 * Math.sin((2 * Math.PI * (t - Date.UTC(2025, 3, 15))) / (365.25 * DAY)) +
    daily(0, 4)(t);
  measure('p1', Date.UTC(2025, 3, 1), NOW, year);
  const { mean, years, from } = growing.heat.ahead('long-house', rule, '2026-05-10', 20);
  expect(from).toBe('measured');
  expect(mean).toHaveLength(20);
  expect(years).toHaveLength(1);
  expect(mean?.[19]).toBeGreaterThan(mean?.[0] ?? 99);
});

test('what past batches took: noted ready, or only cut', () => {
  const { growing, measure, sow, tell } = growingHub({ now: NOW });
  measure('p1', MAY - 40 * DAY, NOW, () => 20);
  sow('basil-a', { sownAt: MAY - 30 * DAY });
  tell('basil-a', noted(MAY - 5 * DAY));
  tell('basil-a', cutOf(MAY - 2 * DAY, 10, 3));
  sow('basil-b', { sownAt: MAY - 20 * DAY });
  tell('basil-b', cutOf(MAY, 10, 4));
  const { base, past } = growing.crop('basil');
  expect(base).toMatchObject({ lower: 10, from: 'told', upper: 30 });
  expect(past).toMatchObject([
    { batch: 'basil-a', seen: 'noted', degreeDays: 250, days: 25, perTray: 0.3, stage: 'later' },
    { batch: 'basil-b', seen: 'cut', degreeDays: 200, days: 20, perTray: 0.4 },
  ]);
});
