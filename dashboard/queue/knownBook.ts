import { allIn, dropIn, oneIn, putIn, within } from './database.ts';

/** What the hub answered last at an address. */
export type Known = {
  readonly path: string;
  /** Who was told; null on a hub that nobody signs in to. Nobody else is shown it. */
  readonly by: string | null;
  /** JSON. */
  readonly answer: string;
  /** By the hub's clock, ms. */
  readonly at: number;
  /** By this browser's, ms. */
  readonly wall: number;
};

/** Ours: characters of JSON, all told; a year on every page of a farm takes about a third of it. */
export const MOST_KNOWN = 8_000_000;
const MOST_OF_ONE = 2_000_000;
/** Looked over after so many answers. Ours. */
const EVERY = 25;
/** An address that is a password, and whatever else the farm file says. */
const SECRET = /^\/api\/(?:calendar|farm\/text)$/;
export const isSecret = (path: string) => SECRET.test(path);
/** Who is here is asked anew; the rest is in `keep.ts`. */
const ELSEWHERE = /^\/api\/(?:who|farm|today|strips)(?:$|\?)/;
export const mayKeep = (path: string) => !SECRET.test(path) && !ELSEWHERE.test(path);
/** A year up to today: tomorrow it is asked for by another address. */
const MOVING = /^(\/api\/places\/[^/]+\/days)\?/;

const nameOf = (path: string) => MOVING.exec(path)?.[1] ?? path;
let since = 0;

/** Keeps an answer. A full or forbidden storage costs the copy and nothing else. */
export function remember(path: string, by: string | null, answer: unknown, at: number): void {
  if (!mayKeep(path)) return;
  const text = JSON.stringify(answer);
  if (text.length > MOST_OF_ONE) return;
  const kept: Known = { path: nameOf(path), by, answer: text, at, wall: Date.now() };
  putIn('known', kept)
    .then(() => {
      since++;
      if (since < EVERY) return undefined;
      since = 0;
      return dropOldest();
    })
    .catch(() => {});
}

export async function knownAt(path: string, by: string | null): Promise<Known | undefined> {
  const kept = await oneIn<Known>('known', nameOf(path)).catch(() => undefined);
  return kept?.by === by ? kept : undefined;
}

/** Lets go of what was answered longest ago, until the rest has room. */
async function dropOldest(): Promise<void> {
  const all = (await allIn<Known>('known')).sort((a, b) => b.wall - a.wall);
  let room = MOST_KNOWN;
  for (const { path, answer } of all) {
    room -= answer.length;
    if (room < 0) await dropIn('known', path);
  }
}

/** Lets go of all that was answered to others; without a name, of everything. */
export async function forgetKnown(except?: { readonly name: string | null }): Promise<void> {
  try {
    await within<undefined>('known', 'readwrite', (store) => {
      if (except === undefined) {
        store.clear();
        return;
      }
      const asked: IDBRequest<Known[]> = store.getAll();
      asked.onsuccess = () => {
        for (const { path, by } of asked.result) if (by !== except.name) store.delete(path);
      };
    });
  } catch {
    // Nothing was kept then.
  }
}
