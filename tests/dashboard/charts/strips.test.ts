import { expect, test } from 'vitest';
import { hours } from '../../../dashboard/charts/hours.ts';
import { limitLabels } from '../../../dashboard/charts/limitLabels.ts';
import { newest } from '../../../dashboard/charts/newest.ts';
import { groupPins } from '../../../dashboard/charts/pins.ts';
import { stripTable } from '../../../dashboard/charts/stripTable.ts';
import { fanAtLow } from '../../../dashboard/parts/fanAtLow.ts';
import type { Strip } from '../../../hub/contract/index.ts';

const HOUR = 3_600_000;
const same = (value: number) => value;
const from = Date.parse('2025-10-25T18:00:00Z');
const strip: Strip = {
  place: 'long-house',
  name: 'Long House',
  kind: 'tunnel',
  spot: 'canopy',
  t: [from, from + HOUR, from + 2 * HOUR],
  temperature: [8, 7, null],
  humidity: [90, 91, null],
  wetSpells: [{ from: from - HOUR, to: from + HOUR, wetHours: 2 }],
  limits: [],
  fan: [
    { t: from + 3 * HOUR, low: 2, middle: 4, high: 6 },
    { t: from + 9 * HOUR, low: -1, middle: 1, high: 3 },
    { t: from + 12 * HOUR, low: 0, middle: 2, high: 4 },
  ],
  pins: [],
  words: '',
};

test('hours follow the clock on the wall through a change of clocks', () => {
  // Ireland: from UTC + 1 h to UTC at 01:00 UTC on 26 October 2025 (IANA time zone database).
  const found = hours(from, from + 16 * HOUR, 6, 'Europe/Dublin');
  expect(found.map(({ t, hour }) => `${hour} ${new Date(t).toISOString().slice(11, 16)}`)).toEqual([
    '0 23:00',
    '6 06:00',
  ]);
});

test('the newest value before a gap is not passed off as current', () => {
  expect(newest(strip)).toEqual({ t: from + HOUR, value: 7, current: false });
  expect(newest({ t: [1, 2], temperature: [3, 4] })).toEqual({ t: 2, value: 4, current: true });
  expect(newest({ t: [1], temperature: [null] })).toBeNull();
});

test('pins too close for a thumb share one, and pins outside the window are left out', () => {
  const pin = (t: number) => ({ task: `task ${t}`, t, title: `task ${t}` });
  const groups = groupPins(
    [pin(200), pin(10), pin(40), pin(999)],
    (t) => t,
    { from: 0, to: 300 },
    46,
  );
  expect(groups.map(({ x, pins }) => [x, pins.length])).toEqual([
    [10, 2],
    [200, 1],
  ]);
});

test('the table leaves what is not known empty and gives a forecast only ahead of now', () => {
  const rows = stripTable(strip, { from, to: from + 9 * HOUR, now: from + 2 * HOUR }, 'UTC');
  expect(rows.map(({ temperature, wet, fan }) => [temperature, wet, fan?.middle ?? null])).toEqual([
    [8, true, null],
    [null, false, 4],
    [null, false, null],
    [null, false, 1],
  ]);
});

test('the range of tonight’s low is the fan where its middle is lowest', () => {
  const strips = {
    from,
    to: from,
    now: from,
    nights: [],
    scale: { min: 0, max: 1 },
    strips: [strip],
  };
  expect(fanAtLow(strips, { place: 'long-house', spot: 'canopy' })).toEqual([-1, 3]);
  expect(fanAtLow(strips, { place: 'long-house', spot: 'grass' })).toBeNull();
  expect(fanAtLow(null, { place: 'long-house', spot: 'canopy' })).toBeNull();
});

test('a limit is named where no line runs, and a limit off the scale is not drawn', () => {
  const axes = {
    x: (t: number) => t,
    y: (value: number) => 100 - value * 10,
    left: 0,
    now: 150,
    right: 300,
    bottom: 82,
  };
  const limits: Strip['limits'] = [
    { value: 2, what: 'damage' },
    { value: 40, what: 'heat' },
  ];
  const near = { low: 2, middle: 2.4, high: 3 };
  const at = (t: readonly number[], fan: readonly number[]) =>
    limitLabels(
      { limits, t: [...t], temperature: t.map(() => 2.4), fan: fan.map((t) => ({ t, ...near })) },
      () => 'ten sixty6',
      axes,
      [0, 10],
    ).map(({ what, x }) => `${what} ${x}`);
  expect(at([], [])).toEqual(['damage 230']);
  expect(at([20], [260])).toEqual(['damage 156']);
  expect(at([], [180, 260])).toEqual(['damage 4']);
});

test('two limits close together are not named on top of one another', () => {
  const axes = {
    x: same,
    y: (value: number) => 100 - value * 10,
    left: 0,
    now: 150,
    right: 300,
    bottom: 67,
  };
  const limits: Strip['limits'] = [
    { value: 3, what: 'set-point' },
    { value: 3.5, what: 'cool-room-limit' },
  ];
  const found = limitLabels(
    { limits, t: [], temperature: [], fan: [] },
    () => 'name',
    axes,
    [0, 9],
  );
  expect(new Set(found.map(({ x }) => x)).size).toBe(2);
});
