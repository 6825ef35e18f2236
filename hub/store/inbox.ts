import type { Db } from './open.ts';
import type { Probes } from './probes.ts';
import type { Amendment, Readings, StoredReading } from './readings.ts';
import type { Refusal, Refusals } from './refusals.ts';

const HOUR = 3_600_000; // ms
/** Readings go to their places when this many wait, or when the first has waited this long. Ours:
 *  the longer they wait, the more of them share a page; a start after a power cut takes longer. */
const MOST = 40_000;
const LONGEST = 6 * HOUR;
/** More than this at once is an import: it fills pages by itself. Ours. */
const DIRECT = 1000;

/** Who was heard, to be written down with the rest. */
export type Heard = { readonly probe: string; readonly everyMs: number; readonly at: number };
/** All that one commit of the intake keeps. */
export type Batch = {
  readonly readings: readonly StoredReading[];
  readonly amendments: readonly Amendment[];
  readonly refusals: readonly Refusal[];
  readonly heard: readonly Heard[];
};

/** A row's JSON: readings as [series, ms after t, value, raw, flag], the last two only when needed. */
type Body = {
  readonly t: number;
  readonly r: readonly (readonly [
    number,
    number,
    number,
    (number | null | undefined)?,
    (string | null | undefined)?,
  ])[];
  readonly a?: readonly Amendment[];
  readonly x?: readonly Refusal[];
  readonly h?: readonly Heard[];
};

/**
 * What came in and waits to be put in its place. One small row a commit; until they are put away,
 * readings are held in memory too, where every query looks. Putting away twice changes nothing.
 */
export function inboxIn(db: Db, parts: { readings: Readings; refusals: Refusals; probes: Probes }) {
  const { readings, refusals, probes } = parts;
  const insert = db.prepare('INSERT INTO inbox (body) VALUES (?)');
  const rows = db.prepare<[], { body: string }>('SELECT body FROM inbox ORDER BY id');
  const any = db.prepare<[], { one: number }>('SELECT 1 AS one FROM inbox LIMIT 1');
  let waiting = 0;
  let since: number | null = null;

  return {
    /** Keeps a batch, inside the caller's transaction. */
    keep({ readings: all, amendments, refusals: refused, heard }: Batch, now: number) {
      readings.lookRound();
      if (all.length > DIRECT) {
        readings.add(all);
        readings.amend(amendments);
        for (const refusal of refused) refusals.add(refusal);
        for (const { probe, everyMs, at } of heard) probes.heard(probe, everyMs, at);
        return;
      }
      const base = all[0]?.t ?? 0;
      const r = all.flatMap((reading): Body['r'] => {
        const id = readings.wait(reading);
        if (id === null) return [];
        const { t, value, raw, flag } = reading;
        if (flag !== null) return [[id, t - base, value, raw, flag]];
        return [raw === null ? [id, t - base, value] : [id, t - base, value, raw]];
      });
      readings.amend(amendments);
      for (const refusal of refused) refusals.wait(refusal);
      if (r.length + amendments.length + refused.length + heard.length === 0) return;
      const body: Body = {
        t: base,
        r,
        ...(amendments.length > 0 ? { a: amendments } : {}),
        ...(refused.length > 0 ? { x: refused } : {}),
        ...(heard.length > 0 ? { h: heard } : {}),
      };
      insert.run(JSON.stringify(body));
      waiting += r.length;
      since ??= now;
    },
    isDue: (now: number) => waiting >= MOST || (since !== null && Math.abs(now - since) >= LONGEST),
    isEmpty: () => any.get() === undefined,
    /** Puts all of it in its place, inside the caller's transaction; marks its hours stale. */
    pour() {
      readings.lookRound();
      for (const { body } of rows.all()) {
        const { t: base, r, a = [], x = [], h = [] }: Body = JSON.parse(body);
        for (const [id, after, value, raw, flag] of r)
          readings.settle(id, base + after, value, raw ?? null, flag ?? null);
        readings.amend(a);
        for (const refusal of x) refusals.add(refusal);
        for (const { probe, everyMs, at } of h) probes.heard(probe, everyMs, at);
      }
      db.exec('DELETE FROM inbox; DELETE FROM temp.fresh; DELETE FROM temp.fresh_refusals');
    },
    /** After pouring was committed. */
    emptied() {
      waiting = 0;
      since = null;
    },
  };
}
export type Inbox = ReturnType<typeof inboxIn>;
