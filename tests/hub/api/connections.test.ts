import { get as httpGet, type IncomingMessage } from 'node:http';
import { connect } from 'node:net';
import { setTimeout as wait } from 'node:timers/promises';
import { expect, onTestFinished, test } from 'vitest';
import { servedHub } from '../smallFarm.ts';
import { peopledHub } from './lockedHub.ts';

const portOf = (app: Awaited<ReturnType<typeof servedHub>>['app']) =>
  (app.server.address() as { port: number }).port;

async function listening() {
  const hub = await servedHub();
  hub.core.look();
  await hub.app.listen({ host: '127.0.0.1', port: 0 });
  return { ...hub, port: portOf(hub.app) };
}

/** Sends bytes as they are; resolves with all that came back when the hub ends the connection. */
const raw = (port: number, ...texts: readonly string[]) =>
  new Promise<string>((resolve) => {
    let reply = '';
    const socket = connect(port, '127.0.0.1', async () => {
      for (const text of texts) {
        socket.write(text);
        await wait(20);
      }
    });
    socket.setEncoding('utf8').on('data', (text) => {
      reply += text;
    });
    socket.on('error', () => {});
    socket.on('close', () => resolve(reply));
  });

test('a request that trickles in is ended within a quarter of a minute, and others are answered meanwhile', async () => {
  const { port, app } = await listening();
  const begun = performance.now();
  const slow = raw(port, 'GET /api/health HTTP/1.1\r\n', 'Host: 127.0.0.1\r\nX: ');
  expect((await fetch(`http://127.0.0.1:${port}/api/who`)).status).toBe(200);
  expect(await slow).toMatch(/^HTTP\/1\.1 408 /);
  expect(performance.now() - begun).toBeGreaterThan(5000); // it was let wait, not thrown out
  expect(app.server.requestTimeout).toBeLessThanOrEqual(20_000);
  expect(app.server.headersTimeout).toBeLessThanOrEqual(10_000);
});

test('headers without end are refused', async () => {
  const { port } = await listening();
  const reply = await raw(port, `GET / HTTP/1.1\r\nHost: 127.0.0.1\r\nX: ${'y'.repeat(20_000)}`);
  expect(reply).toMatch(/^HTTP\/1\.1 431 /);
});

test('a body beyond 64 kB is refused in one sentence, before it is read', async () => {
  const { app } = await listening();
  const reply = await app.inject({
    method: 'POST',
    url: '/api/tasks/x/answer',
    headers: { 'content-type': 'application/json' },
    payload: JSON.stringify({ answer: 'done', note: 'x'.repeat(70_000) }),
  });
  expect([reply.statusCode, reply.json().error]).toEqual([
    413,
    'Expected at most 65536 bytes in the body, got more',
  ]);
});

// RFC 9112, section 6.3: a message with both fields must not be taken for two.
test.for([
  'Content-Length: 2\r\nTransfer-Encoding: chunked\r\n',
  'Content-Length: 2\r\nContent-Length: 3\r\n',
  'Transfer-Encoding: chunked, identity\r\n',
  'Content-Length: -1\r\n',
])('conflicting lengths are refused: %j', async (headers) => {
  const { port } = await listening();
  const reply = await raw(
    port,
    `POST /api/sign-out HTTP/1.1\r\nHost: 127.0.0.1\r\nContent-Type: application/json\r\nConnection: close\r\n${headers}\r\n{}`,
  );
  expect(reply).toMatch(/^HTTP\/1\.1 4\d\d /);
});

const listen = (port: number, cookie: string) =>
  new Promise<IncomingMessage>((resolve, reject) => {
    const asked = httpGet(
      { host: '127.0.0.1', port, path: '/api/events', headers: { cookie }, agent: false },
      resolve,
    );
    asked.on('error', reject);
    onTestFinished(() => void asked.destroy());
  });

test('one person’s thirty-first open page ends that person’s first, and nobody else’s', async () => {
  const { app, ann, hal } = await peopledHub();
  await app.listen({ host: '127.0.0.1', port: 0 });
  const port = portOf(app);
  const first = await listen(port, ann);
  const ended = new Promise((resolve) => first.resume().on('close', resolve));
  for (let i = 0; i < 30; i++) (await listen(port, ann)).resume();
  await ended;
  const other = await listen(port, hal);
  expect(other.statusCode).toBe(200);
  other.resume();
});

test('an open page of somebody who is removed, or signs out, is ended at once', async () => {
  const { app, ann, hal, post } = await peopledHub();
  await app.listen({ host: '127.0.0.1', port: 0 });
  const page = await listen(portOf(app), hal);
  expect(page.headers['content-security-policy']).toContain("frame-ancestors 'none'");
  const ended = new Promise((resolve) => page.resume().on('close', resolve));
  await post('/api/people/Hal/remove', {}, { cookie: ann });
  await ended;
  const own = await listen(portOf(app), ann);
  const gone = new Promise((resolve) => own.resume().on('close', resolve));
  await post('/api/sign-out', {}, { cookie: ann });
  await gone;
});
