import { expect, test } from 'vitest';
import { readFarmFile } from '../../../hub/farm/index.ts';

const farm = (patch: string) => `
farm: { name: Test Garden (invented), zone: Europe/Dublin, lat: 51.9, lon: -8.3, money: EUR, wage: 16 }
places:
  - { id: bed, name: Bed, kind: patch, ${patch} }
crops: [ { id: strawberry }, { id: mint } ]
`;
const faultsOf = (patch: string) => readFarmFile(farm(patch)).faults ?? [];

test.for([
  'crop: strawberry, cover: { minutes: 35, value: 900, damage: -1.1 }',
  'crop: strawberry, stage: open-flower, cover: { minutes: 35, value: 900 }',
  'crop: strawberry, stage: green-fruit',
  'crop: strawberry, picking: { from: 05-20, to: 10-31, minutes: 60, value: 80 }',
  'cover: { minutes: 35, value: 900, damage: 0 }, picking: { from: 12-01, to: 02-10, minutes: 60, value: 80 }',
])('%s is a patch that can be watched', (patch) => {
  expect(faultsOf(patch)).toEqual([]);
});

test.for([
  ['crop: strawberry, stage: flowering', 'stages tight-bud', 'places[0].stage', '"flowering"'],
  ['crop: mint, stage: open-flower', 'no stage', 'places[0].stage', '"open-flower"'],
  ['stage: open-flower', 'no stage', 'places[0].stage', '"open-flower"'],
  [
    'crop: strawberry, cover: { minutes: 35, value: 900 }',
    'a temperature in °C, or a stage',
    'places[0].cover.damage',
    'nothing',
  ],
  [
    'crop: mint, picking: { from: 05-20, to: 10-31, minutes: 60, value: 80 }',
    'cover.damage',
    'places[0].picking',
    '',
  ],
  [
    'crop: strawberry, picking: { from: 02-29, to: 10-31, minutes: 60, value: 80 }',
    'a month and a day such as 05-20',
    'places[0].picking.from',
    '"02-29"',
  ],
  [
    'crop: strawberry, picking: { from: 05-20, to: 10-31 }',
    '',
    'places[0].picking.minutes',
    'nothing',
  ],
] as const)('%s is refused with its field and line', ([patch, expected, field, got]) => {
  const [fault = ''] = faultsOf(patch);
  expect(fault).toMatch(/^Expected /);
  for (const part of [expected, field, 'line 4', got]) expect(fault).toContain(part);
});
