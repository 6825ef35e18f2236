import { createHash } from 'node:crypto';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { gunzipSync } from 'node:zlib';
import { expect, test } from 'vitest';
import { inlinedScripts } from '../../../hub/api/inlined.ts';
import { wordsAhead } from '../../../hub/api/wordsAhead.ts';
import { first } from '../../../hub/contract/index.ts';
import { servedHub } from '../smallFarm.ts';
import { cookieOf, lockedHub } from './lockedHub.ts';

test('the first answer tells a stranger nothing of the farm, and whoever signed in what every page needs', async () => {
  const { get, claim } = await lockedHub();
  const reply = await get('/api/first');
  expect(reply.statusCode).toBe(200);
  const stranger = first.parse(reply.json());
  expect(stranger).toMatchObject({ farm: null, today: null, who: { name: null, open: false } });
  const cookie = cookieOf(await claim());
  const known = first.parse((await get('/api/first', cookie)).json());
  expect(known.who).toMatchObject({ name: 'Ann', role: 'grower' });
  expect(known.farm).toEqual({
    ...(await get('/api/farm', cookie)).json(),
    now: known.farm?.now, // the clock goes on
  });
  expect(known.today).toEqual((await get('/api/today', cookie)).json());
});

test('long JSON goes as gzip to whoever takes it, whole, and plain to the others', async () => {
  const { app } = await servedHub();
  const url = '/api/openapi.json';
  const ask = (header?: string) =>
    app.inject({ url, headers: header === undefined ? {} : { 'accept-encoding': header } });
  const plain = await ask();
  expect(plain.headers['content-encoding']).toBeUndefined();
  for (const header of ['gzip', 'br, gzip;q=0.5', 'GZIP']) {
    const reply = await ask(header);
    expect(reply.headers['content-encoding']).toBe('gzip');
    expect(reply.headers.vary).toBe('accept-encoding');
    expect(reply.rawPayload.length).toBeLessThan(plain.rawPayload.length / 3);
    expect(gunzipSync(reply.rawPayload).toString()).toBe(plain.payload);
  }
  for (const header of ['br', 'gzip;q=0', 'identity'])
    expect((await ask(header)).headers['content-encoding']).toBeUndefined();
  const short = await app.inject({ url: '/api/who', headers: { 'accept-encoding': 'gzip' } });
  expect(short.headers['content-encoding']).toBeUndefined();
});

test('a script inside the page is named by the hash of its text, one that is fetched is not', () => {
  const folder = mkdtempSync(join(tmpdir(), 'dewpost-page-'));
  const text = 'let a = 1;';
  writeFileSync(
    join(folder, 'index.html'),
    `<script>${text}</script><script type="module" src="/x.js"></script>`,
  );
  const hash = createHash('sha256').update(text).digest('base64');
  expect(inlinedScripts(folder)).toEqual([`'sha256-${hash}'`]);
  expect(inlinedScripts(null)).toEqual([]);
  expect(inlinedScripts(join(folder, 'absent'))).toEqual([]);
  rmSync(folder, { recursive: true });
});

test('the page has the words of the language fetched beside it, by the name that the build gave them', () => {
  const folder = mkdtempSync(join(tmpdir(), 'dewpost-page-'));
  expect(wordsAhead(folder)('en')).toBeNull();
  const built = { '../hub/words/de.ts': { file: 'assets/de-1a2b.js' } };
  writeFileSync(join(folder, 'files.json'), JSON.stringify(built));
  const ahead = wordsAhead(folder);
  expect(ahead('de')).toBe('</assets/de-1a2b.js>; rel=modulepreload; crossorigin');
  expect(ahead('fr')).toBeNull();
  rmSync(folder, { recursive: true });
});
