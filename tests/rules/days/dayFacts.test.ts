import fc from 'fast-check';
import { expect, test } from 'vitest';
import { dayFacts } from '../../../rules/days/index.ts';
import { botrytisFruitIncidence } from '../../../rules/disease/index.ts';
import { degreeDays } from '../../../rules/heat/index.ts';
import { celsius, hours } from '../../../rules/units.ts';
import { wetTime } from '../../../rules/wetness/index.ts';
import { anySeries, at, reading } from '../wetness/series.ts';

const day = { from: at(0), to: at(24), base: 10, wet: { at: 90, below: 87 } };
const hoursFrom = (from: number, to: number, each: (hour: number) => [number, number]) =>
  Array.from({ length: to - from }, (_, index) => {
    const [temperature, humidity] = each(from + index);
    return reading(from + index, temperature, humidity);
  });

test('a plain day: wet until 07:00, then dry and warmer', () => {
  const readings = hoursFrom(0, 25, (hour) => (hour < 7 ? [12, 96] : [20, 60]));
  const facts = dayFacts(readings, day);
  expect(facts).toMatchObject({
    min: 12,
    max: 20,
    wetHours: 7,
    unknownHours: 0,
    longestSpellHours: 7,
  });
  expect(facts.mean).toBeCloseTo((7 * 12 + 17 * 20) / 24, 12);
  // 6 h at 2, one hour rising from 2 to 10, 17 h at 10, by hand.
  expect(facts.degreeDays).toBeCloseTo((12 + 6 + 170) / 24, 12);
  expect(facts.botrytisIndex).toBe(botrytisFruitIncidence(celsius(12), hours(7)));
});

test('a spell that began the evening before is counted from its own start', () => {
  const readings = hoursFrom(-6, 25, (hour) => (hour < 4 ? [14, 96] : [20, 60]));
  expect(dayFacts(readings, day)).toMatchObject({ wetHours: 4, longestSpellHours: 10 });
});

test('a spell that goes on into the next day is counted up to midnight', () => {
  const readings = hoursFrom(-2, 34, (hour) => (hour >= 20 ? [14, 96] : [20, 60]));
  expect(dayFacts(readings, day)).toMatchObject({ wetHours: 4, longestSpellHours: 4 });
});

test('a spell that was over before midnight is not the next day’s', () => {
  const readings = hoursFrom(-8, 25, (hour) => (hour < -2 ? [14, 96] : [20, 60]));
  expect(dayFacts(readings, day)).toMatchObject({
    wetHours: 0,
    longestSpellHours: 0,
    botrytisIndex: 0,
  });
});

test('the cold half of a wet day does not infect', () => {
  const readings = hoursFrom(0, 25, () => [3, 97]);
  expect(dayFacts(readings, day)).toMatchObject({ longestSpellHours: 24, botrytisIndex: 0 });
});

test('hours without readings are unknown, neither wet nor dry', () => {
  const readings = hoursFrom(0, 25, () => [15, 96]).filter((_, hour) => hour < 6 || hour >= 16);
  expect(dayFacts(readings, day)).toMatchObject({
    wetHours: 14,
    unknownHours: 10,
    longestSpellHours: 8,
  });
});

test('a day without readings is not known at all', () => {
  const unknown = {
    min: null,
    max: null,
    mean: null,
    wetHours: null,
    unknownHours: 24,
    longestSpellHours: null,
    degreeDays: null,
    botrytisIndex: null,
  };
  expect(dayFacts([], day)).toEqual(unknown);
  expect(
    dayFacts(
      hoursFrom(-6, -2, () => [15, 96]),
      day,
    ),
  ).toEqual(unknown);
});

test('a thermometer without humidity tells of warmth and says nothing of wetness', () => {
  const readings = hoursFrom(0, 24, () => [15, 96]).map((each) => ({ ...each, humidity: null }));
  const facts = dayFacts(readings, day);
  expect(facts).toMatchObject({
    min: 15,
    wetHours: null,
    longestSpellHours: null,
    botrytisIndex: null,
  });
  expect(facts.unknownHours).toBe(0);
  expect(facts.degreeDays).toBeCloseTo((23 * 5) / 24, 12);
});

test('humidity that fails at noon leaves the afternoon unknown, though warmth was read', () => {
  const readings = hoursFrom(0, 24, () => [15, 96]).map((each, hour) =>
    hour < 12 ? each : { ...each, humidity: null },
  );
  expect(dayFacts(readings, day)).toMatchObject({ wetHours: 12, unknownHours: 12, mean: 15 });
});

test('it agrees with degreeDays and wetTime on any series', () => {
  fc.assert(
    fc.property(anySeries, (readings) => {
      const facts = dayFacts(readings, day);
      const values = readings.map(({ t, temperature }) => ({ t, value: temperature }));
      const window = { from: day.from, to: day.to };
      const units = degreeDays(values, { lower: day.base, ...window });
      const wet = wetTime(readings, day.wet, window);
      expect(facts.degreeDays ?? 0).toBeCloseTo(units.degreeDays, 9);
      expect(facts.wetHours ?? 0).toBeCloseTo(wet.wetHours, 9);
      expect(facts.unknownHours).toBeCloseTo(wet.unknownHours, 9);
      expect(facts.longestSpellHours === null).toBe(facts.wetHours === null);
    }),
  );
});

test('what comes after midnight changes the degree-days of the last hour only', () => {
  fc.assert(
    fc.property(anySeries, (readings) => {
      const today = readings.filter(({ t }) => t < day.to);
      const later = readings.slice(0, today.length + 1);
      const { min, max, mean } = dayFacts(today, day);
      expect(dayFacts(later, day)).toMatchObject({ min, max, mean });
    }),
  );
});

test('readings out of order are refused', () => {
  expect(() => dayFacts([reading(2, 15, 80), reading(1, 15, 80)], day)).toThrow(
    'Expected readings in order of time',
  );
});

test('a dry break of 4 h parts two spells, when no other break is told', () => {
  const readings = hoursFrom(0, 25, (hour) => [14, hour < 2 || (hour >= 6 && hour < 9) ? 96 : 60]);
  expect(dayFacts(readings, day)).toMatchObject({ wetHours: 5, longestSpellHours: 3 });
});

test('temperatures that no thermometer can mean are refused', () => {
  const asked = (temperature: number) => () => dayFacts([reading(1, temperature, 60)], day);
  for (const good of [-273.14, 999.9]) expect(asked(good)).not.toThrow();
  for (const bad of [-273.15, 1000, -275, 1001])
    expect(asked(bad)).toThrow('Expected temperature from -273.15 to 1000 °C');
});
