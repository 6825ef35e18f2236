import fc from 'fast-check';
import { expect, test } from 'vitest';
import { percent } from '../../../rules/units.ts';
import { walkWetness, wetSpells } from '../../../rules/wetness/index.ts';
import { anySeries, at, hourly, reading, rule } from './series.ts';

// Wet or dry hour by hour, as the walk tells it.
function states(humidities: readonly number[]): string {
  let word = '';
  walkWetness(hourly(humidities), rule, (state, from, to) => {
    for (let t = from; t < to; t += 3_600_000) word += state === 'wet' ? 'W' : 'D';
  });
  return word;
}
const W = (hours: number) => Array<number>(hours).fill(95);
const D = (hours: number) => Array<number>(hours).fill(70);

test('leaves get wet at 90 % and stay so until under 87 %', () => {
  // Worked by hand from the rule.
  expect(states([85, 89.9, 90, 88, 87, 86.9, 89, 90])).toBe('DDWWWDDW');
});

test('a dry break of 4 h parts two spells, one of 3 h does not', () => {
  // W5 D3 W4 D4 W2, by hand: 9 and 2 hours; with a break of 3 h: 5, 4 and 2.
  const readings = hourly([...W(5), ...D(3), ...W(4), ...D(4), ...W(2)]);
  const hoursOf = (mergeGapHours: number) =>
    wetSpells(readings, { ...rule, mergeGapHours }).map(({ wetHours }) => wetHours);
  expect(hoursOf(4)).toEqual([9, 2]);
  expect(hoursOf(3)).toEqual([5, 4, 2]);
});

test('a spell says when it began and ended, and how warm its wet hours were', () => {
  const readings = hourly([70, 95, 95, 70, 95, 70], [30, 10, 14, 30, 15, 30]);
  expect(wetSpells(readings, rule)).toEqual([
    { from: at(1), to: at(5), wetHours: 3, unknownHours: 0, meanTemperature: 13 },
  ]);
});

test('a gap inside a spell is unknown, neither wet nor dry', () => {
  const readings = hourly([95, 95, 95, 95, 95, 95, 95]).filter((_, hour) => hour < 2 || hour > 4);
  const [spell, ...others] = wetSpells(readings, rule);
  expect(others).toEqual([]);
  expect(spell).toMatchObject({ from: at(0), to: at(7), wetHours: 4, unknownHours: 3 });
});

test('a gap as long as the break ends a spell', () => {
  const readings = hourly(W(8)).filter((_, hour) => hour < 2 || hour > 5);
  expect(wetSpells(readings, rule).map(({ wetHours }) => wetHours)).toEqual([2, 2]);
  expect(wetSpells(readings, { ...rule, mergeGapHours: 5 })).toMatchObject([
    { wetHours: 4, unknownHours: 4 },
  ]);
});

test('unknown time at the edge of a spell is not inside it', () => {
  const readings = hourly([95, 95, 95, 95, 70, 70]).filter((_, hour) => hour !== 2 && hour !== 3);
  expect(wetSpells(readings, rule)).toMatchObject([{ wetHours: 2, unknownHours: 0, to: at(2) }]);
});

test('wetness is remembered across a gap', () => {
  // Silent in hours 2 and 3; the 88 % after it keeps wet leaves wet.
  const readings = hourly([95, 95, 95, 95, 88, 88]).filter((_, hour) => hour !== 2 && hour !== 3);
  expect(wetSpells(readings, rule)).toMatchObject([{ to: at(6), wetHours: 4, unknownHours: 2 }]);
});

test('readings that say nothing of humidity are passed over', () => {
  const readings = hourly(W(6)).map((each, hour) =>
    hour === 1 ? { ...each, humidity: null } : each,
  );
  expect(wetSpells(readings, { ...rule, maxGapMinutes: 150 })).toMatchObject([{ wetHours: 6 }]);
});

test('no readings have no spells, and one alone speaks for no time', () => {
  expect(wetSpells([], rule)).toEqual([]);
  expect(wetSpells(hourly([95]), rule)).toEqual([]);
});

test('spells come in order, apart by the break or more, within the series', () => {
  fc.assert(
    fc.property(anySeries, (readings) => {
      const spells = wetSpells(readings, rule);
      return spells.every((spell, index) => {
        const next = spells[index + 1];
        const length = (spell.to - spell.from) / 3_600_000;
        return (
          spell.wetHours > 0 &&
          spell.wetHours + spell.unknownHours <= length + 1e-9 &&
          (next === undefined || next.from - spell.to >= 4 * 3_600_000)
        );
      });
    }),
  );
});

test('a longer break never makes more spells', () => {
  fc.assert(
    fc.property(
      anySeries,
      fc.integer({ min: 1, max: 12 }),
      fc.integer({ min: 1, max: 12 }),
      (readings, a, b) => {
        const count = (mergeGapHours: number) =>
          wetSpells(readings, { ...rule, mergeGapHours }).length;
        return count(Math.max(a, b)) <= count(Math.min(a, b));
      },
    ),
  );
});

test('damper air never has fewer wet hours', () => {
  const sum = (readings: Parameters<typeof wetSpells>[0]) =>
    wetSpells(readings, rule).reduce((hours, spell) => hours + spell.wetHours, 0);
  fc.assert(
    fc.property(anySeries, fc.double({ min: 0, max: 5, noNaN: true }), (readings, more) => {
      const damper = readings.map((each) => ({
        ...each,
        humidity: percent((each.humidity ?? 0) + more),
      }));
      return sum(damper) >= sum(readings) - 1e-9;
    }),
  );
});

test('a year of 5-minute readings has a spell for each time it was wet', () => {
  const year = Array.from({ length: 105_120 }, (_, index) =>
    reading(index / 12, 12, 70 + 29 * Math.sin(index / 40)),
  );
  // A wave takes 2 pi x 40 readings: 418 whole ones, and one that is wet before the year ends.
  expect(wetSpells(year, { ...rule, mergeGapHours: 1 })).toHaveLength(419);
});

test('readings out of order and rules upside down are refused in one sentence', () => {
  const readings = hourly([95, 95]).reverse();
  expect(() => wetSpells(readings, rule)).toThrow('Expected readings in order of time, got');
  expect(() => wetSpells([], { at: 87, below: 90, mergeGapHours: 4 })).toThrow(
    'Expected humidity below which leaves are dry from 1 to 87 %, got 90',
  );
  expect(() => wetSpells(hourly([140]), rule)).toThrow(RangeError);
  expect(() => wetSpells(hourly([Number.NaN]), rule)).toThrow(RangeError);
});
