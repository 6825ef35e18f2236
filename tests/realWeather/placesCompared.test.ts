import { expect } from 'vitest';
import { comparePlaces, type PlaceDay, placeHours, placeTally } from '../../rules/days/index.ts';
import { celsius, HOUR, instant, percent } from '../../rules/units.ts';
import { chance, moves, rule, trayFarm } from '../rules/decide/trayFarm.ts';
import { type Observation, testWithYear } from './hourlyYear.ts';

// A year of real hourly weather in houses of our own making: what is warmer is known, because we
// made it so. Days are those of UTC.

const DAY = 24 * HOUR;
const hourly = { ...rule, wet: { ...rule.wet, maxGapMinutes: 90 } };
type Warmer = (t: number) => number;

/** Whole days of the year in a house that is so much warmer than the air outside. */
function daysIn(year: readonly Observation[], warmer: Warmer): PlaceDay[] {
  const air = year.map(({ t, temperature, humidity }) => ({
    t: instant(t),
    temperature: celsius(temperature + warmer(t)),
    humidity: percent(Math.min(100, humidity)),
  }));
  const first = Math.ceil((air[0]?.t ?? 0) / DAY) * DAY;
  const days: PlaceDay[] = [];
  for (let from = first; from + DAY < (air.at(-1)?.t ?? 0); from += DAY) {
    const near = air.filter(({ t }) => t >= from - 6 * HOUR && t < from + DAY + 2 * HOUR);
    const window = { from: instant(from), to: instant(from + DAY) };
    const day = new Date(from).toISOString().slice(0, 10);
    days.push({ day, ...placeHours(near, hourly, window), disease: null });
  }
  return days;
}

/** The same hours counted one by one from the table: each observation speaks for the hour after it. */
function byHand(year: readonly Observation[], day: string) {
  const inDay = year.filter(({ t }) => new Date(t).toISOString().startsWith(day));
  let wet = false;
  let before: boolean | null = null;
  for (const { t, humidity } of year) {
    if (t >= Date.parse(`${day}T00:00:00Z`)) break;
    if (humidity >= 90) before = true;
    else if (humidity < 87) before = false;
  }
  wet = before ?? false;
  const counted = { inBand: 0, hot: 0, cold: 0, wet: 0, hurt: 0 };
  for (const { temperature: t, humidity } of inDay) {
    if (humidity >= 90) wet = true;
    else if (humidity < 87) wet = false;
    if (wet) counted.wet += 1;
    if (t > 28) counted.hot += 1;
    else if (t < 18) counted.cold += 1;
    else if (!wet) counted.inBand += 1;
    if (t > 32 || t < 11) counted.hurt += 1;
  }
  return { counted, onTheHour: inDay.filter(({ t }) => t % HOUR === 0).length, all: inDay.length };
}

testWithYear(
  'hours of real days agree with a count of the table, one observation an hour',
  (year) => {
    let compared = 0;
    for (const day of daysIn(year, () => 0)) {
      const { counted, onTheHour, all } = byHand(year, day.day);
      const tally = placeTally([day]);
      if (all !== 24 || onTheHour !== 24 || tally === null || tally.unknown > 1e-6) continue;
      compared += 1;
      for (const part of ['inBand', 'hot', 'cold', 'wet', 'hurt'] as const)
        expect(tally[part][0], `${part} of ${day.day}`).toBeCloseTo(counted[part], 6);
    }
    expect(compared).toBeGreaterThan(250);
  },
);

/** From April to October: when basil stands in houses. */
const season = (days: readonly PlaceDay[]) =>
  days.filter(({ day }) => day >= '2013-04-01' && day <= '2013-10-31');

/** Days on which trays are asked to be carried, looking each morning at the ten days before. */
function asked(here: readonly PlaceDay[], there: readonly PlaceDay[]): string[] {
  const found: string[] = [];
  for (let at = 10; at < here.length; at += 1) {
    const day = here[at]?.day ?? '';
    const now = Date.parse(`${day}T13:00:00Z`);
    const ten = { here: here.slice(at - 10, at), there: there.slice(at - 10, at), now };
    if (moves(trayFarm(ten)).some(({ verdict }) => verdict === 'act')) found.push(day);
  }
  return found;
}

/** What a probe is off by, an hour at a time and a day at a time, always the same. */
function ownWay(seed: number): Warmer {
  const { normal } = chance(seed);
  const days = Array.from({ length: 400 }, () => 0.5 * normal());
  const hours = Array.from({ length: 9_600 }, () => 0.3 * normal());
  const start = Date.UTC(2013, 0, 1) - DAY;
  return (t) =>
    (days[Math.floor((t - start) / DAY)] ?? 0) + (hours[Math.floor((t - start) / HOUR)] ?? 0);
}

testWithYear('through a season of real weather two equal houses ask for nothing', (year) => {
  const ways = [ownWay(1), ownWay(2)];
  const [a, b] = ways.map((own) => season(daysIn(year, (t) => 4 + own(t))));
  expect(asked(a ?? [], b ?? [])).toEqual([]);
  expect(asked(b ?? [], a ?? [])).toEqual([]);
});

testWithYear(
  'a house that gains 7 K more by day in real weather is found out in its hot months',
  (year) => {
    const sun = (t: number) => Math.max(0, Math.cos((((t / HOUR) % 24) - 18) * (Math.PI / 12)));
    const [one, two] = [ownWay(1), ownWay(2)];
    const closed = season(daysIn(year, (t) => 3 + 11 * sun(t) + one(t)));
    const airy = season(daysIn(year, (t) => 3 + 4 * sun(t) + two(t)));
    const days = asked(closed, airy);
    expect(days.length).toBeGreaterThan(10);
    expect(asked(airy, closed)).toEqual([]);
    const july = (days: readonly PlaceDay[]) => days.filter(({ day }) => day.startsWith('2013-07'));
    expect(comparePlaces(july(closed), july(airy)).hot?.mean).toBeLessThan(0);
  },
);
