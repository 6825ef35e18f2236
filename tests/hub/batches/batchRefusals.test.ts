import { expect, test } from 'vitest';
import { DAY, HOUR, iso, T, trayHub } from './trayFarm.ts';

test.for<[what: string, change: object, status: number, sentence: RegExp]>([
  [
    'more trays than left',
    { cut: { kg: 1, trays: 13 } },
    400,
    /^Expected at most the 12 trays that are left in cut.trays, got 13$/,
  ],
  [
    'a cut before it was sown',
    { cut: { kg: 1, at: iso(T - 22 * DAY) } },
    400,
    /^Expected a time after it was sown \(.+\) in cut.at, got/,
  ],
  [
    'a cut that comes later',
    { cut: { kg: 1, at: iso(T + HOUR) } },
    400,
    /^Expected a time that is past in cut.at, got/,
  ],
  [
    'more lost than cut',
    { cut: { kg: 1, lostKg: 2 } },
    400,
    /^Expected at most the 1 kg that were cut in cut.lostKg, got 2$/,
  ],
  ['a weight of nothing', { cut: { kg: 0 } }, 400, /^Expected number to be >0 in cut.kg, got 0$/],
  [
    'the cool room',
    { move: { place: 'cool-room' } },
    400,
    /^Expected a place where things grow \(long-house, sun-house, outside\) in move.place, got "cool-room"$/,
  ],
  ['no such place', { move: { place: 'attic' } }, 400, /in move.place, got "attic"$/],
  [
    'where it stands',
    { move: { place: 'long-house' } },
    400,
    /^Expected another place than where it stands in move.place, got long-house$/,
  ],
  [
    'more trays than there are',
    { move: { place: 'outside', trays: 20 } },
    400,
    /^Expected fewer than all its trays \(12\) in move.trays, got 20$/,
  ],
  [
    'throwing out too many',
    { throwOut: { trays: 13, look: 'mould' } },
    400,
    /in throwOut.trays, got 13$/,
  ],
  ['fewer trays than none', { correct: { trays: 0 } }, 400, /in correct.trays, got 0$/],
  [
    'an unknown crop',
    { correct: { crop: 'kale' } },
    400,
    /^Expected one of basil, pea-shoots, chives in correct.crop, got "kale"$/,
  ],
  [
    'nothing to correct',
    { correct: {} },
    400,
    /^Expected a field to correct in correct, got none$/,
  ],
  [
    'two things at once',
    { clear: {}, undo: 1 },
    400,
    /^Expected one of correct, move, cut, throwOut, note, work, clear and undo/,
  ],
  ['nothing at all', {}, 400, /^Expected one of correct, move/],
  [
    'no entry of it',
    { undo: 999 },
    409,
    /^Expected an entry of basil-0402-1 that holds in undo, got 999$/,
  ],
])(
  '%s is refused in one sentence, and nothing is entered',
  async ([, change, status, sentence]) => {
    const hub = await trayHub();
    const { id, entries } = await hub.sow();
    const reply = await hub.change(id, change);
    expect(reply.body.error).toMatch(sentence);
    expect(reply.status).toBe(status);
    expect((await hub.ok('GET', `/api/batches/${id}`)).entries).toBe(entries);
  },
);

test('of a batch that has ended nothing more is cut, and one that was taken back gets nothing', async () => {
  const { sow, change, ask } = await trayHub();
  const { id, entry } = await sow();
  const cleared = (await change(id, { clear: { note: 'bolted' } })).body;
  expect(cleared).toMatchObject({ state: 'ended', traysLeft: 0 });
  const late = await change(id, { cut: { kg: 1 } });
  expect([late.status, late.body.error]).toEqual([
    409,
    'Expected a batch that is growing, got one that has ended (basil-0402-1)',
  ]);
  expect((await change(id, { note: { look: 'other', note: 'seed was old' } })).status).toBe(200);
  await change(id, { undo: entry });
  expect((await change(id, { note: { look: 'well' } })).status).toBe(409);
  expect((await change(id, { correct: { trays: 3 } })).status).toBe(409);
  expect((await ask('GET', '/api/batches/attic')).status).toBe(404);
});

test('a crop that grows again keeps its trays at a cut', async () => {
  const { sow, change } = await trayHub();
  const { id } = await sow({ crop: 'chives' });
  expect((await change(id, { cut: { kg: 1 } })).body).toMatchObject({ traysLeft: 12 });
  expect((await change(id, { cut: { kg: 1, clears: true } })).body.state).toBe('ended');
});
