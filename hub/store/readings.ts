import type { Db } from './open.ts';
import { touchedIn } from './touched.ts';

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

type Twice = [number, number, number, number, number, number];
export type Point = { readonly t: number; readonly value: number };
export type RawPoint = Point & { readonly raw: number | null; readonly flag: string | null };

/** Readings in their places and those still in the inbox, each once. What stands for `?` in `where`
 *  is given twice. */
export const everywhere = (columns: string, where: string) =>
  `SELECT ${columns} FROM main.readings AS r WHERE ${where}
   UNION ALL SELECT ${columns} FROM temp.fresh AS r WHERE ${where} AND NOT EXISTS
     (SELECT 1 FROM main.readings AS o WHERE o.series_id = r.series_id AND o.t = r.t)`;

/** Readings, once each by (probe, quantity, time). */
export function readingsIn(db: Db) {
  const ids = new Map<string, number>();
  const touched = touchedIn();
  const findSeries = db.prepare<[string, string], { id: number }>(
    'SELECT id FROM series WHERE probe = ? AND quantity = ?',
  );
  const addSeries = db.prepare('INSERT INTO series (probe, quantity) VALUES (?, ?)');
  // Not INSERT OR IGNORE: that would also swallow a NOT NULL failure, and the reading with it.
  const insertInto = (table: string, unless: string) =>
    db.prepare(
      `INSERT INTO ${table} (series_id, t, value, raw, flag) SELECT ?, ?, ?, ?, ?
       WHERE NOT EXISTS (SELECT 1 FROM ${unless} WHERE series_id = ? AND t = ?)
       ON CONFLICT (series_id, t) DO NOTHING`,
    );
  const insert = insertInto('main.readings', 'temp.fresh');
  const wait = insertInto('temp.fresh', 'main.readings');
  const settle = db.prepare(
    `INSERT INTO main.readings (series_id, t, value, raw, flag) VALUES (?, ?, ?, ?, ?)
     ON CONFLICT (series_id, t) DO NOTHING`,
  );
  const flagIn = (table: string) =>
    db.prepare(
      `UPDATE ${table} SET flag = ? WHERE series_id = ? AND t BETWEEN ? AND ? AND flag IS ?`,
    );
  const setFlag = flagIn('main.readings');
  const setFreshFlag = flagIn('temp.fresh');
  const markStale = db.prepare(
    'INSERT INTO stale_hours (series_id, t) VALUES (?, ?) ON CONFLICT DO NOTHING',
  );
  const stretch = 'r.series_id = ? AND r.t >= ? AND r.t < ?';
  const good = db.prepare<Twice, Point>(
    `${everywhere('r.t, r.value', `${stretch} AND r.flag IS NULL`)} ORDER BY t`,
  );
  const all = db.prepare<Twice, RawPoint>(
    `${everywhere('r.t, r.value, r.raw, r.flag', stretch)} ORDER BY t`,
  );
  const end = (table: string, order: string) =>
    `SELECT * FROM (SELECT t, value, raw, flag FROM ${table} WHERE series_id = ? ORDER BY t ${order} LIMIT 1)`;
  const newest = db.prepare<[number, number], RawPoint>(
    `${end('main.readings', 'DESC')} UNION ALL ${end('temp.fresh', 'DESC')} ORDER BY t DESC LIMIT 1`,
  );
  // Hours stay when their readings are let go of, so they know how far back it goes.
  const oldest = db.prepare<[number, number, number], { t: number | null }>(
    `SELECT min(t) AS t FROM (${end('main.readings', '')} UNION ALL ${end('temp.fresh', '')}
     UNION ALL SELECT * FROM (SELECT t, 0, 0, 0 FROM hours WHERE series_id = ? AND t <
       (SELECT from_t FROM raw_kept) ORDER BY t LIMIT 1))`,
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
  const lookRound = () => {
    const writes = otherWrites.get();
    if (writes !== seen) marked.clear();
    seen = writes;
  };
  /** In their places and in the inbox. */
  const amend = (amendments: readonly Amendment[]) => {
    for (const { probe, quantity, from, to, flag, was } of amendments) {
      const id = idOf(probe, quantity);
      if (id === undefined) continue;
      if (setFreshFlag.run(flag, id, from, to, was).changes > 0) touched.add(probe, from, to + 1);
      if (setFlag.run(flag, id, from, to, was).changes === 0) continue;
      for (let t = Math.floor(from / HOUR) * HOUR; t <= to; t += HOUR) mark(id, t);
    }
  };

  return {
    idOf,
    ensure,
    amend,
    touched,
    /** Stores what is new of these, inside the caller's transaction; returns how many were new. */
    add(readings: readonly StoredReading[]): number {
      let added = 0;
      lookRound();
      for (const { probe, quantity, t, value, raw, flag } of readings) {
        const id = ensure(probe, quantity);
        if (insert.run(id, t, value, raw, flag, id, t).changes === 0) continue;
        added++;
        mark(id, t);
      }
      return added;
    },
    /** Takes one into memory, for the inbox. @returns the number of its series; null: not new. */
    wait({ probe, quantity, t, value, raw, flag }: StoredReading): number | null {
      const id = ensure(probe, quantity);
      if (wait.run(id, t, value, raw, flag, id, t).changes === 0) return null;
      touched.add(probe, t, t + 1);
      return id;
    },
    /** Puts one of the inbox in its place. */
    settle(id: number, t: number, value: number, raw: number | null, flag: string | null) {
      if (settle.run(id, t, value, raw, flag).changes > 0) mark(id, t);
    },
    lookRound,
    /** After a failed transaction, or a fold: what was marked may no longer be in the store. */
    forgetMarks() {
      marked.clear();
      ids.clear();
    },
    /** Good readings with from <= t < to, oldest first. */
    between: (probe: string, quantity: string, from: number, to: number): Point[] => {
      const id = idOf(probe, quantity);
      return id === undefined ? [] : good.all(id, from, to, id, from, to);
    },
    /** The same with the doubtful ones. */
    allBetween: (probe: string, quantity: string, from: number, to: number): RawPoint[] => {
      const id = idOf(probe, quantity);
      return id === undefined ? [] : all.all(id, from, to, id, from, to);
    },
    newest: (probe: string, quantity: string): RawPoint | undefined => {
      const id = idOf(probe, quantity);
      return id === undefined ? undefined : newest.get(id, id);
    },
    /** When the first was taken, also where only its hour is still known. */
    oldestAt: (probe: string, quantity: string): number | undefined => {
      const id = idOf(probe, quantity);
      return id === undefined ? undefined : (oldest.get(id, id, id)?.t ?? undefined);
    },
    quantitiesOf: (probe: string): string[] =>
      quantitiesOf.all(probe).map(({ quantity }) => quantity),
  };
}
export type Readings = ReturnType<typeof readingsIn>;
