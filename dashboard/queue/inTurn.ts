import { makeKey } from '../makeKey.ts';
import { within } from './database.ts';

// One tab sends at a time, so that what was said first is entered first. Web Locks (W3C) where the browser
// has them: only over https or on the hub itself. Elsewhere a mark in the database, which a tab that
// was closed leaves behind, and which counts for a while only. Neither guards against entering twice:
// that the hub does, by the keys.

const NAME = 'dewpost sending';
export const TAB = makeKey();
/** Longer than any one request may take. */
const LEASE = 40_000; // ms
const PAUSE = 300; // ms

type Mark = { readonly name: string; readonly tab: string; readonly until: number };
const pause = (ms: number) => new Promise((done) => setTimeout(done, ms));

type Work<Result> = (goesOn: () => Promise<void>) => Promise<Result>;
let last: Promise<unknown> = Promise.resolve();

/** Waits until nothing else sends, here or in another tab; `work` is told how to say that it goes on. */
export function inTurn<Result>(work: Work<Result>): Promise<Result> {
  const mine = last.then(() => amongTabs(work));
  last = mine.catch(() => {});
  return mine;
}

async function amongTabs<Result>(work: Work<Result>): Promise<Result> {
  const locks: LockManager | undefined = navigator.locks;
  if (locks !== undefined) return locks.request(NAME, () => work(async () => {}));
  while (!(await taken())) await pause(PAUSE);
  try {
    return await work(async () => {
      await taken();
    });
  } finally {
    await leave();
  }
}

const taken = () =>
  within<boolean>('turn', 'readwrite', (store, done) => {
    const asked: IDBRequest<Mark | undefined> = store.get(NAME);
    asked.onsuccess = () => {
      const { result } = asked;
      const free = result === undefined || result.tab === TAB || result.until < Date.now();
      if (free) store.put({ name: NAME, tab: TAB, until: Date.now() + LEASE } satisfies Mark);
      done(free);
    };
  });

const leave = () =>
  within<undefined>('turn', 'readwrite', (store) => {
    const asked: IDBRequest<Mark | undefined> = store.get(NAME);
    asked.onsuccess = () => {
      if (asked.result?.tab === TAB) store.delete(NAME);
    };
  });
