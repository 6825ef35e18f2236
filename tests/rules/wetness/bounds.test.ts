import fc from 'fast-check';
import { expect, test } from 'vitest';
import { percent } from '../../../rules/units.ts';
import {
  type AirRead,
  hoursWhen,
  joinPieces,
  spellBounds,
  wetHoursBounds,
  wetSpells,
} from '../../../rules/wetness/index.ts';
import { truth } from '../../truth/index.ts';
import { closeTo, hourly90, piecesOf, rule, tenMinutes, wet, window } from './byHumidity.ts';
import { anySeries, at, reading } from './series.ts';

test.for(truth('wetness/spells.csv', ['break_h', 'first', 'second', 'third']))(
  'with a dry break of $break_h h: $first, $second, $third',
  ({ break_h, first, second, third }) => {
    const [W, D] = [95, 70];
    const day = [W, W, W, W, W, D, D, D, W, W, W, W, D, D, D, D, W, W];
    const { least, most } = spellBounds(piecesOf(tenMinutes(day), window(0, 18)), break_h);
    const wanted = [first, second, third].filter((hours) => hours >= 0);
    expect(least.map(({ wetHours }) => Math.round(wetHours * 1e6) / 1e6)).toEqual(wanted);
    expect(most.map(({ wetHours }) => Math.round(wetHours * 1e6) / 1e6)).toEqual(wanted);
  },
);

test('unknown time may part spells or join them', () => {
  const [W, D] = [95, 70];
  const joined = piecesOf(tenMinutes([W, W, null, null, null, null, W, W, D]), window(0, 9));
  const { least, most } = spellBounds(joined);
  expect(least.map(({ wetHours }) => Math.round(wetHours * 1e6) / 1e6)).toEqual([2, 2]);
  expect(most.map(({ wetHours }) => Math.round(wetHours * 1e6) / 1e6)).toEqual([8]);
  expect(most[0]).toMatchObject({ from: at(0), to: at(8) });
});

test('a dry break is from 2 to 12 h', () => {
  for (const hours of [2, 12]) expect(() => spellBounds([], hours)).not.toThrow();
  for (const hours of [1.99, 12.01])
    expect(() => spellBounds([], hours)).toThrow(
      'Expected dry break that ends a spell from 2 to 12 h',
    );
});

test('pieces join without holes and fill the window', () => {
  fc.assert(
    fc.property(anySeries, (readings) => {
      const pieces = piecesOf(readings, window(-2, 70), hourly90);
      const joins = pieces.every((piece, i) => i === 0 || piece.from === pieces[i - 1]?.to);
      return joins && pieces[0]?.from === at(-2) && pieces.at(-1)?.to === at(70);
    }),
  );
});

test('splitting the window never changes the sums', () => {
  fc.assert(
    fc.property(anySeries, fc.integer({ min: -2, max: 70 }), (readings, hour) => {
      const sum = (from: number, to: number) =>
        wetHoursBounds(piecesOf(readings, window(from, to), hourly90));
      const [a, b, whole] = [sum(-2, hour), sum(hour, 70), sum(-2, 70)];
      return Math.abs(a[0] + b[0] - whole[0]) < 1e-9 && Math.abs(a[1] + b[1] - whole[1]) < 1e-9;
    }),
  );
});

const humidities = fc.array(fc.double({ min: 70, max: 100, noNaN: true }), {
  minLength: 24,
  maxLength: 24,
});

test('a gap of more than 2 h never lowers the most nor raises the least', () => {
  fc.assert(
    fc.property(
      humidities,
      fc.integer({ min: 0, max: 22 }),
      fc.integer({ min: 3, max: 12 }),
      (series, from, length) => {
        const whole = tenMinutes(series);
        const gap = window(from, from + length);
        const holed = whole.filter(({ t }) => t <= gap.from || t >= gap.to);
        const [a, b] = [wet(whole, 24), wet(holed, 24)];
        return b[1] >= a[1] - 1e-9 && b[0] <= a[0] + 1e-9;
      },
    ),
  );
});

test('a gap of more than 2 h never shortens the longest spell that is possible', () => {
  const longest = (readings: readonly AirRead[]) =>
    spellBounds(piecesOf(readings, window(0, 24))).most.reduce(
      (m, s) => Math.max(m, s.wetHours),
      0,
    );
  fc.assert(
    fc.property(humidities, fc.integer({ min: 0, max: 20 }), (series, from) => {
      const whole = tenMinutes(series);
      const holed = whole.filter(({ t }) => t <= at(from) || t >= at(from + 3));
      return longest(holed) >= longest(whole) - 1e-9;
    }),
  );
});

test('damper air never has fewer wet hours, at either bound', () => {
  fc.assert(
    fc.property(anySeries, fc.double({ min: 0, max: 5, noNaN: true }), (readings, more) => {
      const damper = readings.map((r) => ({ ...r, humidity: percent((r.humidity ?? 0) + more) }));
      const [a, b] = [readings, damper].map((series) =>
        wetHoursBounds(piecesOf(series, window(0, 60), hourly90)),
      );
      return (b?.[0] ?? 0) >= (a?.[0] ?? 0) - 1e-9 && (b?.[1] ?? 0) >= (a?.[1] ?? 0) - 1e-9;
    }),
  );
});

test('two probes: both wet is the least, either the most, and a silent one makes nothing surer', () => {
  const inside = window(0, 4);
  const a = piecesOf(tenMinutes([95, 95, 70, 70]), inside);
  const b = piecesOf(tenMinutes([95, 70, 95, 70], 12), inside);
  const joined = joinPieces(a, b);
  closeTo(wetHoursBounds(joined), 1, 3);
  expect(joined[0]).toMatchObject({ coldest: 12, warmest: 15 });
  const silent = piecesOf([], inside);
  closeTo(wetHoursBounds(joinPieces(a, silent)), 0, 4);
  expect(joinPieces([], [])).toEqual([]);
  expect(() => joinPieces(a, piecesOf([], window(0, 5)))).toThrow('Expected both from');
});

test('hours of any test, at least and at most', () => {
  const readings = tenMinutes([95, 95, null, null, null, 95, 70]);
  const damp = ({ humidity }: AirRead) => (humidity === null ? null : humidity >= 95);
  closeTo(hoursWhen(readings, damp, window(0, 7)), 3, 6);
  expect(hoursWhen(readings, () => null, window(0, 7))).toEqual([0, 7]);
});

test('spells of plain readings take a dry break of 0 to 72 h', () => {
  for (const mergeGapHours of [0, 72])
    expect(() => wetSpells([], { ...rule, mergeGapHours })).not.toThrow();
  for (const mergeGapHours of [-0.1, 72.1])
    expect(() => wetSpells([], { ...rule, mergeGapHours })).toThrow(
      'Expected dry break that ends a spell from 0 to 72 h',
    );
});

test('limits of a humidity rule', () => {
  const asked = (at: number, below: number, maxGapMinutes = 90) => {
    return () => wetSpells([], { at, below, mergeGapHours: 4, maxGapMinutes });
  };
  for (const good of [
    asked(1, 1),
    asked(100, 1),
    asked(100, 100),
    asked(90, 87, 1),
    asked(90, 87, 1440),
  ])
    expect(good).not.toThrow();
  for (const bad of [
    asked(0.99, 0.5),
    asked(100.1, 87),
    asked(90, 0.99),
    asked(90, 87, 0.99),
    asked(90, 87, 1441),
  ])
    expect(bad).toThrow(RangeError);
});

test('plain readings take a humidity up to 105 %', () => {
  const asked = (humidity: number) => () =>
    wetSpells([reading(0, 15, humidity)], { ...rule, mergeGapHours: 4 });
  expect(asked(105)).not.toThrow();
  expect(asked(105.1)).toThrow('Expected relative humidity from above 0 to 105 %, got 105.1');
});
