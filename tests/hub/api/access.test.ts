import { connect } from 'node:net';
import { expect, test } from 'vitest';
import { servedHub } from '../smallFarm.ts';
import { cookieOf, lockedHub, PASSWORD } from './lockedHub.ts';

const guarded = [
  '/api/today',
  '/api/tasks',
  '/api/places',
  '/api/places/long-house',
  '/api/places/long-house/days',
  '/api/series?place=long-house&quantity=temperature&from=2026-05-10T00:00:00Z&to=2026-05-11T00:00:00Z',
  '/api/frost/tonight',
  '/api/cool-rooms/cool-room',
  '/api/probes',
  '/api/refused',
  '/api/farm',
  '/api/strips',
  '/api/events',
];
test.for(guarded)('%s is for those who signed in', async (url) => {
  const { get } = await lockedHub();
  const reply = await get(url);
  expect(reply.statusCode).toBe(401);
  expect(reply.json()).toEqual({ error: 'Expected somebody who is signed in, got nobody' });
});

test.for([
  '/%61pi/today',
  '/api/%74oday',
  '/ap%69/probes',
  '//api/today',
  '/api//today',
  '/api/today/',
  '/API/today',
])('%s is no way round the sign-in', async (url) => {
  const { get } = await lockedHub();
  expect((await get(url)).statusCode).not.toBe(200);
});

/** One request as raw text, as a client that keeps to no library would send it. */
const raw = (port: number, text: string) =>
  new Promise<string>((resolve, reject) => {
    let reply = '';
    const socket = connect(port, '127.0.0.1', () => socket.write(text));
    socket.on('data', (data) => {
      reply += data;
    });
    socket.on('close', () => resolve(reply));
    socket.on('error', reject);
  });

// RFC 9112, section 3.2.2: a server accepts the whole address in a request line.
test('the whole address in the request line is no way round the sign-in', async () => {
  const { app } = await lockedHub();
  await app.listen({ host: '127.0.0.1', port: 0 });
  const { port } = app.server.address() as { port: number };
  const reply = await raw(
    port,
    `GET http://127.0.0.1:${port}/api/today HTTP/1.1\r\nHost: 127.0.0.1:${port}\r\nConnection: close\r\n\r\n`,
  );
  expect(reply).toMatch(/^HTTP\/1\.1 40\d /);
});

test.for(['/api/health', '/metrics', '/api/who', '/api/openapi.json'])(
  '%s is for everybody',
  async (url) => {
    const { get } = await lockedHub();
    expect((await get(url)).statusCode).toBe(200);
  },
);

test('the code claims the hub once; then it is signed in to', async () => {
  const { claim, get, post } = await lockedHub();
  expect((await get('/api/who')).json()).toEqual({
    claimed: false,
    open: false,
    name: null,
    role: null,
  });
  const claimed = await claim('  ABCD-efgh-jkmn ');
  expect(claimed.statusCode).toBe(200);
  expect(claimed.json()).toEqual({
    claimed: true,
    open: false,
    name: 'Ann',
    role: 'grower',
  });
  expect(claimed.headers['set-cookie']).toMatch(/HttpOnly/);
  expect(claimed.headers['set-cookie']).toMatch(/SameSite=Strict/);
  expect((await get('/api/today', cookieOf(claimed))).statusCode).toBe(200);
  expect((await claim()).statusCode).toBe(409);

  const wrong = await post('/api/sign-in', { name: 'Ann', password: 'something-else' });
  expect([wrong.statusCode, wrong.json()]).toEqual([
    403,
    { error: 'Expected a name and its password, got others' },
  ]);
  const signed = await post('/api/sign-in', { name: 'Ann', password: PASSWORD });
  const cookie = cookieOf(signed);
  expect((await get('/api/who', cookie)).json().name).toBe('Ann');
  await post('/api/sign-out', {}, { cookie });
  expect((await get('/api/today', cookie)).statusCode).toBe(401);
});

test('another code claims nothing', async () => {
  const { claim, store } = await lockedHub();
  const reply = await claim('abcd-efgh-jkmm');
  expect(reply.statusCode).toBe(403);
  expect(reply.json().error).toMatch(/^Expected the code the hub printed/);
  expect(store.people.claimed()).toBe(false);
});

test('of two who claim at the same moment one is told that the hub is claimed', async () => {
  const { claim } = await lockedHub();
  const replies = await Promise.all([claim(undefined, 'Ann'), claim(undefined, 'Bob')]);
  expect(replies.map(({ statusCode }) => statusCode).sort()).toEqual([200, 409]);
});

test('a short password is refused by its field, and not shown back in full', async () => {
  const { post } = await lockedHub();
  const reply = await post('/api/claim', { code: 'x', name: 'Ann', password: 'short' });
  expect(reply.statusCode).toBe(400);
  expect(reply.json().error).toMatch(/in password/);
  expect(reply.json().error).not.toContain('short');
});

test('a cookie that was changed, or has run out, signs nobody in', async () => {
  const { claim, get } = await lockedHub();
  const cookie = cookieOf(await claim());
  expect(
    (
      await get(
        '/api/today',
        cookie.replace(/=(.)/, (_, first) => `=${first === 'Z' ? 'Y' : 'Z'}`),
      )
    ).statusCode,
  ).toBe(401);
  expect((await get('/api/today', 'dewpost=anything')).statusCode).toBe(401);
});

test('a page of another site cannot act here', async () => {
  const { app } = await servedHub();
  const post = (headers: Record<string, string>) =>
    app.inject({
      method: 'POST',
      url: '/api/tasks/x/answer',
      payload: { answer: 'done' },
      headers,
    });
  const host = 'localhost:8470';
  for (const origin of ['http://evil.example', 'null', 'http://localhost:9999'])
    expect((await post({ host, origin })).statusCode).toBe(403);
  expect((await post({ host, origin: 'http://localhost:8470' })).statusCode).toBe(404);
});

test.for(['evil.example', 'localhost.evil.example', '192.168.1.9:8470', '127.0.0.1.evil.example'])(
  'an open hub does not answer to the name %s',
  async (host) => {
    const { app } = await servedHub();
    const reply = await app.inject({ url: '/api/who', headers: { host } });
    expect(reply.statusCode).toBe(403);
    expect(reply.json().error).toContain(host);
  },
);
test.for(['localhost:8470', '127.0.0.1:8470', '[::1]:8470', '127.0.0.1'])(
  'an open hub answers to %s',
  async (host) => {
    const { app } = await servedHub();
    expect((await app.inject({ url: '/api/who', headers: { host } })).statusCode).toBe(200);
  },
);

test('a plain page gets the headers that keep others out, and none that ask for HTTPS', async () => {
  const { app } = await servedHub();
  const { headers } = await app.inject({ url: '/api/health' });
  expect(headers['content-security-policy']).toContain("default-src 'self'");
  expect(headers['content-security-policy']).not.toContain('upgrade-insecure-requests');
  expect(headers['strict-transport-security']).toBeUndefined();
});
