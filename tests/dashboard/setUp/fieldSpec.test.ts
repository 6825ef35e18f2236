import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { cropFields, withoutCrop } from '../../../dashboard/setUp/cropFields.ts';
import { type Item, textsOf, withTexts } from '../../../dashboard/setUp/fieldSpec.ts';
import {
  deliveryFields,
  mixFields,
  nameFields,
  probeFields,
} from '../../../dashboard/setUp/partFields.ts';
import { newPlace, nextKind, placeFields } from '../../../dashboard/setUp/placeFields.ts';
import { type FarmBegun, farmFile } from '../../../hub/contract/index.ts';
import { checkFarm, farmChoices } from '../../../hub/farm/index.ts';

// What a page writes of a farm is what the farm file says: both ways, field by field.

const whole = farmFile.parse({
  farm: {
    ...{ name: 'Whole (invented)', zone: 'Europe/Dublin', lat: 52, lon: -8, altitude: 25 },
    ...{ money: 'EUR', wage: 16 },
  },
  places: [
    {
      ...{ id: 'house', name: 'House', kind: 'tunnel', vents: true, capacity: 48, crop: 'basil' },
      ...{ trays: 30, wet: { at: 92, below: 88 } },
    },
    {
      ...{ id: 'patch', name: 'Patch', kind: 'patch', crop: 'strawberry', covers: 'cloches' },
      ...{ cover: { minutes: 35, value: 900, effect: 0.85 }, stage: 'open-flower' },
      picking: { from: '05-20', to: '10-31', minutes: 60, value: 80 },
    },
    {
      ...{ id: 'room', name: 'Room', kind: 'cool-room', setPoint: 3, limit: 5, volume: 12 },
      ...{ value: 400, checkDays: 60 },
      power: { hours: ['06:00-10:00', '16:00-22:00'], litresPerHour: 0.5, litrePrice: 1.9 },
    },
    { id: 'outside', name: 'Outside', kind: 'outdoor' },
  ],
  probes: [{ id: 'p1', place: 'house', spot: 'canopy', every: '30s', offset: { humidity: -2 } }],
  crops: [
    {
      ...{ id: 'basil', name: 'Basil', base: 11, band: [18, 28], heatLimit: 32, chill: 12 },
      ...{ disease: ['grey-mould', 'basil-downy-mildew'], price: 30, perTray: 0.35, seed: 0.9 },
      ...{ days: [28, 49], other: 0.4, minutes: { sow: 4, pack: 6 }, regrows: true },
      young: { days: 21, perTray: 0.2, price: 35 },
      keeps: { like: 'basil', days: [5, 7], at: 12, q10: 2.5, chill: 10, class: 'cut' },
    },
    { id: 'strawberry', price: 8, days: 60 },
  ],
  mixes: [
    {
      ...{ id: 'mix', name: 'Mix', price: 20 },
      parts: [
        { crop: 'basil', share: 0.335 },
        { crop: 'strawberry', share: 0.665 },
      ],
    },
  ],
  deliveries: [
    {
      day: 'thursday',
      wants: [
        { of: 'basil', kg: 1.5 },
        { of: 'mix', kg: 4 },
      ],
    },
  ],
});

const parts: readonly (readonly [string, readonly Item[], (item: Item) => Item])[] = [
  ['places', whole.places, (item) => again(item, placeFields(whole, choices, item as never))],
  ['crops', whole.crops, (item) => again(item, cropFields(choices))],
  ['mixes', whole.mixes, (item) => again(item, mixFields(whole))],
  ['deliveries', whole.deliveries, (item) => again(item, deliveryFields(whole))],
  ['probes', whole.probes, (item) => again(item, probeFields())],
];
const choices = farmChoices();
function again(item: Item, specs: Parameters<typeof textsOf>[1]): Item {
  return withTexts(item, specs, textsOf(item, specs));
}

describe('what a page shows of the farm, stored as it stands, is the farm', () => {
  test.for(parts)('%s', ([list, items, back]) => {
    expect(farmFile.parse({ ...whole, [list]: items.map(back) })).toEqual(whole);
  });
});

test('every field of the farm file is offered on a page, or named here as told in the file', () => {
  const inFile = ['id', 'place', 'spot', 'fields', 'mappings'];
  const offered = (list: 'places' | 'crops' | 'mixes' | 'deliveries' | 'probes') =>
    ({
      places: [...whole.places].flatMap((one) => placeFields(whole, choices, one as never)),
      crops: cropFields(choices),
      mixes: mixFields(whole),
      deliveries: deliveryFields(whole),
      probes: probeFields(),
    })[list].map(({ path }) => path.split('.')[0]);
  for (const list of ['places', 'crops', 'mixes', 'deliveries', 'probes'] as const) {
    const schema = farmFile.shape[list] as unknown as {
      def: { innerType?: { element: Shaped }; element?: Shaped };
    };
    const item = schema.def.innerType?.element ?? schema.def.element;
    const fields = Object.keys(item?.shape ?? {});
    expect(fields.length, list).toBeGreaterThan(1);
    const missing = fields.filter((one) => !offered(list).includes(one) && !inFile.includes(one));
    expect(missing, list).toEqual([]);
  }
  expect(nameFields().map(({ path }) => path)).toEqual(['name', 'money', 'wage']);
});
type Shaped = { readonly shape?: object };

test('a figure is kept as it was meant, with a comma, a point and either minus', () => {
  const specs = [{ path: 'cover.damage', as: 'figure' }] as const;
  fc.assert(
    fc.property(fc.integer({ min: -600, max: 600 }), (tenths) => {
      const value = tenths / 10;
      const typed = [
        String(value),
        String(value).replace('.', ','),
        String(value).replace('-', '−'),
      ];
      for (const text of typed)
        expect(withTexts({}, specs, { 'cover.damage': text })).toEqual({
          cover: { damage: value },
        });
    }),
  );
});

test('what is emptied is not told any more, and a part that holds nothing goes with it', () => {
  const specs = [
    { path: 'cover.minutes', as: 'figure' },
    { path: 'cover.value', as: 'figure' },
  ] as const;
  const item = { id: 'x', cover: { minutes: 3, value: 4 } };
  expect(withTexts(item, specs, { 'cover.minutes': '', 'cover.value': '4' })).toEqual({
    ...{ id: 'x', cover: { value: 4 } },
  });
  expect(withTexts(item, specs, { 'cover.minutes': '', 'cover.value': ' ' })).toEqual({ id: 'x' });
});

test('what is no number is sent as it stands, so that the hub says what is wrong with it', () => {
  expect(withTexts({}, [{ path: 'limit', as: 'figure' }], { limit: 'cold' })).toEqual({
    limit: 'cold',
  });
});

test('a share of a third and one of two thirds make one whole', () => {
  const specs = mixFields(whole);
  const typed = {
    ...{ name: 'Third', 'parts.0.crop': 'basil', 'parts.0.share': '33,3' },
    ...{ 'parts.1.crop': 'strawberry', 'parts.1.share': '66.7' },
  };
  const mix = { id: 'third', ...withTexts({}, specs, typed) };
  expect(checkFarm(farmFile, { ...whole, mixes: [mix], deliveries: [] }).faults).toBeUndefined();
});

test('a crop that is given up leaves no place, mix or delivery that speaks of it', () => {
  const left = withoutCrop(whole as FarmBegun, 'basil');
  const { farm } = checkFarm(farmFile, left);
  expect(farm?.crops.map(({ id }) => id)).toEqual(['strawberry']);
  expect(farm?.mixes).toEqual([]);
  expect(farm?.deliveries).toEqual([{ day: 'thursday', wants: [] }]);
  expect(farm?.places.map(({ crop }) => crop)).toEqual([
    undefined,
    'strawberry',
    undefined,
    undefined,
  ]);
});

test('a house is offered first, then what all is compared with, then the cool room', () => {
  const offered: string[] = [];
  const places: FarmBegun['places'] = [];
  for (let i = 0; i < 4; i++) {
    const kind = nextKind(places);
    offered.push(kind);
    places.push({ id: `x${i}`, vents: false, ...newPlace(kind), name: `X${i}` } as never);
  }
  expect(offered).toEqual(['tunnel', 'outdoor', 'cool-room', 'tunnel']);
  expect(
    checkFarm(farmFile, { ...whole, mixes: [], deliveries: [], probes: [], places }).faults,
  ).toBe(undefined);
});
