import type { Db } from './open.ts';

const HOUR = 3_600_000; // ms

/** One value on its way in. `value` has the probe's correction in it. */
export type StoredReading = {
  readonly probe: string;
  readonly quantity: string;
  readonly t: number;
  readonly value: number;
  /** As sent, in the same unit; null when equal to `value`. */
  readonly raw: number | null;
  readonly flag: string | null;
};

/** A later look at readings already stored: from `from` to `to` they get this flag, or lose theirs. */
export type Amendment = {
  readonly probe: string;
  readonly quantity: string;
  readonly from: number;
  readonly to: number;
  readonly flag: string | null;
  /** Only readings that have this flag now (null: none). */
  readonly was: string | null;
};

export type Point = { readonly t: number; readonly value: number };
export type RawPoint = Point & { readonly raw: number | null; readonly flag: string | null };

/** Readings, once each by (probe, quantity, time). */
export function readingsIn(db: Db) {
  const ids = new Map<string, number>();
  const findSeries = db.prepare<[string, string], { id: number }>(
    'SELECT id FROM series WHERE probe = ? AND quantity = ?',
  );
  const addSeries = db.prepare('INSERT INTO series (probe, quantity) VALUES (?, ?)');
  // Not INSERT OR IGNORE: that would also swallow a NOT NULL failure, and the reading with it.
  const insert = db.prepare(
    `INSERT INTO readings (series_id, t, value, raw, flag) VALUES (?, ?, ?, ?, ?)
     ON CONFLICT (series_id, t) DO NOTHING`,
  );
  const setFlag = db.prepare(
    'UPDATE readings SET flag = ? WHERE series_id = ? AND t BETWEEN ? AND ? AND flag IS ?',
  );
  const markStale = db.prepare(
    'INSERT INTO stale_hours (series_id, t) VALUES (?, ?) ON CONFLICT DO NOTHING',
  );
  const good = db.prepare<[number, number, number], Point>(
    'SELECT t, value FROM readings WHERE series_id = ? AND t >= ? AND t < ? AND flag IS NULL ORDER BY t',
  );
  const all = db.prepare<[number, number, number], RawPoint>(
    'SELECT t, value, raw, flag FROM readings WHERE series_id = ? AND t >= ? AND t < ? ORDER BY t',
  );
  const newest = db.prepare<[number], RawPoint>(
    'SELECT t, value, raw, flag FROM readings WHERE series_id = ? ORDER BY t DESC LIMIT 1',
  );
  const oldest = db.prepare<[number], { t: number }>(
    'SELECT t FROM readings WHERE series_id = ? ORDER BY t LIMIT 1',
  );
  const quantitiesOf = db.prepare<[string], { quantity: string }>(
    'SELECT quantity FROM series WHERE probe = ? ORDER BY quantity',
  );

  const idOf = (probe: string, quantity: string): number | undefined => {
    const key = `${probe}\n${quantity}`;
    const known = ids.get(key);
    if (known !== undefined) return known;
    const id = findSeries.get(probe, quantity)?.id;
    if (id !== undefined) ids.set(key, id);
    return id;
  };
  const ensure = (probe: string, quantity: string): number => {
    const known = idOf(probe, quantity);
    if (known !== undefined) return known;
    return Number(addSeries.run(probe, quantity).lastInsertRowid);
  };
  // Hours marked in this process and not folded since: saves a write per reading, nothing more.
  const marked = new Set<string>();
  // Changes when another process (an import, say) has written: it may have folded our marks.
  const otherWrites = db.prepare('PRAGMA data_version').pluck();
  let seen = otherWrites.get();
  const mark = (id: number, t: number) => {
    const hour = Math.floor(t / HOUR) * HOUR;
    const key = `${id}:${hour}`;
    if (marked.has(key)) return;
    markStale.run(id, hour);
    marked.add(key);
  };

  return {
    idOf,
    /** Stores what is new of these, inside the caller's transaction; returns how many were new. */
    add(readings: readonly StoredReading[]): number {
      let added = 0;
      const writes = otherWrites.get();
      if (writes !== seen) marked.clear();
      seen = writes;
      for (const { probe, quantity, t, value, raw, flag } of readings) {
        const id = ensure(probe, quantity);
        if (insert.run(id, t, value, raw, flag).changes === 0) continue;
        added++;
        mark(id, t);
      }
      return added;
    },
    amend(amendments: readonly Amendment[]) {
      for (const { probe, quantity, from, to, flag, was } of amendments) {
        const id = idOf(probe, quantity);
        if (id === undefined) continue;
        if (setFlag.run(flag, id, from, to, was).changes === 0) continue;
        for (let t = Math.floor(from / HOUR) * HOUR; t <= to; t += HOUR) mark(id, t);
      }
    },
    /** After a failed transaction, or a fold: what was marked may no longer be in the store. */
    forgetMarks() {
      marked.clear();
      ids.clear();
    },
    /** Good readings with from <= t < to, oldest first. */
    between: (probe: string, quantity: string, from: number, to: number): Point[] => {
      const id = idOf(probe, quantity);
      return id === undefined ? [] : good.all(id, from, to);
    },
    /** The same with the doubtful ones. */
    allBetween: (probe: string, quantity: string, from: number, to: number): RawPoint[] => {
      const id = idOf(probe, quantity);
      return id === undefined ? [] : all.all(id, from, to);
    },
    newest: (probe: string, quantity: string): RawPoint | undefined => {
      const id = idOf(probe, quantity);
      return id === undefined ? undefined : newest.get(id);
    },
    oldestAt: (probe: string, quantity: string): number | undefined => {
      const id = idOf(probe, quantity);
      return id === undefined ? undefined : oldest.get(id)?.t;
    },
    quantitiesOf: (probe: string): string[] =>
      quantitiesOf.all(probe).map(({ quantity }) => quantity),
  };
}
