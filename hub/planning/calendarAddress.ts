import { createHash, randomBytes, timingSafeEqual } from 'node:crypto';
import type { Store } from '../store/index.ts';

// A calendar program cannot sign in, so the feed has an address that nobody can guess. Only what the
// token hashes to is kept: the store, and a backup of it, let nobody in.

const SECRET = 'calendar';
const NAME = 'calendar-name';
const BYTES = 16; // 128 bits
const LONG = 22; // characters of 16 bytes in base64url

const hashed = (token: string) => createHash('sha256').update(token).digest('hex');

/** The secret address of the calendar: made anew, held against, or taken away. */
export function calendarAddress(store: Store) {
  return {
    exists: () => store.people.secret(SECRET) !== undefined,
    /** @returns the token, which can be read only now. An address given before leads nowhere. */
    renew(): string {
      const token = randomBytes(BYTES).toString('base64url');
      store.people.putSecret(SECRET, hashed(token));
      return token;
    },
    stop: () => store.people.dropSecret(SECRET),
    opens(token: string): boolean {
      const kept = store.people.secret(SECRET);
      if (kept === undefined || token.length !== LONG) return false;
      return timingSafeEqual(Buffer.from(kept), Buffer.from(hashed(token)));
    },
    /** Ends the names of events, so that those of two hubs are never the same. */
    name(): string {
      const kept = store.people.secret(NAME);
      if (kept !== undefined) return kept;
      const made = randomBytes(8).toString('hex');
      store.people.putSecret(NAME, made);
      return made;
    },
  };
}
