import { hostname } from 'node:os';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { answersTo, nameIn } from '../../../hub/api/hosts.ts';
import { servedHub } from '../smallFarm.ts';

test.for([
  '192.168.1.20:8470',
  '192.168.1.20',
  '[fe80::1]:8470',
  '[2001:db8::2]',
  'localhost:8470',
  'LOCALHOST',
  'dewpost.local',
  'dewpost.local.:8470',
  'Hub.Farm.Example:8470',
  hostname(),
])('a hub on the network answers to %s', (host) => {
  expect(answersTo(host, false, ['hub.farm.example'])).toBe(true);
});

test.for([
  undefined,
  '',
  'evil.example',
  'localhost.evil.example',
  '192.168.1.20.evil.example',
  'dewpost.local.evil.example',
  '.local',
  'hub.farm.example.evil.example',
  'evil.example:8470@192.168.1.20',
  '192.168.1.20:8470, evil.example',
  '192.168.1.20/evil.example',
  '1.2.3',
  '0x7f000001',
  '[evil.example]',
  'a b',
  'hub.farm.example:999999',
])('a hub on the network does not answer to %j', (host) => {
  expect(answersTo(host, false, ['hub.farm.example'])).toBe(false);
});

test('no name that ends in another domain than ours is answered to', () => {
  const label = fc.stringMatching(/^[a-z0-9][a-z0-9-]{0,8}$/);
  fc.assert(
    fc.property(fc.array(label, { minLength: 1, maxLength: 4 }), (labels) => {
      const host = `${labels.join('.')}.example`;
      return !answersTo(host, false, []) && !answersTo(host, true, []);
    }),
  );
});

test('any text at all is either a name or none, and never throws', () => {
  fc.assert(
    fc.property(fc.string({ unit: 'binary' }), (host) => {
      const name = nameIn(host);
      return name === null || typeof answersTo(host, false, []) === 'boolean';
    }),
  );
});

test('a request for another name is refused on every route and page, in one sentence', async () => {
  const { app } = await servedHub({ open: false }, { hosts: ['hub.farm.example'] });
  for (const url of ['/', '/api/who', '/api/health', '/metrics', '/nowhere', '/api/nowhere']) {
    const reply = await app.inject({ url, headers: { host: 'evil.example' } });
    expect([reply.statusCode, reply.json().error]).toEqual([
      403,
      "Expected the hub's address, or a name given with --host, in Host, got evil.example",
    ]);
  }
  const own = await app.inject({ url: '/api/who', headers: { host: 'hub.farm.example' } });
  expect(own.statusCode).toBe(200);
});

const write = async (headers: Record<string, string>, payload: string | undefined = '{}') => {
  const { app } = await servedHub({ open: false });
  return app.inject({
    method: 'POST',
    url: '/api/sign-out',
    headers: { host: '192.168.1.20:8470', 'content-type': 'application/json', ...headers },
    payload,
  });
};

// Fetch Metadata Request Headers (W3C working draft), section 2.4, lists the values.
test.for(['cross-site', 'same-site', 'anything'])(
  'a browser that says %s may not change anything',
  async (site) => {
    const reply = await write({ 'sec-fetch-site': site });
    expect([reply.statusCode, reply.json().error]).toEqual([
      403,
      `Expected a request from the hub's own pages, got one that is ${site}`,
    ]);
  },
);
test.for(['same-origin', 'none'])('a browser that says %s is asked to sign in', async (site) => {
  expect((await write({ 'sec-fetch-site': site })).statusCode).toBe(401);
});

// Fetch standard, 2.2.2: the types that a page may send elsewhere without asking first.
test.for([
  'text/plain',
  'text/plain;charset=application/json',
  'application/x-www-form-urlencoded',
  'multipart/form-data; boundary=x',
  'application/jsonp',
  '',
])('a body of type %j is not read', async (type) => {
  const reply = await write({ 'content-type': type });
  expect([reply.statusCode, reply.json().error]).toEqual([
    415,
    `Expected application/json in Content-Type, got ${type || 'none'}`,
  ]);
});
test('a body of no stated type is not read', async () => {
  const { app } = await servedHub({ open: false });
  const reply = await app.inject({ method: 'POST', url: '/api/sign-out', payload: 'x' });
  expect(reply.statusCode).toBe(415);
});
