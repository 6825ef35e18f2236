import { createHmac } from 'node:crypto';
import { createServer, type IncomingMessage, type ServerResponse } from 'node:http';
import { expect, onTestFinished, test } from 'vitest';
import { sendWebhook, signature } from '../../../hub/alarms/index.ts';
import { deadPort } from './mailServer.ts';

type Heard = {
  readonly path: string;
  readonly method: string;
  readonly headers: IncomingMessage['headers'];
  readonly body: string;
};

async function listener(answer: (reply: ServerResponse, path: string) => void) {
  const heard: Heard[] = [];
  const server = createServer((request, reply) => {
    let body = '';
    request.setEncoding('utf8').on('data', (text: string) => {
      body += text;
    });
    request.on('end', () => {
      const { url: path = '', method = '', headers } = request;
      heard.push({ path, method, headers, body });
      answer(reply, path);
    });
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  onTestFinished(() => {
    server.closeAllConnections();
    server.close();
  });
  const address = server.address();
  const port = typeof address === 'object' && address ? address.port : 0;
  return { url: `http://127.0.0.1:${port}/hook?token=hidden`, heard };
}
const post = (url: string, more: object = {}) =>
  sendWebhook({
    ...{ url, id: 'raised|a|1|ann|webhook', body: '{"schema":"dewpost-alarm/1"}' },
    ...{ secret: 'sixteen-letters-or-more', sentAt: '2026-05-10T02:00:00.000Z' },
    ...more,
  });

// Source: RFC 4231, section 4.3, test case 2 (HMAC-SHA-256), whose data is here split at its line
// feed by hand: there is none in it, so the function's own joining is checked against node:crypto.
test('the signature is HMAC-SHA256 of time, line feed and body', () => {
  const rfc = createHmac('sha256', 'Jefe').update('what do ya want for nothing?').digest('hex');
  expect(rfc).toBe('5bdcc146bf60754e6a042426089575c75a003f089d2739839dec58b964ec3843');
  const own = createHmac('sha256', 'key').update('2026-05-10T02:00:00Z\n{"a":1}').digest('hex');
  expect(signature('key', '2026-05-10T02:00:00Z', '{"a":1}')).toBe(own);
  expect(signature('key', '2026-05-10T02:00:01Z', '{"a":1}')).not.toBe(own);
});

test('a message is posted as JSON, named and signed', async () => {
  const { url, heard } = await listener((reply) => reply.end('thank you'));
  expect(await post(url)).toEqual({ outcome: 'delivered', words: '200 OK thank you' });
  const [one] = heard;
  expect(one).toMatchObject({ method: 'POST', path: '/hook?token=hidden' });
  expect(one?.headers).toMatchObject({
    'content-type': 'application/json',
    'dewpost-message': 'raised|a|1|ann|webhook',
    'dewpost-sent-at': '2026-05-10T02:00:00.000Z',
    'dewpost-signature': signature(
      'sixteen-letters-or-more',
      '2026-05-10T02:00:00.000Z',
      one?.body ?? '',
    ),
  });
});

test('without a secret there is no signature', async () => {
  const { url, heard } = await listener((reply) => reply.end());
  await post(url, { secret: null });
  expect(heard[0]?.headers).not.toHaveProperty('dewpost-signature');
});

// Source: RFC 9110, section 15: 4xx the client's fault, 5xx the server's; 408 and 425 invite another
// try, as does 429 (RFC 6585, section 4).
test.for([
  [204, 'delivered'],
  [400, 'refused'],
  [404, 'refused'],
  [410, 'refused'],
  [408, 'later'],
  [425, 'later'],
  [429, 'later'],
  [500, 'later'],
  [503, 'later'],
] as const)('an answer of %d means %s', async ([status, outcome]) => {
  const { url } = await listener((reply) => reply.writeHead(status).end());
  const sent = await post(url);
  expect([sent.outcome, sent.words.slice(0, 3)]).toEqual([outcome, String(status)]);
});

test('a redirect that keeps the message is followed, another is refused', async () => {
  const kept = await listener((reply, path) =>
    path.startsWith('/hook')
      ? reply.writeHead(307, { location: '/there' }).end()
      : reply.end('arrived'),
  );
  expect(await post(kept.url)).toEqual({ outcome: 'delivered', words: '200 OK arrived' });
  expect(kept.heard.map(({ method, body }) => [method, body])).toEqual([
    ['POST', '{"schema":"dewpost-alarm/1"}'],
    ['POST', '{"schema":"dewpost-alarm/1"}'],
  ]);
  const lost = await listener((reply) => reply.writeHead(302, { location: '/there' }).end());
  expect((await post(lost.url)).outcome).toBe('refused');
  expect(lost.heard).toHaveLength(1);
});

test('redirects without end are given up', async () => {
  const { url, heard } = await listener((reply) =>
    reply.writeHead(308, { location: '/hook' }).end(),
  );
  expect((await post(url)).outcome).toBe('refused');
  expect(heard.length).toBeLessThanOrEqual(4);
});

test('nobody there, and somebody who never answers, are tried later', {
  timeout: 60_000,
}, async () => {
  const dead = await post(`http://127.0.0.1:${await deadPort()}/secret-path`);
  expect(dead).toEqual({ outcome: 'later', words: expect.stringMatching(/ECONNREFUSED/) });
  expect(dead.words).not.toContain('secret-path');
  const { url } = await listener(() => {});
  const sent = await post(url);
  expect(sent).toEqual({ outcome: 'later', words: expect.stringMatching(/no answer within/) });
});

test('an answer without end is not listened to for ever, and is cut for the screen', async () => {
  const { url } = await listener((reply) => {
    reply.on('error', () => {});
    const more = () => {
      if (!reply.destroyed) reply.write('words '.repeat(1000), () => setImmediate(more));
    };
    more();
  });
  const sent = await post(url);
  expect(sent.outcome).toBe('delivered');
  expect(sent.words.length).toBeLessThanOrEqual(300);
});
