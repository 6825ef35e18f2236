import { randomBytes } from 'node:crypto';
import type { FastifyReply, FastifyRequest } from 'fastify';
import { type Role, role } from '../contract/index.ts';
import { hashOfDrawn } from '../passwords.ts';
import type { Store } from '../store/index.ts';

const DAY = 86_400_000; // ms
/** However often it is used. Ours: a season's phone need not sign in each morning. */
const LONGEST = 180 * DAY;
/** Not used for this long. Ours. */
const LONGEST_UNUSED = 30 * DAY;
/** "Last seen" is written down this often. ms, ours: spares the card. */
const SEEN_EVERY = 3_600_000;
/** Browsers one person is signed in with. Ours. */
const MOST = 20;
const COOKIE = 'dewpost';

export type Session = { readonly key: string; readonly name: string; readonly role: Role };
export type Sessions = ReturnType<typeof makeSessions>;

/**
 * Who is signed in with which browser: a random id in a signed cookie, kept here by its hash.
 *
 * @param secure the pages come over TLS only.
 * @param wall the time, ms since 1970.
 * @param ended told of sessions that were ended: one by its key, or all of a person's.
 */
export function makeSessions(
  store: Store,
  secure: boolean,
  wall: () => number,
  ended: (whose: { readonly key?: string; readonly name?: string }) => void,
) {
  // Asked for anew each time: a store that was mended speaks to another file.
  const kept = () => store.people.sessions;
  const seen = (name: string, now: number) => store.people.seen(name, now);
  const cookie = { signed: true, httpOnly: true, sameSite: 'strict', path: '/', secure } as const;

  const keyOf = (request: FastifyRequest): string | null => {
    const given = request.cookies[COOKIE];
    const id = given === undefined ? null : request.unsignCookie(given);
    return id?.valid && id.value ? hashOfDrawn(id.value) : null;
  };
  /** The session of a key, if it still counts. */
  const get = (key: string): Session | null => {
    const row = kept().get(key);
    const now = wall();
    if (!row || now - row.begunAt > LONGEST || now - row.seenAt > LONGEST_UNUSED) return null;
    if (now - row.seenAt > SEEN_EVERY)
      store.transaction(() => {
        kept().seen(key, now);
        seen(row.name, now);
      });
    return { key, name: row.name, role: role.parse(row.role) };
  };

  return {
    get,
    of: (request: FastifyRequest): Session | null => {
      const key = keyOf(request);
      return key === null ? null : get(key);
    },
    start(reply: FastifyReply, name: string) {
      const id = randomBytes(24).toString('base64url');
      const now = wall();
      store.transaction(() => {
        kept().dropOld(now - LONGEST, now - LONGEST_UNUSED);
        kept().add(hashOfDrawn(id), name, now, MOST);
        seen(name, now);
      });
      reply.setCookie(COOKIE, id, { ...cookie, maxAge: LONGEST / 1000 });
    },
    end(request: FastifyRequest, reply: FastifyReply) {
      const key = keyOf(request);
      if (key !== null) {
        kept().drop(key);
        ended({ key });
      }
      reply.clearCookie(COOKIE, { path: '/' });
    },
    endAllOf(name: string) {
      kept().dropAllOf(name);
      ended({ name });
    },
  };
}
