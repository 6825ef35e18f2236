import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { baseOf, everyMs, farmOf, readFarmFile } from '../../../hub/farm/index.ts';

const root = new URL('../../..', import.meta.url).pathname;

const lines = [
  'farm: { name: Test Garden (invented), zone: Europe/Dublin, lat: 51.9, lon: -8.3, money: EUR, wage: 16 }',
  'places:',
  '  - { id: long-house, name: Long House, kind: tunnel, vents: true, crop: basil }',
  '  - { id: cool-room, name: Cool room, kind: cool-room, setPoint: 3, limit: 5 }',
  'probes:',
  '  - { id: p1, place: long-house, spot: canopy, every: 5m, offset: { humidity: -2 } }',
  'crops:',
  '  - { id: basil, base: 10, band: [18, 28] }',
  'deliveries: [ { day: thursday } ]',
  'mappings:',
  '  - { topic: weather/+probe, fields: [ { quantity: temperature, pointer: /t } ] }',
];
const text = lines.join('\n');
/** The file with one part of one line put differently. */
const changed = (from: string, to: string) => {
  if (!text.includes(from)) throw new Error(`Expected ${from} in the file, got none`);
  return readFarmFile(text.replace(from, to)).faults;
};

test('a farm file in order is read, with what it leaves out filled in', () => {
  const { farm, faults } = readFarmFile(text);
  expect(faults).toBeUndefined();
  expect(farm?.farm.altitude).toBe(0);
  expect(farm?.probes[0]).toMatchObject({ every: '5m', offset: { humidity: -2 } });
  expect(farm?.places[1]).toMatchObject({ vents: false, limit: 5 });
});

test('the farm of the demonstration is in order', () => {
  const demo = readFarmFile(readFileSync(`${root}simulators/farm.yaml`, 'utf8'));
  expect(demo.faults).toBeUndefined();
  expect(demo.farm?.farm.name).toContain('(invented)');
});

test.for([
  ['zone: Europe/Dublin', 'zone: Europe/Nowhere', 1, 'farm.zone', '"Europe/Nowhere"'],
  ['lat: 51.9', 'lat: 151.9', 1, 'farm.lat', '151.9'],
  ['lat: 51.9', 'lat: north', 1, 'farm.lat', '"north"'],
  ['lat: 51.9', 'lat: .nan', 1, 'farm.lat', 'NaN'],
  ['money: EUR', 'money: euro', 1, 'farm.money', '"euro"'],
  ['wage: 16', 'wage: -1', 1, 'farm.wage', '-1'],
  [', wage: 16', '', 1, 'farm.wage', 'nothing'],
  ['kind: tunnel', 'kind: tunel', 3, 'places[0].kind', '"tunel"'],
  ['vents: true', 'vents: yes please', 3, 'places[0].vents', '"yes please"'],
  ['vents: true', 'vent: true', 3, 'places[0].vent', 'true'],
  ['crop: basil', 'crop: mint', 3, 'places[0].crop', '"mint"'],
  ['id: cool-room', 'id: long-house', 4, 'places[1].id', '"long-house"'],
  ['id: cool-room', 'id: Cool Room', 4, 'places[1].id', '"Cool Room"'],
  [', limit: 5', '', 4, 'places[1].limit', 'nothing'],
  ['limit: 5', 'limit: 3', 4, 'places[1].limit', '3'],
  ['limit: 5', 'limit: 500', 4, 'places[1].limit', '500'],
  ['place: long-house', 'place: short-house', 6, 'probes[0].place', '"short-house"'],
  ['spot: canopy', 'spot: roof', 6, 'probes[0].spot', '"roof"'],
  ['every: 5m', 'every: often', 6, 'probes[0].every', '"often"'],
  ['every: 5m', 'every: 0m', 6, 'probes[0].every', '"0m"'],
  ['humidity: -2', 'humidity: low', 6, 'probes[0].offset.humidity', '"low"'],
  ['humidity: -2', 'humid: -2', 6, 'probes[0].offset.humid', '-2'],
  ['id: p1', 'id: a/b', 6, 'probes[0].id', '"a/b"'],
  ['band: [18, 28]', 'band: [18]', 8, 'crops[0].band', '[18]'],
  ['band: [18, 28]', 'band: [28, 18]', 8, 'crops[0].band', '[28,18]'],
  ['day: thursday', 'day: someday', 9, 'deliveries[0].day', '"someday"'],
  ['pointer: /t', 'pointer: t', 11, 'mappings[0].fields[0].pointer', '"t"'],
  ['pointer: /t', 'pointer: /~2', 11, 'mappings[0].fields[0].pointer', '"/~2"'],
  ['topic: weather/+probe', 'topic: weather', 11, 'mappings[0].probe', 'nothing'],
  ['topic: weather/+probe', 'topic: garden/+probe', 11, 'mappings[0].topic', '"garden/+probe"'],
  ['topic: weather/+probe', 'topic: +probe/+probe', 11, 'mappings[0].topic', '"+probe/+probe"'],
  // MQTT 3.1.1, section 4.7.1: # is the last level, + a whole one.
  ['topic: weather/+probe', 'topic: "weather/#/+probe"', 11, 'mappings[0].topic', 'weather/#'],
  ['topic: weather/+probe', 'topic: +probe/a+', 11, 'mappings[0].topic', '"+probe/a+"'],
] as const)('%s as %s is a fault on line %d in %s', ([from, to, line, field, value]) => {
  const faults = changed(from, to);
  expect(faults).toBeDefined();
  expect(faults?.[0]).toMatch(/^Expected .*, got /);
  expect(faults?.[0]).toContain(` on line ${line}`);
  expect(faults?.[0]).toContain(field);
  expect(faults?.[0]).toContain(value);
});

test('every fault is told, not only the first', () => {
  const { faults } = readFarmFile(
    text.replace('lat: 51.9', 'lat: 91').replace('wage: 16', 'wage: x'),
  );
  expect(faults).toHaveLength(2);
});

test('two crops of one id are a fault', () => {
  const twice = text.replace('deliveries', '  - { id: basil, base: 4 }\ndeliveries');
  expect(readFarmFile(twice).faults?.[0]).toMatch(/in crops\[1\]\.id on line 9, got "basil"/);
});

test('two probes of one id are a fault', () => {
  const twice = text.replace('crops:', '  - { id: p1, place: cool-room, spot: air }\ncrops:');
  expect(readFarmFile(twice).faults?.[0]).toMatch(/in probes\[1\]\.id on line 7, got "p1"/);
});

test.for([
  ['places: [', /^Expected YAML on line \d+, got: /],
  ['farm: {}\nfarm: {}', /^Expected YAML on line 2, got: /],
  ['a: &x 1\nb: *x', /^Expected no alias on line 2, got \*x$/],
  ['', /^Expected .*, got null$/],
  ['- 1', /^Expected .*, got \[1\]$/],
  ['just words', /^Expected .*, got "just words"$/],
] as const)('%j is refused in one sentence', ([given, sentence]) => {
  expect(readFarmFile(given).faults?.[0]).toMatch(sentence);
});

test.for([
  ['30s', 30_000],
  ['5m', 300_000],
  ['2h', 7_200_000],
] as const)('every %s is %d ms', ([every, ms]) => {
  expect(everyMs(every)).toBe(ms);
});

test('heat units start from the crop of the place, or from 10 °C', () => {
  const read = readFarmFile(text.replace('base: 10', 'base: 7'));
  if (!read.farm) throw new Error('Expected a farm, got faults');
  const farm = farmOf(read.farm);
  const [tunnel, room] = farm.places;
  if (!tunnel || !room) throw new Error('Expected two places, got fewer');
  expect([baseOf(farm, tunnel), baseOf(farm, room)]).toEqual([7, 10]);
  expect(farm.place('long-house')?.name).toBe('Long House');
  expect(farm.outside).toBeUndefined();
});
