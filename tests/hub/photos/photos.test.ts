import { chmodSync, readdirSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { kindOf, MOST_PHOTO, photosIn } from '../../../hub/photos/index.ts';
import { peopledHub } from '../api/lockedHub.ts';
import { DAY, lossHub, picture } from '../losses/lossHub.ts';
import { tempFolder } from '../tempStore.ts';

const kept = (most?: number) => {
  const folder = join(tempFolder(), 'photos');
  let now = Date.now();
  const photos = photosIn(folder, () => now, most);
  return { folder, photos, later: (ms: number) => (now += ms) };
};

test('a picture is told by its first bytes, whatever it is called', () => {
  expect((['jpg', 'png', 'webp'] as const).map((kind) => kindOf(picture(kind)))).toEqual([
    'jpg',
    'png',
    'webp',
  ]);
  for (const text of [
    '<svg xmlns="http://www.w3.org/2000/svg">',
    'GIF89a',
    '%PDF-1.7',
    '',
    'RIFF1234WAVE',
  ])
    expect(kindOf(Buffer.from(text)), text).toBeNull();
});

test('the same picture is kept once; folder and files are for the hub alone', () => {
  const { photos, folder } = kept();
  const name = photos.put(picture('jpg'));
  expect(photos.put(picture('jpg'))).toBe(name);
  photos.adopt(name);
  expect(readdirSync(folder)).toEqual([name]);
  expect(statSync(folder).mode & 0o077).toBe(0);
  expect(statSync(join(folder, name)).mode & 0o077).toBe(0);
  expect(photos.get(name)?.bytes.equals(picture('jpg'))).toBe(true);
});

test('a name that leads elsewhere is no photo', () => {
  const { photos, folder } = kept();
  photos.put(picture('jpg'));
  writeFileSync(join(folder, '..', 'secret.jpg'), 'secret');
  for (const name of ['../secret.jpg', 'secret.jpg', '', '.', `${'a'.repeat(64)}.svg`]) {
    expect(photos.get(name), name).toBeUndefined();
    expect(photos.letGo(name), name).toBe(false);
  }
});

test('one that was sent and belongs to nothing goes after a day; one that was used stays for good', () => {
  const { photos, later, folder } = kept();
  const [used, forgotten] = [photos.put(picture('jpg', 'a')), photos.put(picture('jpg', 'b'))];
  photos.adopt(used); // even where no store tells of it any more
  later(DAY - 1000);
  expect(photos.sweep()).toBe(0);
  later(2000);
  writeFileSync(join(folder, 'note.txt'), 'not ours');
  expect(photos.sweep()).toBe(1);
  expect(photos.has(forgotten)).toBe(false);
  expect(readdirSync(folder).sort()).toEqual([used, 'note.txt'].sort());
});

test('one that anybody still uses is not let go of', () => {
  const { photos } = kept();
  const name = photos.put(picture('webp'));
  const users = new Set([name]);
  photos.usedBy(() => []);
  photos.usedBy(() => users);
  expect(photos.letGo(name)).toBe(false);
  users.clear();
  expect(photos.letGo(name)).toBe(true);
  expect(photos.has(name)).toBe(false);
});

test('a full folder and a card that takes nothing refuse in one sentence', () => {
  const { photos } = kept(100);
  photos.put(picture('jpg', 'x'.repeat(80)));
  expect(() => photos.put(picture('jpg', 'y'.repeat(80)))).toThrow(/^Expected room for a photo/);
  const { photos: shut, folder } = kept();
  shut.put(picture('jpg', 'first'));
  if (process.getuid?.() === 0) return; // nothing is shut to root
  chmodSync(folder, 0o500);
  expect(() => shut.put(picture('jpg', 'second'))).toThrow(
    /^Expected a card that takes a photo, got E/,
  );
  chmodSync(folder, 0o700);
});

test('over HTTP: pictures only, bounded, and no larger body anywhere else', async () => {
  const { send, ask, app } = await lossHub();
  const refused = async (bytes: Uint8Array, type?: string) => (await send(bytes, type)).statusCode;
  expect(await refused(Buffer.from('<svg onload="x"/>'), 'image/jpeg')).toBe(415);
  expect(await refused(picture('jpg'), 'image/svg+xml')).toBe(415);
  expect(await refused(picture('jpg'), 'application/octet-stream')).toBe(415);
  expect(await refused(picture('jpg'), 'multipart/form-data')).toBe(415);
  expect(await refused(picture('jpg', 'x'.repeat(MOST_PHOTO)))).toBe(413);
  expect((await send(picture('jpg', 'x'.repeat(MOST_PHOTO - 100)))).statusCode).toBe(200);
  expect((await ask('POST', '/api/photos', { a: 1 })).status).toBe(415);
  const large = { note: 'x'.repeat(100_000) };
  expect((await ask('POST', '/api/losses', large)).status).toBe(413);
  const elsewhere = await app.inject({
    ...{ method: 'POST', url: '/api/losses', payload: picture('jpg') },
    headers: { 'content-type': 'image/jpeg' },
  });
  expect(elsewhere.statusCode).toBe(415);
  const other = await app.inject({
    ...{ method: 'POST', url: '/api/photos', payload: picture('jpg') },
    headers: { 'content-type': 'image/jpeg', origin: 'http://elsewhere.test' },
  });
  expect(other.statusCode).toBe(403);
  for (const name of ['%2e%2e%2fdewpost.db', 'nowhere.jpg'])
    expect((await app.inject(`/api/photos/${name}`)).statusCode).toBe(404);
});

test('a helper may log a loss; somebody who is not signed in sees no photo', async () => {
  const { post, hal, app } = await peopledHub();
  const loss = { place: 'long-house', crop: 'basil', amount: 1, unit: 'trays', look: 'eaten' };
  expect((await post('/api/losses', loss, { cookie: hal })).json()).toMatchObject({ by: 'Hal' });
  expect((await post('/api/losses', loss)).statusCode).toBe(401);
  expect((await app.inject(`/api/photos/${'a'.repeat(64)}.jpg`)).statusCode).toBe(401);
});
