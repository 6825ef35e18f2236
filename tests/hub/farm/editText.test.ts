import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type FarmBegun, farmBegun } from '../../../hub/contract/index.ts';
import { editText, readBegun } from '../../../hub/farm/index.ts';

const text = `# Our garden
farm: { name: Our garden, zone: Europe/Dublin, lat: 51.9, lon: -8.3, altitude: 25, money: EUR, wage: 16 }
places:
  # the old one by the gate
  - { id: long-house, name: Long House, kind: tunnel, vents: true, capacity: 48 } # leaks in the north
  - id: outside # by the well
    name: Outside
    kind: outdoor
crops:
  - { id: basil, base: 11, band: [18, 28] } # as on the packet
`;
const before = readBegun(text).farm as FarmBegun;
type Loose = Record<string, unknown>;
const edited = (change: (farm: FarmBegun) => unknown) => {
  const write = structuredClone(before);
  change(write);
  const after = farmBegun.parse(write);
  return { ...editText(text, { before, after, write: write as unknown as Loose }), after };
};
const spaced = (yaml: string) => yaml.replaceAll(/(?<=\[) | (?=\])/g, '');
const says = (yaml: string) => readBegun(yaml).farm;

test('a changed number is the only thing that is another in the text', () => {
  const { text: now, lost } = edited(({ places }) =>
    Object.assign(places[0] ?? {}, { capacity: 60 }),
  );
  expect(spaced(now)).toBe(spaced(text.replace('capacity: 48', 'capacity: 60')));
  expect(lost).toEqual([]);
});

test('nothing changed is the same text but for spaces within brackets', () => {
  expect(spaced(edited(() => {}).text)).toBe(spaced(text));
});

test('a place that is added joins the others, and what stands beside them stays', () => {
  const {
    text: now,
    lost,
    after,
  } = edited(({ places }) =>
    places.push({ id: 'sun-house', name: 'Sun House', kind: 'tunnel', vents: false }),
  );
  expect(lost).toEqual([]);
  for (const comment of ['# the old one by the gate', '# leaks in the north', '# by the well'])
    expect(now).toContain(comment);
  expect(says(now)).toEqual(after);
});

test('the comment of a place that is taken out is told before it is lost', () => {
  const {
    text: now,
    lost,
    after,
  } = edited((farm) => {
    farm.places = farm.places.filter(({ id }) => id !== 'long-house');
  });
  expect(lost).toContain('leaks in the north');
  expect(now).not.toContain('leaks in the north');
  expect(says(now)).toEqual(after);
});

test('places put in another order take their comments along', () => {
  const { text: now, lost, after } = edited(({ places }) => places.reverse());
  expect(lost).toEqual([]);
  expect(says(now)).toEqual(after);
});

test('the first description of a farm is a text that says the same', () => {
  const write = { farm: { name: 'New: garden', money: 'EUR', wage: 15 }, places: [] };
  const after = farmBegun.parse(write);
  expect(says(editText(undefined, { before: undefined, after, write }).text)).toEqual(after);
});

const number = (min: number, max: number) => fc.integer({ min, max });
const anyName = fc.string({ minLength: 1, maxLength: 60, unit: 'grapheme' });
const anyPlace = fc.record(
  {
    id: fc.constantFrom('long-house', 'outside', 'north', 'south'),
    name: anyName,
    kind: fc.constantFrom('tunnel' as const, 'outdoor' as const, 'patch' as const),
    vents: fc.boolean(),
    capacity: number(0, 500),
    wet: number(60, 100).map((at) => ({ at, below: at - 5 })),
  },
  { requiredKeys: ['id', 'name', 'kind'] },
);

test('whatever is changed, the text says what was asked for', () => {
  const anyFarm = fc.record({
    name: anyName,
    wage: number(0, 90),
    places: fc.uniqueArray(anyPlace, { selector: ({ id }) => id, maxLength: 4 }),
    price: fc.option(number(0, 40), { nil: undefined }),
  });
  fc.assert(
    fc.property(anyFarm, ({ name, wage, places, price }) => {
      const { text: now, after } = edited((farm) => {
        Object.assign(farm.farm, { name, wage });
        farm.places = places as FarmBegun['places'];
        if (price === undefined) farm.crops = [];
        else Object.assign(farm.crops[0] ?? {}, { price });
      });
      expect(says(now)).toEqual(after);
    }),
    { numRuns: 100 },
  );
});
