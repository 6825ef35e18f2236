import { expect, test } from 'vitest';
import { faultIn } from './fuzz/judge.ts';
import { operationsOf } from './fuzz/operations.ts';
import { makeRandom, seedOfRun } from './fuzz/random.ts';
import { makeRequest } from './fuzz/requests.ts';
import { peopledHub } from './lockedHub.ts';

const REQUESTS = 4000;

test('four thousand requests by chance, right and wrong, are all answered in a sentence or in full', async () => {
  const seed = seedOfRun();
  console.log(`DEWPOST_SEED=${seed}`);
  const hub = await peopledHub();
  const { app, ann, hal, faults, send, clock, core } = hub;
  for (let i = 0; i < 24; i++) send('p1', 'temperature', clock.now() - i * 300_000, 18 + (i % 5));
  core.look();
  const operations = operationsOf((await app.inject({ url: '/api/openapi.json' })).json()).filter(
    ({ path }) => path !== '/api/events', // answers for as long as somebody listens
  );
  const random = makeRandom(seed);
  const found: string[] = [];
  const statuses = new Map<number, number>();
  for (let i = 0; i < REQUESTS; i++) {
    const { method, url, headers, body } = makeRequest(operations, random, ['', ann, ann, hal]);
    const reply = await app.inject({
      ...{ method: method as 'GET', url, headers: { ...headers } },
      ...(body === undefined ? {} : { payload: body }),
    });
    const answered = { status: reply.statusCode, body: reply.body };
    const fault = faultIn(answered, method);
    if (fault) found.push(`${method} ${url.slice(0, 200)} ${body?.slice(0, 200) ?? ''}: ${fault}`);
    statuses.set(reply.statusCode, (statuses.get(reply.statusCode) ?? 0) + 1);
  }
  expect(found.slice(0, 5)).toEqual([]);
  expect(faults).toEqual([]);
  // It went deep, not only to the door.
  for (const status of [200, 400, 401, 403, 404, 415])
    expect(statuses.get(status) ?? 0, `answers ${status}`).toBeGreaterThan(10);
  expect(({} as { role?: string }).role).toBeUndefined(); // no body reached every object
  expect((await app.inject({ url: '/api/health' })).statusCode).toBe(200);
}, 300_000);
