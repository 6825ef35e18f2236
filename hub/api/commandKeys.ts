import { createHash } from 'node:crypto';
import type { FastifyRequest } from 'fastify';
import { whoIs } from './access.ts';
import type { App } from './app.ts';
import { type ApiParts, Refused } from './parts.ts';

// The header of draft-ietf-httpapi-idempotency-key-header: a command that is sent again under the same
// key gets the same answer and is not entered again.

/** Keys are known for so long. Ours: a phone that was in a drawer for a month has other worries. */
const KNOWN_FOR = 30 * 86_400_000; // ms
/** The draft has a string of RFC 8941, in quotes; a UUID has 36 characters. The length is ours. */
const KEY = /^"?([\x21\x23-\x5b\x5d-\x7e]{16,100})"?$/;
const CHANGES = new Set(['POST', 'PATCH', 'DELETE']);

declare module 'fastify' {
  interface FastifyRequest {
    /** The key of a command that is being entered for the first time. */
    commandKey: string | null;
  }
}

/** Remembers commands by the key their sender gave them; without a key nothing changes. */
export function heedCommandKeys(app: App, { store }: ApiParts, wall: () => number) {
  /** What is being entered now; a mark in the store that is not in here is of a hub that was stopped. */
  const entering = new Set<string>();
  app.decorateRequest('commandKey', null);

  app.addHook('preHandler', async (request, reply) => {
    const key = keyOf(request);
    if (key === null) return;
    const who = whoIs(request);
    const print = printOf(request);
    const known = store.commandKeys.get(who, key);
    if (known === undefined) {
      store.commandKeys.dropOld(wall() - KNOWN_FOR);
      store.commandKeys.begin(who, key, print, wall());
      entering.add(`${who} ${key}`);
      request.commandKey = key;
      return;
    }
    if (known.print !== print)
      throw new Refused(422, 'Expected a new Idempotency-Key for another command, got one known');
    if (known.status === null) {
      if (entering.has(`${who} ${key}`))
        throw new Refused(
          409,
          'Expected one try at a time, got another while the hub still enters the first',
          { 'retry-after': '1' },
        );
      // Said once: who sends it again after that has looked.
      store.commandKeys.drop(who, key);
      throw new Refused(
        409,
        'Expected a hub that ran on, got one that stopped while it entered this: look whether it is there',
      );
    }
    return reply
      .code(known.status)
      .header('content-type', 'application/json; charset=utf-8')
      .serializer(String)
      .send(known.answer);
  });

  app.addHook('onSend', async (request, reply, payload) => {
    const key = request.commandKey;
    if (key === null) return payload;
    request.commandKey = null;
    const who = whoIs(request);
    entering.delete(`${who} ${key}`);
    const isStored = reply.statusCode >= 200 && reply.statusCode < 300;
    // What was refused entered nothing: it may be mended and sent under the same key.
    if (!isStored) store.commandKeys.drop(who, key);
    else store.commandKeys.end(who, key, reply.statusCode, textOf(payload));
    return payload;
  });
}

const textOf = (payload: unknown) => (typeof payload === 'string' ? payload : '');

function keyOf({ method, headers, routeOptions }: FastifyRequest): string | null {
  const header = headers['idempotency-key'];
  const { secret, takes } = routeOptions.config;
  // Passwords are not remembered, and pictures are known by their content.
  if (header === undefined || !CHANGES.has(method) || secret || takes) return null;
  const key = KEY.exec(String(header))?.[1];
  if (key === undefined)
    throw new Refused(
      400,
      'Expected 16 to 100 plain characters in Idempotency-Key, got something else',
    );
  return key;
}

const printOf = ({ method, url, body }: FastifyRequest) =>
  createHash('sha256')
    .update(JSON.stringify([method, url, body ?? null]))
    .digest('base64url');
