import type { Db } from './open.ts';

/** Readings let go of in one slice, and pages given back to the card: a few ms each. Ours. */
const SLICE = 2000;
const PAGES = 200;

/** Lets go of old readings, bit by bit; roll-ups, days, nights and the record stay for ever. */
export function trimIn(db: Db) {
  const kept = db.prepare<[], { from: number; firstDay: string }>(
    'SELECT from_t AS "from", first_day AS firstDay FROM raw_kept',
  );
  const keep = db.prepare(
    `INSERT INTO raw_kept (only_one, from_t, first_day) VALUES (1, ?, ?)
     ON CONFLICT (only_one) DO UPDATE SET from_t = max(from_t, excluded.from_t),
       first_day = max(first_day, excluded.first_day)`,
  );
  const series = db.prepare<[], number>('SELECT id FROM series ORDER BY id').pluck();
  // Not an hour that waits to be folded: its roll-up still needs its readings.
  const last = db
    .prepare<[number, number, number], number>(
      `SELECT t FROM main.readings WHERE series_id = ? AND t < ? ORDER BY t LIMIT 1 OFFSET ?`,
    )
    .pluck();
  const staleBefore = db
    .prepare<[number, number], number>(
      'SELECT min(t) FROM stale_hours WHERE series_id = ? AND t < ?',
    )
    .pluck();
  const drop = db.prepare('DELETE FROM main.readings WHERE series_id = ? AND t < ?');
  return {
    kept: () => kept.get() ?? null,
    /**
     * Readings before this may go; facts of days before `firstDay` stay as they are from now on.
     *
     * @param from start of an hour, ms.
     */
    letGo: (from: number, firstDay: string) => keep.run(from, firstDay),
    /** One slice. @returns whether there may be more. */
    slice(): boolean {
      const from = kept.get()?.from;
      if (from === undefined) return false;
      for (const id of series.all()) {
        const until = staleBefore.get(id, from) ?? from;
        const reach = last.get(id, until, SLICE) ?? until;
        if (drop.run(id, reach).changes > 0) return true;
      }
      return false;
    },
    /** Gives freed pages back to the card. @returns whether there may be more. */
    shrink(): boolean {
      const free = db.pragma('freelist_count', { simple: true }) as number;
      const mode = db.pragma('auto_vacuum', { simple: true }) as number;
      if (free === 0 || mode !== 2) return false; // an older file keeps the room for new readings
      db.pragma(`incremental_vacuum(${PAGES})`);
      return free > PAGES;
    },
  };
}
