import { expect, test } from 'vitest';
import { z } from 'zod';
import { farmFile } from '../../../hub/contract/index.ts';
import { farmChanges } from '../../../hub/farm/index.ts';
import { type FarmPart, farmFieldNames } from '../../../hub/words/index.ts';

const base = {
  farm: {
    name: 'Test (invented)',
    zone: 'Europe/Dublin',
    lat: 52,
    lon: -8,
    money: 'EUR',
    wage: 16,
  },
  places: [
    { id: 'long-house', name: 'Long House', kind: 'tunnel', capacity: 48 },
    { id: 'sun-house', name: 'Sun House', kind: 'tunnel' },
  ],
  probes: [{ id: 'p3', place: 'long-house', spot: 'canopy' }],
  crops: [{ id: 'basil', name: 'Basil', band: [18, 28] }],
  deliveries: [{ day: 'thursday', wants: [{ of: 'basil', kg: 4 }] }],
};
const farm = (change: (plain: typeof base) => void = () => {}) => {
  const plain = structuredClone(base);
  change(plain);
  return farmFile.parse(plain);
};
const told = (change: (plain: typeof base) => void) => farmChanges(farm(), farm(change));

test.for<[string, (plain: typeof base) => void, string[]]>([
  ['nothing', () => {}, []],
  [
    'a figure',
    ({ places: [house] }) => Object.assign(house ?? {}, { capacity: 60 }),
    ['Long House: room for trays 48 → 60'],
  ],
  [
    'a figure nobody told before',
    ({ places: [, house] }) => Object.assign(house ?? {}, { wet: { at: 92, below: 88 } }),
    [
      'Sun House: humidity from which leaves count as wet not told → 92',
      'Sun House: humidity below which leaves count as dry not told → 88',
    ],
  ],
  [
    'a probe that moves',
    ({ probes: [probe] }) => Object.assign(probe ?? {}, { place: 'sun-house' }),
    ['Probe p3 moves to Sun House, canopy, from now on'],
  ],
  [
    'a new place',
    ({ places }) => places.push({ id: 'cold', name: 'Shed', kind: 'outdoor' }),
    ['Shed is added: outdoors'],
  ],
  [
    'a crop taken out',
    (plain) => Object.assign(plain, { crops: [], deliveries: [] }),
    ['Crop Basil is taken out', 'Delivery day Thursday is taken out'],
  ],
  [
    'a range',
    ({ crops: [crop] }) => Object.assign(crop ?? {}, { band: [16, 26] }),
    ['Crop Basil: comfort band 18\u00a0°C, 28\u00a0°C → 16\u00a0°C, 26\u00a0°C'],
  ],
  [
    'weights wanted',
    ({ deliveries: [day] }) => Object.assign(day ?? {}, { wants: [{ of: 'basil', kg: 5 }] }),
    ['Delivery day Thursday: wanted 4\u00a0kg Basil → 5\u00a0kg Basil'],
  ],
  [
    'where it lies',
    ({ farm: facts }) => Object.assign(facts, { lon: -8.5 }),
    ['Farm: degrees east −8 → −8.5'],
  ],
])('%s is told in words', ([, change, words]) => {
  expect(told(change)).toEqual(words);
});

type Schema = { properties?: Record<string, Schema>; items?: Schema };
const fieldsOf = (schema: Schema, path = ''): string[] =>
  Object.entries(schema.properties ?? {}).flatMap(([name, inner]) => {
    const here = path === '' ? name : `${path}.${name}`;
    return [here, ...fieldsOf(inner, here)];
  });

test('every field of a farm file has a name for people', () => {
  const whole = z.toJSONSchema(farmFile, { io: 'input' }) as Schema;
  const lists: Record<FarmPart, Schema | undefined> = {
    farm: whole.properties?.farm,
    place: whole.properties?.places?.items,
    crop: whole.properties?.crops?.items,
    mix: whole.properties?.mixes?.items,
    delivery: whole.properties?.deliveries?.items,
    probe: whole.properties?.probes?.items,
    mapping: whole.properties?.mappings?.items,
  };
  for (const [part, schema] of Object.entries(lists) as [FarmPart, Schema][]) {
    const fields = fieldsOf(schema).filter((field) => !field.startsWith('offset.'));
    expect(fields.length).toBeGreaterThan(1);
    expect(fields.filter((field) => farmFieldNames[part][field] === undefined)).toEqual([]);
  }
});
