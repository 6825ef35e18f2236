import { expect, test } from 'vitest';
import {
  blightDay,
  lateBlight,
  lateBlightSmith,
  minimumAtLeast,
  twoDayBlight,
} from '../../../rules/disease/index.ts';
import { celsius } from '../../../rules/units.ts';
import { truth } from '../../truth/index.ts';
import { at } from '../wetness/series.ts';
import { circumstances, tenMinutes } from './circumstances.ts';

test.for(
  truth(
    'disease/twoDayBlight.csv',
    ['min_a', 'damp_a', 'unknown_a', 'min_b', 'damp_b', 'unknown_b', 'needed'],
    ['verdict'],
  ),
)(
  'two days: $min_a °C $damp_a h (+ $unknown_a), $min_b °C $damp_b h (+ $unknown_b) at $needed h: $verdict',
  (row) => {
    const blight = (min: number, damp: number, unknown: number) => ({
      warm: min >= 10 ? ('yes' as const) : ('no' as const),
      dampHours: [damp, damp + unknown] as const,
    });
    const days = [
      blight(row.min_a, row.damp_a, row.unknown_a),
      blight(row.min_b, row.damp_b, row.unknown_b),
    ] as const;
    expect(twoDayBlight(days, row.needed)).toBe(row.verdict);
  },
);

/** Two calendar days from hour 0, damp for so many hours of each, at a lowest temperature. */
const twoDays = (lowest: number, damp: number, humidity = 90) =>
  tenMinutes(48, (hour) => {
    return [hour % 24 === 4 ? lowest : 15, hour % 24 < damp - 1e-9 ? humidity : 80];
  });
const calendarDays = [
  { from: at(0), to: at(24) },
  { from: at(24), to: at(48) },
] as const;

test('late blight by Hutton (6 h) and by Smith (11 h), from readings of two days', () => {
  const judge = (disease: typeof lateBlight, lowest: number, damp: number, humidity = 90) =>
    disease.judge(circumstances(twoDays(lowest, damp, humidity), { outdoors: true, calendarDays }))
      .verdict;
  expect(judge(lateBlight, 10, 6)).toBe('yes');
  expect(judge(lateBlight, 10, 5.8)).toBe('no');
  expect(judge(lateBlight, 9.9, 8)).toBe('no');
  expect(judge(lateBlight, 10, 8, 89.9)).toBe('no');
  expect(judge(lateBlightSmith, 10, 11)).toBe('yes');
  expect(judge(lateBlightSmith, 10, 10.8)).toBe('no');
});

test('late blight is for outdoor probes, and for two days that are known', () => {
  const air = twoDays(12, 8);
  const asked = (more: object) => lateBlight.judge(circumstances(air, { calendarDays, ...more }));
  expect(asked({ outdoors: false })).toMatchObject({ missing: ['outdoor-probe'] });
  expect(asked({ outdoors: null })).toMatchObject({
    verdict: 'unknown',
    missing: ['outdoor-probe'],
  });
  expect(asked({ outdoors: true, calendarDays: null })).toMatchObject({
    missing: ['last-two-days'],
  });
  expect(asked({ outdoors: true })).toMatchObject({ verdict: 'yes', risk: { least: 'event' } });
  const silent = air.filter(({ t }) => t < at(26) || t > at(32));
  expect(lateBlight.judge(circumstances(silent, { outdoors: true, calendarDays }))).toMatchObject({
    verdict: 'unknown',
    risk: { least: 'quiet', most: 'event' },
  });
});

test('an hourly record is judged by its own step', () => {
  const hourly = twoDays(12, 8).filter((_, index) => index % 6 === 0);
  const [least, most] = blightDay({ air: hourly, maxGapMinutes: 60 }, calendarDays[0]).dampHours;
  expect([least, most]).toEqual([8, 8]);
});

test('a night with a gap of more than 2 h can not be certified warm, but can be known cold', () => {
  const without = (from: number, to: number) =>
    tenMinutes(48, () => [12, 80]).filter(({ t }) => t <= at(from) || t >= at(to));
  const asked = (from: number, to: number) =>
    minimumAtLeast(without(from, to), 10, { from: at(0), to: at(24) });
  expect(asked(2, 4)).toBe('yes');
  expect(asked(2, 4 + 1 / 6)).toBe('unknown');
  expect(asked(8, 22)).toBe('yes'); // an afternoon
  expect(asked(7 + 5 / 6, 11)).toBe('unknown');
  expect(asked(15, 22)).toBe('yes');
  expect(asked(15, 22 + 1 / 6)).toBe('unknown');
  expect(minimumAtLeast([], 10, { from: at(0), to: at(24) })).toBe('unknown');
  const cold = without(0.5, 7).map((each) => ({ ...each, temperature: celsius(9.99) }));
  expect(minimumAtLeast(cold, 10, { from: at(0), to: at(24) })).toBe('no');
  const last = tenMinutes(21.9, () => [12, 80], -3);
  expect(minimumAtLeast(last, 10, { from: at(0), to: at(24) })).toBe('unknown');
});
