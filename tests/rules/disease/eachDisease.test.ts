import { expect, test } from 'vitest';
import {
  basilInfection,
  brassicaDownyMildew,
  classOfDampHours,
  greyMouldLeaves,
  lateBlightInfection,
  lettuceInfection,
  mildewHours,
  powderyMildew,
  trayDamp,
  trayDampHours,
  unbrokenHours,
} from '../../../rules/disease/index.ts';
import { circumstances, day, night, piece, tenMinutes, wordOf } from './circumstances.ts';

test('generic model: half an infection is watch, a whole one event', () => {
  // Lettuce at 15 °C needs 4 h (Scherm & van Bruggen 1994); brassica at 16 °C 3 h, grey mould at
  // 20 °C 7 h, late blight at 15 °C 6 h.
  for (const [disease, temperature, needed] of [
    [lettuceInfection, 15, 4],
    [brassicaDownyMildew, 16, 3],
    [greyMouldLeaves, 20, 7],
    [lateBlightInfection, 15, 6],
  ] as const) {
    expect(wordOf(night(needed / 2 - 0.2, temperature), disease)).toBe('quiet');
    expect(wordOf(night(needed / 2 + 0.2, temperature), disease)).toBe('watch');
    expect(wordOf(night(needed - 0.2, temperature), disease)).toBe('watch');
    expect(wordOf(night(needed, temperature), disease)).toBe('event');
  }
});

test('basil: 4 h without a break is possible, a whole infection likely', () => {
  // Univ. of Massachusetts fact sheet: 4 h, 5 to 28 °C. Progress is slower away from 20 °C: at
  // 10 °C 13.95 h are needed (computed apart from this code).
  expect(wordOf(night(3 + 5 / 6, 10), basilInfection)).toBe('quiet');
  expect(wordOf(night(4, 10), basilInfection)).toBe('watch');
  expect(wordOf(night(13.8, 10), basilInfection)).toBe('watch');
  expect(wordOf(night(14.1, 10), basilInfection)).toBe('event');
  expect(wordOf(night(12, 4.9), basilInfection)).toBe('quiet');
  expect(wordOf(night(12, 5), basilInfection)).toBe('watch');
  expect(wordOf(night(12, 28), basilInfection)).toBe('watch');
  expect(wordOf(night(12, 28.1), basilInfection)).toBe('quiet');
});

test('basil: a dry hour breaks the four, though not the spell', () => {
  const broken = circumstances(
    tenMinutes(24, (hour) => [7, (hour >= 8 && hour < 11) || (hour >= 12 && hour < 15) ? 95 : 70]),
  );
  expect(unbrokenHours(broken).map((h) => Math.round(h * 1e6) / 1e6)).toEqual([3, 3]);
  expect(wordOf(broken, basilInfection)).toBe('quiet');
  const hidden = circumstances([], {
    wetness: [piece('wet', 0, 3, 10), piece('unknown', 3, 6, 8, 12), piece('dry', 6, 24, 10)],
  });
  expect(unbrokenHours(hidden)).toEqual([3, 6]);
  // Wetness before noon and after the day's end is not this day's.
  const early = circumstances([], {
    wetness: [piece('wet', -8, -2, 10), piece('dry', -2, 24, 10)],
  });
  expect(unbrokenHours(early)).toEqual([0, 0]);
  const late = circumstances([], { wetness: [piece('dry', 0, 22, 10), piece('wet', 22, 30, 10)] });
  expect(unbrokenHours(late)).toEqual([2, 2]);
});

test('powdery mildew: hours of 15-25 °C over 75 and under 98 %, with no verdict on them', () => {
  // Amsalem et al. 2006.
  const hoursAt = (t: number, rh: number) =>
    Math.round(mildewHours({ air: tenMinutes(24, () => [t, rh]) }, day)[0]);
  expect([hoursAt(15, 80), hoursAt(25, 80), hoursAt(14.9, 80), hoursAt(25.1, 80)]).toEqual([
    24, 24, 0, 0,
  ]);
  expect([hoursAt(20, 75), hoursAt(20, 75.1), hoursAt(20, 97.9), hoursAt(20, 98)]).toEqual([
    0, 24, 24, 0,
  ]);
  const judged = powderyMildew.judge(night(9, 18));
  expect(judged).toMatchObject({
    verdict: 'unknown',
    risk: null,
    missing: ['published-threshold'],
  });
  expect(judged.because[0]?.value).toBeCloseTo(9, 6);
});

test('trays: under 6 damp hours quiet, to 12 look, over 12 act', () => {
  expect([5.99, 6, 12, 12.01].map(classOfDampHours)).toEqual(['quiet', 'watch', 'watch', 'event']);
  expect(() => classOfDampHours(25.1)).toThrow(RangeError);
  expect(() => classOfDampHours(25)).not.toThrow();
  const hoursAt = (t: number, rh: number) =>
    Math.round(trayDampHours({ air: tenMinutes(24, () => [t, rh]) }, day)[0]);
  expect([hoursAt(15, 85), hoursAt(14.9, 85), hoursAt(15, 84.9)]).toEqual([24, 0, 0]);
  const damp = (hours: number) =>
    circumstances(tenMinutes(24, (hour) => [18, hour < hours ? 86 : 60]));
  expect([damp(5), damp(9), damp(13)].map((known) => wordOf(known, trayDamp))).toEqual([
    'quiet',
    'watch',
    'event',
  ]);
  const silent = (hours: number) =>
    circumstances(tenMinutes(24, (hour) => (hour < hours ? null : [18, 60])));
  expect(wordOf(silent(12.1), trayDamp)).toBe('unknown');
  expect(wordOf(silent(11.9), trayDamp)).toBe('quiet-to-watch');
});

test('gaps are counted by the farm’s own step', () => {
  const hourly = tenMinutes(24, () => [18, 86]).filter((_, index) => index % 6 === 0);
  const [least] = trayDampHours({ air: hourly, maxGapMinutes: 60 }, day);
  expect(least).toBeCloseTo(23.5, 6); // the last reading speaks for half of 60 minutes
});
