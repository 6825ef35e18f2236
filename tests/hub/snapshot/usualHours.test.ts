import { expect, test } from 'vitest';
import { calendarOf } from '../../../hub/clock.ts';
import { supplyDay, usualHours, withPowerNow } from '../../../hub/snapshot/usualHours.ts';
import { instant } from '../../../rules/units.ts';

const MINUTE = 60_000;
const DAY = 1440 * MINUTE;
const HOLE = 10 * MINUTE;
const dublin = calendarOf('Europe/Dublin');

/** Power each five minutes of one local day: cycles, and nothing while `off` says so of a wall minute. */
function dayOf(day: string, off: (minute: number) => boolean, waiting = 6) {
  const { begins, ends } = dublin.bounds(day);
  const t = [];
  const value = [];
  for (let at: number = begins; at < ends; at += 5 * MINUTE) {
    const minute = (at - begins) / MINUTE;
    t.push(instant(at));
    value.push(off(minute) ? 0 : minute % 60 < 20 ? 650 : waiting);
  }
  return { t, value };
}
const days = (count: number, off: (minute: number, day: number) => boolean, waiting = 6) =>
  Array.from({ length: count }, (_, i) => {
    const name = new Date(Date.UTC(2026, 5, 1) + i * DAY).toISOString().slice(0, 10);
    const made = supplyDay(
      dayOf(name, (minute) => off(minute, i), waiting),
      HOLE,
    );
    if (made === null) throw new Error('Expected a day, got none');
    return made;
  });

const night = (minute: number) => minute >= 23 * 60 || minute < 5 * 60;

test('a generator that stands each night from eleven to five runs from five to eleven', () => {
  // The hours that were put in; an end is seen at the first reading after it.
  expect(usualHours(days(14, night), dublin, HOLE)).toEqual({ hours: ['05:00-23:00'], days: 13 });
});

test('ten days make a habit; eight nights do not, nor short stops', () => {
  expect(usualHours(days(11, night), dublin, HOLE)?.days).toBe(10);
  expect(usualHours(days(9, night), dublin, HOLE)).toBeNull();
  const refuelled = (minute: number) => minute >= 450 && minute < 480;
  expect(usualHours(days(14, refuelled), dublin, HOLE)).toBeNull();
});

test('where the controller draws nothing in a pause, a pause is not told from a stop', () => {
  expect(usualHours(days(14, night, 0), dublin, HOLE)).toBeNull();
});

test('days without readings of the power say nothing', () => {
  expect(supplyDay({ t: [], value: [] }, HOLE)).toBeNull();
  expect(usualHours([], dublin, HOLE)).toBeNull();
});

test('what was learned gives way to the meter: while it draws, the supply is on', () => {
  const now = instant(Date.UTC(2026, 5, 20, 3));
  const plan = [
    { from: instant(now - 20 * 60 * MINUTE), to: instant(now - 4 * 60 * MINUTE) },
    { from: instant(now + 2 * 60 * MINUTE), to: instant(now + 20 * 60 * MINUTE) },
  ];
  const power = (watts: (ago: number) => number) => {
    const ago = Array.from({ length: 61 }, (_, i) => 300 - 5 * i);
    return { t: ago.map((m) => instant(now - m * MINUTE)), value: ago.map(watts) };
  };
  expect(
    withPowerNow(
      plan,
      power(() => 0),
      now,
    ),
  ).toEqual(plan);
  const early = withPowerNow(
    plan,
    power((ago) => (ago > 20 ? 0 : 600)),
    now,
  );
  const here = early.find(({ from, to }) => from <= now && now < to);
  expect(here?.from).toBe(now - 20 * MINUTE);
  // One that runs on past its usual end is on since the plan put it on.
  const late = withPowerNow(
    plan,
    power(() => 600),
    now,
  );
  expect(late.find(({ from, to }) => from <= now && now < to)?.from).toBeLessThan(
    now - 240 * MINUTE,
  );
  expect(late).toHaveLength(2);
});
