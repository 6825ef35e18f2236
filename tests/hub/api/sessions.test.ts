import Database from 'better-sqlite3';
import { expect, test } from 'vitest';
import { cookieOf, lockedHub } from './lockedHub.ts';

const DAY = 86_400_000; // ms
const HOUR = 3_600_000;
const START = Date.UTC(2026, 4, 10, 9);

async function timedHub() {
  const time = { now: START };
  const hub = await lockedHub({ wall: () => time.now });
  const claimed = await hub.claim();
  const cookie = cookieOf(claimed);
  const works = async () => (await hub.get('/api/today', cookie)).statusCode === 200;
  return { ...hub, time, claimed, cookie, works };
}

test('a session that is not used for thirty days is over', async () => {
  const { time, works } = await timedHub();
  time.now += 30 * DAY;
  expect(await works()).toBe(true);
  time.now += 30 * DAY;
  expect(await works()).toBe(true);
  time.now += 30 * DAY + 1;
  expect(await works()).toBe(false);
});

test('a session is over after half a year, however often it is used', async () => {
  const { time, works } = await timedHub();
  for (let day = 0; day < 180; day += 20) {
    time.now = START + day * DAY;
    expect(await works()).toBe(true);
  }
  time.now = START + 180 * DAY;
  expect(await works()).toBe(true);
  time.now += 1;
  expect(await works()).toBe(false);
});

test('a clock that jumps back to 1970 signs nobody out', async () => {
  const { time, works } = await timedHub();
  time.now = 0;
  expect(await works()).toBe(true);
});

test('what the browser keeps is not in the store, and a copy of the store signs nobody in', async () => {
  const { cookie, path, get, store } = await timedHub();
  const id =
    decodeURIComponent(cookie)
      .replace(/^dewpost=/, '')
      .split('.')[0] ?? '';
  expect(Buffer.from(id, 'base64url')).toHaveLength(24);
  const db = new Database(path, { readonly: true });
  const [row] = db.prepare<[], { key: string }>('SELECT key FROM sessions').all();
  db.close();
  expect(row?.key).toMatch(/^[0-9a-f]{64}$/);
  expect(row?.key).not.toContain(id);
  expect((await get('/api/today', `dewpost=${row?.key}`)).statusCode).toBe(401);
  expect(store.people.sessions.get(id)).toBeUndefined();
});

test('the cookie is for this site’s requests only, out of reach of scripts, and over TLS for TLS only', async () => {
  const { claimed } = await timedHub();
  const cookie = String(claimed.headers['set-cookie']);
  expect(cookie).toMatch(/; Path=\//);
  expect(cookie).toMatch(/; HttpOnly/);
  expect(cookie).toMatch(/; SameSite=Strict/);
  expect(cookie).toMatch(/; Max-Age=15552000/); // 180 days
  expect(cookie).not.toMatch(/Secure/);
});

test('one person is signed in with at most twenty browsers: the newest', async () => {
  const { path, store, get, cookie } = await timedHub();
  const { sessions } = store.people;
  for (let i = 1; i <= 30; i++) sessions.add(`k${i}`, 'Ann', START + i, 20);
  const db = new Database(path, { readonly: true });
  const kept = db.prepare('SELECT key FROM sessions ORDER BY begun_at').pluck().all();
  db.close();
  expect(kept).toEqual(Array.from({ length: 20 }, (_, i) => `k${i + 11}`));
  expect((await get('/api/today', cookie)).statusCode).toBe(401);
});

test('"last seen" is written once an hour, not at every request', async () => {
  const { works, time, store } = await timedHub();
  time.now += HOUR / 2;
  await works();
  expect(store.people.get('Ann')?.seenAt).toBe(START);
  time.now += HOUR;
  await works();
  expect(store.people.get('Ann')?.seenAt).toBe(START + 1.5 * HOUR);
});
