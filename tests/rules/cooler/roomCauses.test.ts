import { expect, test } from 'vitest';
import { type RoomEvidence, roomCauses } from '../../../rules/cooler/index.ts';
import { truth } from '../../truth/index.ts';

const WORDS = [
  'trouble',
  'steep',
  'dipped',
  'door_open',
  'supply_on',
  'nothing_drawn',
  'cools',
  'sure',
  'among',
] as const;
const maybe = (word: string) => (word === 'unknown' ? null : word === 'yes');

test.for(truth('cooler/roomCauses.csv', ['row'], WORDS))(
  '$trouble, steep $steep, door $door_open, supply $supply_on, cools $cools: $sure $among',
  (row) => {
    const found = roomCauses({
      trouble: row.trouble as RoomEvidence['trouble'],
      steep: row.steep === 'yes',
      dipped: row.dipped === 'yes',
      doorOpen: maybe(row.door_open),
      supplyOn: maybe(row.supply_on),
      nothingDrawn: row.nothing_drawn === 'yes',
      cools: maybe(row.cools),
    });
    expect(found.sure).toBe(row.sure);
    expect(found.among).toEqual(row.among.split(' '));
    expect(found.cause).toBe(found.sure === 'cannot-tell' ? null : found.among[0]);
  },
);
