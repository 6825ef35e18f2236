import { writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { expect, test } from 'vitest';
import { importPicks } from '../../../hub/main/imports/importPicks.ts';
import { formOf } from '../../../hub/main/imports/stationForms.ts';
import { makePicks } from '../../../hub/picks/index.ts';
import { iso, pickHub, T } from '../picks/pickFarm.ts';
import { tempFolder, tempStore } from '../tempStore.ts';

/** A file of pickings taken into the store of that hub, whose clock stands at T. */
async function taken(lines: readonly string[]) {
  const hub = await pickHub();
  const data = dirname(hub.path);
  const file = join(tempFolder(), 'pickings.csv');
  const take = (text = lines.join('\n')) => {
    writeFileSync(file, text);
    return importPicks(file, { data, clock: { start: T, real: Date.now(), speed: 1 } } as never);
  };
  return { ...hub, file, take };
}

test('what the hub wrote is taken in again, once, with its unknown cells unknown', async () => {
  const { app, ask, pickings, file, take } = await taken([]);
  await pickings([[3, 2.5, 40]], { note: '=1+1, wet', pickers: 2, walkMinutes: 10 });
  await ask('POST', '/api/picks', { place: 'sun-house', crop: 'basil', kg: 1, price: 31 });
  const { body: csv } = await app.inject({ url: '/api/picks.csv' });
  // Into the same store, where they are known; and into one of another hub.
  expect(take(csv)).toMatchObject({ picks: 0, known: 2, refused: 0 });
  expect(await formOf(file)).toBe('picks-csv');
  const other = await taken([]);
  expect(other.take(csv)).toEqual({ picks: 2, known: 0, refused: 0, sentences: [] });
  expect(other.take(csv)).toMatchObject({ picks: 0, known: 2 });
  expect((await other.app.inject({ url: '/api/picks.csv' })).body).toBe(csv);
  const [pick] = other.parts.picks.all().filter(({ crop }) => crop === 'strawberry');
  expect(pick).toMatchObject({
    kg: 2.5,
    pickers: 2,
    walkMinutes: 10,
    note: '=1+1, wet',
    who: 'file',
  });
});

test('a day alone is its noon, columns come in any order, and a place knows its crop', async () => {
  const { take, parts } = await taken(['kg,place,picked', '4,south-patch,2025-10-01']);
  expect(take().picks).toBe(1);
  expect(parts.picks.all()[0]).toMatchObject({
    ...{ crop: 'strawberry', at: Date.UTC(2025, 9, 1, 12), lostKg: null, minutes: null },
  });
});

test('a bad line is told with its field, and the others are taken in', async () => {
  const head = 'picked,place,crop,kg,sorted_out_kg,minutes';
  const { take, store } = await taken([
    head,
    '2025-10-01,south-patch,,4,,',
    '2025-10-02,moon,basil,4,,',
    '2025-10-03,south-patch,,much,,',
    '2025-10-04,south-patch,,4,5,',
    `${iso(T + 9e8)},south-patch,,4,,`,
    '2025-13-77,south-patch,,4,,',
    '2025-10-05,outside,,4,,',
    '2025-10-06,south-patch,marble,4,,',
  ]);
  const { picks, refused, sentences } = take();
  expect([picks, refused]).toEqual([1, 7]);
  const told = sentences.join('\n');
  for (const said of [
    /^line 3: Expected one of .* in place, got "moon"$/,
    /^line 4: Expected number in kg, got "much"$/,
    /^line 5: Expected at most the 4 kg picked in sorted_out_kg, got 5$/,
    /^line 6: Expected a time that is past in picked/,
    /^line 7: .* in picked, got "2025-13-77"$/,
    /^line 8: Expected a crop in crop/,
    /^line 9: Expected a crop of the farm file in crop, got "marble"$/,
  ])
    expect(sentences.filter((one) => said.test(one)).length, `${said} in ${told}`).toBe(1);
  expect(store.journal.after('pick', 0)).toHaveLength(1);
});

test('a picking that was taken back is not brought back by its file', async () => {
  const { take, ask, parts } = await taken(['picked,place,kg', '2025-10-01,south-patch,4']);
  take();
  const [pick] = parts.picks.all();
  await ask('PATCH', `/api/picks/${pick?.id}`, { undo: pick?.entries[0]?.id ?? 0 });
  expect(take()).toMatchObject({ picks: 0, known: 1 });
  expect(parts.picks.all().map(({ state }) => state)).toEqual(['withdrawn']);
});

test('a file that is no table of pickings is refused as a whole', async () => {
  const { take } = await taken([]);
  expect(() => take('picked,place\n2025-10-01,south-patch')).toThrow('Expected a column kg');
  expect(() => take('picked,place,kg\n"2025-10-01,south-patch,4')).toThrow('Expected a table');
  const { store } = tempStore();
  expect(makePicks(store).all()).toEqual([]);
});
