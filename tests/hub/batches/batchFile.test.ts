import { expect, test } from 'vitest';
import type { BatchFileResult } from '../../../hub/contract/index.ts';
import { DAY, iso, T, trayHub } from './trayFarm.ts';

type Hub = Awaited<ReturnType<typeof trayHub>>;
const take = ({ ask }: Hub, csv: string, enter = true) =>
  ask<BatchFileResult>('POST', '/api/batches/file', { csv, enter });
const exported = async ({ app }: Hub) => (await app.inject({ url: '/api/batches.csv' })).payload;

const simple = `crop,trays,sown,place,cut,kg,minutes
Basil,12,2026-04-02,Long House,2026-04-22,2.8,30
basil,12,2026-04-02,long-house,,,
pea-shoots,6,2026-04-10 08:15,sun-house,2026-04-20 07:00,"2,5",15
kale,6,2026-04-10,sun-house,,,
basil,0,2026-04-10,sun-house,,,
basil,6,10/04/2026,sun-house,,,
basil,6,2026-05-10,sun-house,,,
basil,6,2026-04-10,cool-room,,,
basil,6,2026-04-10,sun-house,2026-04-09,1,
`;

test('a simple file is looked at first, then entered, and entered again changes nothing', async () => {
  const hub = await trayHub();
  const seen = await take(hub, simple, false);
  expect(seen.body).toMatchObject({ entered: false, entries: 5, known: 0, ignored: [] });
  expect(await hub.list('?state=all')).toEqual([]);
  expect(seen.body.refused).toEqual([
    { line: 5, reason: 'Expected one of basil, pea-shoots, chives in crop, got "kale"' },
    { line: 6, reason: 'Expected number to be >=1 in trays, got 0' },
    {
      line: 7,
      reason:
        'Expected a day such as 2026-04-02 or a time such as 2026-04-02 14:30 in sown, got "10/04/2026"',
    },
    {
      line: 8,
      reason: 'Expected a time that is past in sown, got 2026-05-10T11:00:00.000Z',
    },
    {
      line: 9,
      reason:
        'Expected a place where things grow (long-house, sun-house, outside) in place, got "cool-room"',
    },
    {
      line: 10,
      reason:
        'Expected a time after it was sown (2026-04-10T11:00:00.000Z) in cut, got 2026-04-09T11:00:00.000Z',
    },
  ]);
  expect((await take(hub, simple)).body).toMatchObject({ entered: true, entries: 5 });
  const all = await hub.list('?state=all');
  expect(all.map(({ id, state, traysLeft }) => [id, state, traysLeft])).toEqual([
    ['basil-0402-1', 'ended', 0],
    ['basil-0402-2', 'growing', 12],
    ['pea-shoots-0410-1', 'ended', 0],
  ]);
  // Dublin is an hour before UTC in April.
  expect(all[2]).toMatchObject({ sownAt: '2026-04-10T07:15:00.000Z', days: 9.95 });
  expect(all[2]?.cuts).toMatchObject([{ kg: 2.5, trays: 6, minutes: 15 }]);
  const again = await take(hub, simple);
  expect(again.body).toMatchObject({ entries: 0, known: 3, batches: [] });
  // What was taken back on the page is not brought back by the file, and a cut told later is entered.
  await hub.change('basil-0402-1', { undo: all[0]?.cuts[0]?.entry });
  expect((await take(hub, simple)).body.entries).toBe(0);
  const later = simple.replace('long-house,,,', 'long-house,2026-04-23,3,20');
  expect((await take(hub, later)).body).toMatchObject({ entries: 1, known: 2 });
  expect((await hub.ok('GET', '/api/batches/basil-0402-2')).cuts).toMatchObject([
    { kg: 3, trays: 12, at: iso(T) },
  ]);
});

test.for([
  [
    'no table of batches',
    'date,tmin\n2026-04-02,3\n',
    /^Expected the columns batch, event, at or crop, trays, sown, place in the first line, got/,
  ],
  [
    'a quote that never ends',
    'crop,trays,sown,place\nbasil,3,"2026-04-02,long-house\n',
    /^Expected quotes that end in line/,
  ],
  ['nothing', '', /in csv, got ""$/],
] as const)('%s is refused in one sentence', async ([, csv, sentence]) => {
  const { status, body } = await take(await trayHub(), csv);
  expect(status).toBe(400);
  expect(body.error).toMatch(sentence);
});

test('semicolons, a byte-order mark, and columns of somebody’s own are taken as they are', async () => {
  const hub = await trayHub();
  const csv =
    '\uFEFFcrop;trays;sown;place;cut;kg;weather\nbasil;4;2026-04-02;Sun House;2026-04-20;1,25;wet\n';
  expect((await take(hub, csv)).body).toMatchObject({ entries: 2, ignored: ['weather'] });
  expect((await hub.list('?state=all'))[0]?.cuts).toMatchObject([{ kg: 1.25, price: null }]);
});

test('all batches go out as a file, without what was taken back, and no text is a formula', async () => {
  const hub = await trayHub();
  const { id } = await hub.sow({ seedCost: 6, variety: '=1+1' });
  await hub.change(id, { move: { place: 'sun-house', trays: 4, at: iso(T - DAY) } });
  const cut = await hub.change(id, { cut: { kg: 9, trays: 1 } });
  await hub.change(id, { undo: cut.body.history[0]?.entry });
  await hub.change(id, { note: { look: 'other', note: '@home, "odd"\nsecond line' } });
  const { entry, id: wrong } = await hub.sow();
  await hub.change(wrong, { undo: entry });
  const text = await exported(hub);
  expect(text).toBe(
    [
      'batch,crop,variety,event,at,place,trays,kg,minutes,price,look,note,stage,clears,lost_kg,work,photo,seed_cost,other_cost,meant_for,part_of,into,who',
      "basil-0402-1,basil,'=1+1,sown,2026-04-02T11:00:00.000Z,long-house,12,,,,,,,,,,,6,,,,,grower",
      "basil-0402-1,basil,'=1+1,parted,2026-04-22T11:00:00.000Z,long-house,4,,,,,,,,,,,2,,,,basil-0402-2,grower",
      'basil-0402-1,basil,\'=1+1,noted,2026-04-23T11:00:00.000Z,long-house,,,,,other,"\'@home, ""odd""\nsecond line",,,,,,,,,,,grower',
      "basil-0402-2,basil,'=1+1,sown,2026-04-02T11:00:00.000Z,long-house,4,,,,,,,,,,,2,,,basil-0402-1,,grower",
      "basil-0402-2,basil,'=1+1,stood,2026-04-22T11:00:00.000Z,sun-house,,,,,,,,,,,,,,,,,grower",
      '',
    ].join('\r\n'),
  );
  const twin = await trayHub();
  expect((await take(twin, text)).body).toMatchObject({ entries: 4, refused: [], known: 0 });
  expect(await exported(twin)).toBe(text);
  expect((await take(hub, text)).body).toMatchObject({ entries: 0, refused: [], known: 4 });
});

test('half of what happened to two batches is refused, with what is missing', async () => {
  const hub = await trayHub();
  const csv = `batch,event,at,crop,trays,place,part_of,into
Bed 1,sown,2026-04-02,basil,12,long-house,,
Bed 1,parted,2026-04-10,,4,,,bed-9
bed-2,sown,2026-04-02,basil,4,long-house,bed-1,
bed-2,cut,2026-04-20,,4,,,
bed-3,moved,2026-04-20,,,sun-house,,
bed-4,sown,2026-04-02,basil,4,long-house,,
bed-4,flown,2026-04-20,,,sun-house,,
,sown,2026-04-02,basil,4,long-house,,
`;
  const { body } = await take(hub, csv);
  expect(body.refused).toEqual([
    { line: 3, reason: 'Expected a batch bed-9 that is part_of bed-1 in into, got none' },
    { line: 4, reason: 'Expected a row parted of bed-1 into bed-2 beside part_of, got none' },
    { line: 5, reason: expect.stringMatching(/^Expected .+ in kg, got nothing$/) },
    { line: 6, reason: 'Expected a row sown for bed-3, got none' },
    {
      line: 8,
      reason: expect.stringMatching(/^Expected one of sown, stood, .+ in event, got "flown"$/),
    },
    { line: 9, reason: 'Expected the name of a batch in batch, got nothing' },
  ]);
  expect((await hub.list()).map(({ id, traysLeft }) => [id, traysLeft])).toEqual([
    ['bed-1', 12],
    ['bed-4', 4],
  ]);
  // Another sowing under a name that is taken, and other trays than the hub has.
  const other =
    'batch,event,at,crop,trays,place\nbed-4,sown,2026-04-03,basil,4,long-house\nbed-1,sown,2026-04-02,basil,9,long-house\n';
  expect((await take(hub, other)).body.refused.map(({ reason }) => reason)).toEqual([
    'Expected a name that no other batch has in batch, got bed-4: that one is another sowing',
    'Expected the 12 trays that the hub has of bed-1 in trays, got 9: correct it on the page',
  ]);
});
