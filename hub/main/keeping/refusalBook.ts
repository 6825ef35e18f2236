import type { Refusal, Store } from '../../store/index.ts';

/** Different sources and reasons told apart within one hour; more are counted together. Ours. */
const MOST = 300;
/** Whose name is then told. */
const OTHERS = '(others)';
const HOUR = 3_600_000; // ms
/** How long counts are kept. Ours: a month shows what comes and goes. */
const KEPT = 31 * 24 * HOUR;

/** Counts what was refused, in so many rows an hour and no more, whatever names somebody invents. */
export function refusalBook(store: Store) {
  let hour = Number.NaN;
  let known = new Set<string>();
  /** What waits to be written down, all of one source and reason in one go. */
  const waiting = new Map<string, Refusal & { n: number }>();

  /** @param mine of a probe the hub knows: always told apart. */
  const named = (refusal: Refusal, mine: boolean): Refusal => {
    const at = Math.floor(refusal.t / HOUR) * HOUR;
    if (at !== hour) {
      hour = at;
      known = new Set(
        store.refusals.inHour(at).map(({ source, reason }) => `${source}\n${reason}`),
      );
      store.refusals.forgetBefore(at - KEPT);
    }
    const key = `${refusal.source}\n${refusal.reason}`;
    if (!mine && !known.has(key) && known.size >= MOST) return { ...refusal, source: OTHERS };
    known.add(key);
    return refusal;
  };

  return {
    named,
    /** Later, with others: what comes in floods is not worth a commit each. */
    note(refusal: Refusal) {
      const key = `${refusal.source}\n${refusal.reason}`;
      const before = waiting.get(key);
      if (before) waiting.set(key, { ...refusal, n: before.n + 1 });
      else if (waiting.size < MOST) waiting.set(key, { ...refusal, n: 1 });
      else {
        const others = waiting.get(OTHERS);
        waiting.set(OTHERS, { ...refusal, source: OTHERS, n: (others?.n ?? 0) + 1 });
      }
    },
    write() {
      if (waiting.size === 0) return;
      store.transaction(() => {
        for (const refusal of waiting.values()) store.refusals.add(named(refusal, false));
      });
      waiting.clear();
    },
  };
}
