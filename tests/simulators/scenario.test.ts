import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { parse } from 'yaml';
import { farmFile } from '../../hub/contract/index.ts';
import { vapourDensity } from '../../simulators/moistAir.ts';
import { scenario } from '../../simulators/scenario.ts';
import { sunHeight } from '../../simulators/sun.ts';
import { createWorld, type WorldNow } from '../../simulators/world.ts';

const MINUTE = 60_000;
const HOUR = 60 * MINUTE;
const { start, plan, seed, probes } = scenario;
const yaml = readFileSync(new URL('../../simulators/farm.yaml', import.meta.url), 'utf8');
const farm = farmFile.parse(parse(yaml));

/** The world every five minutes from two months before the start to two days after it. */
const world = createWorld(plan, seed);
const all: WorldNow[] = [];
for (let t = start - 60 * 24 * HOUR; t <= start + 48 * HOUR; t += 5 * MINUTE)
  all.push(world.advanceTo(t));
const at = (t: number) => {
  const now = all.find((one) => one.t >= t);
  if (!now) throw new Error(`Expected a moment of the story, got ${new Date(t).toISOString()}`);
  return now;
};
const between = (from: number, to: number) => all.filter(({ t }) => t >= from && t < to);
const flower = ({ patches }: WorldNow) => patches['south-patch']?.flower ?? Number.NaN;
const cover = farm.places.find(({ id }) => id === 'south-patch')?.cover;

test('the farm file is a farm file, and says that the farm is invented', () => {
  expect(farm.farm.name).toContain('(invented)');
  expect(yaml.startsWith('# The demonstration farm. Everything in it is invented')).toBe(true);
});

test('each placed probe is simulated at its own pace, and one more that nobody has placed', () => {
  const placed = farm.probes.map(({ id, every }) => [id, every]);
  const simulated = probes.map(({ id, every }) => [id, `${every}m`]);
  expect(simulated).toEqual(expect.arrayContaining(placed));
  expect(simulated.length).toBe(placed.length + 1);
});

test('farm file and simulated farm lie at the same spot in the same zone', () => {
  const { lat, lon, zone } = farm.farm;
  expect({ lat, lon, zone }).toEqual({ lat: plan.lat, lon: plan.lon, zone: plan.zone });
});

test('when the story begins sunset is nearly five hours away', () => {
  expect(sunHeight(start + 4.75 * HOUR, plan.lat, plan.lon)).toBeGreaterThan(0);
  expect(sunHeight(start + 5.1 * HOUR, plan.lat, plan.lon)).toBeLessThan(0);
});

test('the night ahead is clear and calm and takes open flowers below their limit', () => {
  const night = between(start + 6 * HOUR, start + 15 * HOUR);
  expect(Math.min(...night.map(flower))).toBeLessThan((cover?.damage ?? 0) - 0.5);
  expect(Math.max(...night.map(({ weather }) => weather.cloud))).toBeLessThan(0.2);
  expect(Math.max(...night.map(({ weather }) => weather.wind))).toBeLessThan(2);
  expect(at(start).weather.dewPoint).toBeLessThan(2);
});

test('under the cloches, which go on in the evening, the flowers come through', () => {
  const night = between(start + 5 * HOUR, start + 17 * HOUR);
  const lows = night.map(({ patches }) => patches['south-patch']?.underCover ?? Number.NaN);
  expect(Math.min(...lows)).toBeGreaterThan(cover?.damage ?? 0);
});

test('the sixty nights before hold enough with damage and enough without to learn from', () => {
  const nights = Array.from({ length: 59 }, (_, back) => {
    const evening = start + 5 * HOUR - (back + 1) * 24 * HOUR;
    return Math.min(...between(evening, evening + 11 * HOUR).map(flower));
  });
  const frost = nights.filter((low) => low < (cover?.damage ?? 0)).length;
  expect(frost).toBeGreaterThanOrEqual(8);
  expect(frost).toBeLessThanOrEqual(25);
});

test('basil stands in open tunnels, and the night falls far below its limit', () => {
  const chill = farm.crops.find(({ id }) => id === 'basil')?.chill ?? Number.NaN;
  const houses = farm.places.filter(({ crop }) => crop === 'basil').map(({ id }) => id);
  expect(houses).toHaveLength(2);
  for (const house of houses) {
    expect(at(start).tunnels[house]?.open).toBeGreaterThanOrEqual(0.4);
    expect(at(start).tunnels[house]?.temperature).toBeGreaterThan(chill);
  }
  const night = between(start, start + 15 * HOUR).map(({ weather }) => weather.temperature);
  expect(Math.min(...night)).toBeLessThan(chill - 8);
});

test('the cool room has had no power for 70 minutes and has warmed towards its limit', () => {
  const off = between(start - 69 * MINUTE, start + 44 * MINUTE);
  expect(new Set(off.map(({ coolRoom }) => coolRoom.power))).toEqual(new Set([0]));
  expect(at(start - 75 * MINUTE).coolRoom.power).toBeGreaterThan(0);
  const { air } = at(start).coolRoom;
  expect(air).toBeLessThan(5);
  // Past the top of its cycle, 3.8 °C, wherever in it the stop found the room.
  expect(air).toBeGreaterThan(4.2);
});

test('the generator comes back three quarters of an hour later and the room cools', () => {
  expect(at(start + 50 * MINUTE).coolRoom.power).toBeGreaterThan(0);
  expect(at(start + 90 * MINUTE).coolRoom.air).toBeLessThan(at(start + 40 * MINUTE).coolRoom.air);
});

test('next morning the door stays ajar for forty minutes', () => {
  const ajar = Date.parse('2026-04-24T11:30:00+01:00');
  expect(between(ajar, ajar + 40 * MINUTE).every(({ coolRoom }) => coolRoom.door > 0)).toBe(true);
  expect(at(ajar + 38 * MINUTE).coolRoom.air).toBeGreaterThan(
    at(ajar - 5 * MINUTE).coolRoom.air + 0.5,
  );
});

test('one tunnel has been wet since before midnight while outside is far drier', () => {
  const wet = farm.places.find(({ id }) => id === 'hollow-house')?.wet?.at ?? 90;
  const since = between(Date.parse('2026-04-22T23:00:00Z'), start + MINUTE);
  expect(since.every(({ tunnels }) => (tunnels['hollow-house']?.humidity ?? 0) > wet)).toBe(true);
  const { weather, tunnels } = at(start);
  const outside = vapourDensity(weather.vapour, weather.temperature);
  expect(outside).toBeLessThan((tunnels['hollow-house']?.vapour ?? 0) * 0.6);
  expect(weather.humidity).toBeLessThan(65);
});

test('one probe has been silent for hours and another is nearly out of charge', () => {
  const silent = scenario.faults.find(
    ({ kind, from, to }) => kind === 'silent' && from < start && to > start,
  );
  expect(start - (silent?.from ?? start)).toBeGreaterThan(4 * HOUR);
  const charge = probes.flatMap(({ battery }) =>
    battery?.unit === '%'
      ? [battery.full - (battery.perDay * (start - battery.fullAt)) / (24 * HOUR)]
      : [],
  );
  expect(charge.filter((left) => left < 10)).toHaveLength(1);
  expect(charge.filter((left) => left >= 10 && left < 40)).toEqual([]);
});

test('the world is the same whether it is stepped in one go or minute by minute', () => {
  const [whole, parts] = [createWorld(plan, 9), createWorld(plan, 9)];
  const until = plan.epoch + 3 * 24 * HOUR;
  for (let t = plan.epoch; t <= until; t += 7 * MINUTE) parts.advanceTo(t);
  expect(parts.advanceTo(until)).toEqual(whole.advanceTo(until));
});
