import type { Logger } from 'pino';
import type { Clock } from '../../clock.ts';
import { type Mended, mendFile, type Store, type Trouble } from '../../store/index.ts';
import { storeAlarm, storeTrouble } from '../../words/index.ts';
import type { Feed } from './feed.ts';

const CHECK_EVERY = 1000; // ms
/** Tried again this often while nothing can be kept. Ours. */
const TRY_EVERY = 5000; // ms
/** A store that is damaged again so soon after it was mended lies on a broken card. Ours. */
const MEND_AGAIN = 600_000; // ms

export type WatchParts = {
  readonly store: Store;
  readonly clock: Clock;
  readonly log: Logger;
  readonly feed: Feed;
  readonly look: () => void;
  /** Folder of backups, or null. */
  readonly backups: string | null;
};

/** For the name of a damaged file that is moved aside. */
export const stampOf = (now: number) =>
  new Date(now).toISOString().slice(0, 19).replaceAll(':', '-');

/** What was mended, in the record and in the log. */
export function recordMended(store: Store, log: Logger, mended: Mended, now: number) {
  log.error(mended, 'the store was damaged: it was moved aside, and mended');
  const subject = null;
  store.journal.add({ t: now, who: 'hub', what: 'store', place: null, subject, body: mended });
}

/** Tells when the store cannot keep anything, and when it can again; tries to help it meanwhile. */
export function watchStore({ store, clock, log, feed, look, backups }: WatchParts) {
  let told: { readonly what: Trouble; readonly since: number } | null = null;
  let triedAt = Number.NEGATIVE_INFINITY;
  let mendedAt = Number.NEGATIVE_INFINITY;
  let busy = false;

  const say = (what: Trouble, since: number, clearedAt: number | null) => {
    const words = `${storeTrouble[what]} ${storeAlarm}`;
    feed.tell('alarm', { id: 'store', place: '', kind: 'store', since, words, clearedAt });
  };
  const tell = () => {
    const what = store.trouble();
    if (what === (told?.what ?? null)) return;
    const now = clock.now();
    if (what === null && told) {
      say(told.what, told.since, now);
      log.warn('the store keeps things again');
      told = null;
    } else if (what !== null) {
      told = { what, since: told?.since ?? now };
      log.error({ trouble: what }, 'the store cannot keep anything');
      say(what, told.since, null);
    }
    feed.tell('store', what);
  };
  const help = async () => {
    const real = performance.now();
    if (real - triedAt < TRY_EVERY) return;
    triedAt = real;
    if (store.trouble() === 'damaged' && real - mendedAt < MEND_AGAIN) return;
    const mended = await store.recover(() => {
      mendedAt = real;
      return mendFile(store.path, backups, stampOf(clock.now()));
    });
    if (mended) recordMended(store, log, mended, clock.now());
    tell();
    if (store.trouble() === null) look();
  };
  const turn = async () => {
    if (busy) return;
    busy = true;
    try {
      store.isThere();
      tell();
      if (store.trouble() !== null) await help();
    } catch (error) {
      log.error(error, 'the store could not be helped');
    } finally {
      busy = false;
    }
  };
  const timer = setInterval(turn, CHECK_EVERY);
  return {
    /** To a broker that may be a new one. */
    sayAgain: () => told && say(told.what, told.since, null),
    stop: () => clearInterval(timer),
  };
}
