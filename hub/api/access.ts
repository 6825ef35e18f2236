import type { FastifyRequest } from 'fastify';
import type { App } from './app.ts';
import { answersTo } from './hosts.ts';
import { type ApiParts, Refused } from './parts.ts';
import { neededFor } from './roles.ts';
import type { Session, Sessions } from './sessions.ts';

/** Kept in the store's secrets while nobody has claimed the hub. */
export const CLAIM_CODE = 'claim-code';
/** These read and change nothing (RFC 9110, section 9.2.1). */
const SAFE = new Set(['GET', 'HEAD', 'OPTIONS', 'TRACE']);

declare module 'fastify' {
  interface FastifyRequest {
    session: Session | null;
  }
  interface FastifyContextConfig {
    /** What a route takes instead of JSON: no type of the Fetch standard's safelist. */
    takes?: RegExp;
  }
}

/** Who is asking; `grower` on a hub that nobody signs in to. */
export const whoIs = (request: FastifyRequest) => request.session?.name ?? 'grower';

export type GuardOptions = {
  readonly sessions: Sessions;
  /** Names the hub answers to beside its addresses. */
  readonly hosts: readonly string[];
};

/** Every request passes here before anything reads it: its host, where it comes from, whose it is. */
export function guard(app: App, { open }: ApiParts, { sessions, hosts }: GuardOptions) {
  app.decorateRequest('session', null);
  app.addHook('onRequest', async (request) => {
    const { host } = request.headers;
    if (!answersTo(host, open, hosts))
      throw new Refused(
        403,
        `Expected ${open ? "this machine's own address" : "the hub's address, or a name given with --host,"} in Host, got ${short(host)}`,
      );
    if (!SAFE.has(request.method)) expectOwnPage(request, request.routeOptions.config.takes);
    // By the route that was found, not by the address as it was written: that can be written many ways.
    const route = request.routeOptions.url ?? '';
    request.session = open ? null : sessions.of(request);
    if (open || !(route.startsWith('/api/') || route === '/metrics')) return;
    const needs = neededFor(request.method, route);
    if (needs === 'nobody') return;
    if (request.session === null)
      throw new Refused(401, 'Expected somebody who is signed in, got nobody');
    if (needs === 'grower' && request.session.role !== 'grower')
      throw new Refused(403, `Expected a grower, got ${request.session.name}, a helper`);
  });
}

/** What forms of other sites cannot send without asking. */
const JSON_ONLY = /^application\/json\s*(;|$)/i;

/** A page of another site must not act here. Browsers say where a request comes from; programs need not. */
function expectOwnPage({ headers }: FastifyRequest, takes = JSON_ONLY) {
  const { origin } = headers;
  if (origin !== undefined && hostOf(origin) !== headers.host?.toLowerCase())
    throw new Refused(
      403,
      `Expected a request from the hub's own pages, got one from ${short(origin)}`,
    );
  // Fetch Metadata Request Headers (W3C), section 2.4; "none" is the person's own doing.
  const site = headers['sec-fetch-site'];
  if (site !== undefined && site !== 'same-origin' && site !== 'none')
    throw new Refused(
      403,
      `Expected a request from the hub's own pages, got one that is ${short(site)}`,
    );
  // Forms of other sites can send other types without asking first (Fetch standard, 2.2.2).
  const type = headers['content-type'];
  const sendsSomething =
    headers['transfer-encoding'] !== undefined || (headers['content-length'] ?? '0') !== '0';
  if (type === undefined ? sendsSomething : !takes.test(type))
    throw new Refused(
      415,
      `Expected ${takes === JSON_ONLY ? 'application/json' : 'image/jpeg, image/png or image/webp'} in Content-Type, got ${short(type)}`,
    );
}

/** A header as it was sent, short enough for a sentence. */
const short = (header: string | string[] | undefined) =>
  String(header ?? '').slice(0, 100) || 'none';

// The scheme is left out: something before the hub may speak TLS for it.
function hostOf(origin: string): string | null {
  try {
    return new URL(origin).host;
  } catch {
    return null;
  }
}
