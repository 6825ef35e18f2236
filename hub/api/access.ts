import { randomBytes } from 'node:crypto';
import type { FastifyReply, FastifyRequest } from 'fastify';
import * as contract from '../contract/index.ts';
import { hashPassword, passwordFits } from '../passwords.ts';
import type { App } from './app.ts';
import { type ApiParts, Refused } from './parts.ts';

const COOKIE = 'dewpost';
const SIGNED_IN_FOR = 90 * 86_400_000; // ms: a season's phone need not sign in each morning
/** Kept in the store's secrets while nobody has claimed the hub. */
export const CLAIM_CODE = 'claim-code';
/** Tries to sign in, per address and minute. Ours. */
const TRIES = 10;
/** Reached without signing in: whether the hub lives, and how to sign in. */
const OPEN_ROUTES = new Set([
  '/api/health',
  '/api/who',
  '/api/claim',
  '/api/sign-in',
  '/api/openapi.json',
]);
const LOOPBACK = /^(localhost|127(\.\d+){3}|\[::1\])(:\d+)?$/i;

declare module 'fastify' {
  interface FastifyRequest {
    person: string | null;
  }
}

/** Who is asking; `grower` on a hub that nobody signs in to. */
export const whoIs = (request: FastifyRequest) => request.person ?? 'grower';

export function guard(app: App, parts: ApiParts) {
  app.decorateRequest('person', null);
  app.addHook('onRequest', async (request) => {
    // A page of another site, or a name that somebody else points at this machine, must not act here.
    if (parts.open && !LOOPBACK.test(request.headers.host ?? ''))
      throw new Refused(
        403,
        `Expected this machine's own address, got ${request.headers.host ?? 'none'}`,
      );
    const { origin } = request.headers;
    if (request.method !== 'GET' && origin !== undefined && hostOf(origin) !== request.headers.host)
      throw new Refused(403, `Expected a request from the hub's own pages, got one from ${origin}`);
    const cookie = request.cookies[COOKIE];
    const session = cookie ? request.unsignCookie(cookie) : null;
    if (session?.valid && session.value)
      request.person = parts.store.people.session(session.value, Date.now()) ?? null;
    // By the route that was found, not by the address as it was written: that can be written many ways.
    const route = request.routeOptions.url ?? '';
    const guarded = route.startsWith('/api/');
    if (guarded && !parts.open && !OPEN_ROUTES.has(route) && request.person === null)
      throw new Refused(401, 'Expected somebody who is signed in, got nobody');
  });
}

const hostOf = (origin: string) => {
  try {
    return new URL(origin).host;
  } catch {
    return null;
  }
};

const claimedAlready = () =>
  new Refused(409, 'Expected a hub that nobody has claimed, got one that is claimed: sign in');

function startSession(parts: ApiParts, reply: FastifyReply, name: string) {
  const id = randomBytes(24).toString('base64url');
  parts.store.people.addSession(id, name, Date.now() + SIGNED_IN_FOR);
  reply.setCookie(COOKIE, id, {
    signed: true,
    httpOnly: true,
    sameSite: 'strict',
    path: '/',
    maxAge: SIGNED_IN_FOR / 1000,
  });
}

export function accessRoutes(app: App, parts: ApiParts) {
  const { people } = parts.store;
  const who = (name: string | null) => ({ claimed: people.claimed(), open: parts.open, name });
  const few = { rateLimit: { max: TRIES, timeWindow: 60_000 } };

  app.get('/api/who', { schema: { response: { 200: contract.who } } }, ({ person }) => who(person));

  app.post(
    '/api/claim',
    { config: few, schema: { body: contract.claim, response: { 200: contract.who } } },
    async (request, reply) => {
      const { code, name, password } = request.body;
      const kept = people.secret(CLAIM_CODE);
      if (people.claimed() || kept === undefined) throw claimedAlready();
      if (!(await passwordFits(code.trim().toLowerCase(), kept)))
        throw new Refused(
          403,
          'Expected the code the hub printed when it started, got another one in code',
        );
      const hash = await hashPassword(password);
      parts.store.transaction(() => {
        // Somebody else may have claimed it while the password was worked on.
        if (people.claimed()) throw claimedAlready();
        people.add(name, hash);
        people.dropSecret(CLAIM_CODE);
      });
      startSession(parts, reply, name);
      return who(name);
    },
  );

  app.post(
    '/api/sign-in',
    { config: few, schema: { body: contract.signIn, response: { 200: contract.who } } },
    async (request, reply) => {
      const { name, password } = request.body;
      const hash = people.passwordOf(name);
      if (!hash || !(await passwordFits(password, hash)))
        throw new Refused(403, 'Expected a name and its password, got others');
      startSession(parts, reply, name);
      return who(name);
    },
  );

  app.post('/api/sign-out', { schema: { response: { 200: contract.who } } }, (request, reply) => {
    const cookie = request.cookies[COOKIE];
    const session = cookie ? request.unsignCookie(cookie) : null;
    if (session?.valid && session.value) people.dropSession(session.value);
    reply.clearCookie(COOKIE, { path: '/' });
    return who(null);
  });
}
