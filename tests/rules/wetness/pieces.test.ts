import fc from 'fast-check';
import { expect, test } from 'vitest';
import { HOUR, percent } from '../../../rules/units.ts';
import { type AirRead, cutTo } from '../../../rules/wetness/index.ts';
import { truth } from '../../truth/index.ts';
import { closeTo, piecesOf, tenMinutes, wet, window } from './byHumidity.ts';
import { at, reading } from './series.ts';

test('hours without a gap are as the plain rule has them', () => {
  const rows = truth('wetness/states.csv', ['hour', 'humidity_pct'], ['state']);
  const series = tenMinutes(rows.map((row) => row.humidity_pct));
  const pieces = piecesOf(series, window(0, rows.length));
  for (const { hour, state } of rows) {
    const inside = cutTo(pieces, window(hour, hour + 1));
    expect(inside.map((piece) => piece.state[0]?.toUpperCase())).toEqual(Array(6).fill(state));
  }
});

test('a long gap is neither wet nor dry: 7 hours wet, 3 silent, then dry, is 7 to 10', () => {
  const readings = tenMinutes([95, 95, 95, 95, 95, 95, 95, null, null, null, 70, 70]);
  closeTo(wet(readings, 12), 7, 10);
});

test('up to 2 h of silence between wet edges is wet, between dry edges dry, else open', () => {
  closeTo(wet(tenMinutes([95, null, null, 95]), 4), 4, 4);
  closeTo(wet(tenMinutes([70, null, null, 70]), 4), 0, 0);
  closeTo(wet(tenMinutes([95, null, null, 70]), 4), 1, 3);
  closeTo(wet(tenMinutes([70, null, null, 95]), 4), 1, 3);
});

test('a silence of one reading more than 2 h stays open at both sides', () => {
  const series = (last: number) => [...tenMinutes([last]), reading(0.95, 15, last)];
  const later = (from: number, humidity: number) =>
    [0, 1, 2].map((n) => reading(from + n / 6, 15, humidity));
  // The last reading at 0:57 speaks for 10 minutes, until 1:07.
  const speaks = 0.95 + 1 / 6;
  const open = [...series(95), ...later(speaks + 2.01, 95)];
  closeTo(wet(open, speaks + 2.01), speaks, speaks + 2.01);
  const shut = [...series(95), ...later(speaks + 1.99, 95)];
  closeTo(wet(shut, speaks + 1.99), speaks + 1.99, speaks + 1.99);
});

test('30 minutes between readings is seen, more is a gap', () => {
  const every = (step: number) => [0, 1, 2].map((n) => reading(n * step, 15, n === 0 ? 95 : 70));
  closeTo(wet(every(0.5), 1), 0.5, 0.5);
  // Each reading speaks for half of 30 minutes; what follows lies between a wet and a dry edge.
  closeTo(wet(every(0.51), 0.51), 0.25, 0.51);
});

test('between the two levels leaves stay as they were, but not across a long gap', () => {
  closeTo(wet(tenMinutes([95, 88, 88]), 3), 3, 3);
  closeTo(wet(tenMinutes([70, 88, 88]), 3), 0, 0);
  closeTo(wet(tenMinutes([88, 88, 88]), 3), 0, 3); // nobody knows how they were before
  closeTo(wet(tenMinutes([70, null, null, null, 88, 95]), 6), 1, 5);
  closeTo(wet(tenMinutes([70, null, 88, 95]), 4), 1, 1);
});

test('before the first and after the last reading time is unknown', () => {
  closeTo(wet(tenMinutes([null, 95, 70, null]), 4), 1, 3);
  closeTo(wet([], 5), 0, 5);
  closeTo(wet([reading(1, 15, 95)], 5), 0, 5); // one reading alone speaks for no time
});

test('a silent or impossible value is as if it had not come', () => {
  const broken: AirRead[] = [
    ...tenMinutes([95, 95]),
    { ...reading(2, 15, 95), humidity: null },
    { ...reading(2.1, 15, 95), humidity: percent(0) },
    { ...reading(2.2, 15, 95), humidity: percent(Number.NaN) },
  ];
  expect(wet(broken, 6)).toEqual(wet(tenMinutes([95, 95]), 6));
});

test('a hole that is healed has temperatures along the line between its edges', () => {
  const readings = [
    reading(0, 10, 95),
    reading(0.25, 10, 95),
    reading(1.5, 20, 95),
    reading(1.75, 20, 95),
  ];
  const pieces = piecesOf(readings, window(0, 1.5));
  expect(
    pieces.every(({ state, coldest, warmest }) => state === 'wet' && coldest === warmest),
  ).toBe(true);
  // Unknown from 0:30 to 1:30 in two slices of half an hour: their middles are 12.5 and 17.5 °C.
  expect(pieces.map(({ from, coldest }) => [(from - at(0)) / HOUR, coldest])).toEqual([
    [0, 10],
    [0.25, 10],
    [0.5, 12.5],
    [1, 17.5],
  ]);
});

test('a hole that stays open may have been 2 K beyond its edges, and anything where one is missing', () => {
  const readings = [...tenMinutes([95], 12), ...[5, 5.1].map((hour) => reading(hour, 18, 70))];
  const [gap] = piecesOf(readings, window(1, 5));
  expect(gap).toMatchObject({ state: 'unknown', coldest: 10, warmest: 20 });
  const [before] = piecesOf(readings, window(-1, 0));
  expect(before).toMatchObject({ state: 'unknown', coldest: -30, warmest: 60 });
  const after = piecesOf(readings, window(-1, 9)).at(-1);
  expect(after).toMatchObject({ state: 'unknown', coldest: -30, warmest: 60 });
  expect(piecesOf([], window(0, 1))).toMatchObject([{ coldest: -30, warmest: 60 }]);
  const noWarmth = readings.map((each) => ({ ...each, temperature: null }));
  expect(piecesOf(noWarmth, window(0, 5)).every((p) => p.coldest === -30 && p.warmest === 60)).toBe(
    true,
  );
});

const _humidities = fc.array(fc.double({ min: 70, max: 100, noNaN: true }), {
  minLength: 24,
  maxLength: 24,
});

test('readings out of order, windows upside down and odd gaps are refused', () => {
  const readings = tenMinutes([95]).reverse();
  expect(() => piecesOf(readings, window(0, 1))).toThrow('Expected readings in order of time');
  expect(() => piecesOf([], window(1, 0))).toThrow('Expected a window to end from');
  for (const maxGapMinutes of [0.9, 1441])
    expect(() => piecesOf([], window(0, 1), { maxGapMinutes })).toThrow(RangeError);
  for (const maxGapMinutes of [1, 1440])
    expect(() => piecesOf([], window(0, 1), { maxGapMinutes })).not.toThrow();
});
