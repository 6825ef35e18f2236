import type { Db } from './open.ts';

export type Refusal = {
  /** The probe, or the topic where no probe could be named. */
  readonly source: string;
  readonly reason: string;
  /** Field, value and what was expected, in one sentence. */
  readonly sentence: string;
  readonly t: number;
  /** How many of them; 1 where nothing is said. */
  readonly n?: number;
};
export type RefusalCount = {
  readonly source: string;
  readonly reason: string;
  readonly count: number;
  readonly last: string;
  readonly lastAt: number;
};

const HOUR = 3_600_000; // ms

/** What could not be used, counted by source, reason and hour, with the newest as an example. */
export function refusalsIn(db: Db) {
  const addTo = (table: string) => {
    const add = db.prepare(
      `INSERT INTO ${table} (source, reason, hour, n, last, last_at) VALUES (?, ?, ?, ?, ?, ?)
       ON CONFLICT (source, reason, hour) DO UPDATE SET n = n + excluded.n, last = excluded.last,
         last_at = excluded.last_at`,
    );
    return ({ source, reason, sentence, t, n = 1 }: Refusal) =>
      add.run(source, reason, Math.floor(t / HOUR) * HOUR, n, sentence, t);
  };
  // A plain `last` beside max(): SQLite takes it from the row that has the maximum.
  const since = db.prepare<[number, number], RefusalCount>(
    `SELECT source, reason, sum(n) AS count, max(last_at) AS lastAt, last
     FROM (SELECT * FROM main.refusals WHERE hour >= ?
       UNION ALL SELECT * FROM temp.fresh_refusals WHERE hour >= ?)
     GROUP BY source, reason ORDER BY source, reason`,
  );
  const inHour = db.prepare<[number, number], { source: string; reason: string }>(
    `SELECT source, reason FROM main.refusals WHERE hour = ?
     UNION SELECT source, reason FROM temp.fresh_refusals WHERE hour = ?`,
  );
  const forget = db.prepare('DELETE FROM main.refusals WHERE hour < ?');
  return {
    add: addTo('main.refusals'),
    /** Counted in memory, for the inbox. */
    wait: addTo('temp.fresh_refusals'),
    /** Sources and reasons counted in the hour of this moment. */
    inHour(t: number) {
      const hour = Math.floor(t / HOUR) * HOUR;
      return inHour.all(hour, hour);
    },
    forgetBefore: (t: number) => forget.run(t),
    /** Counts from about this moment on: from the hour it falls in. */
    since(t: number): RefusalCount[] {
      const hour = Math.floor(t / HOUR) * HOUR;
      return since.all(hour, hour);
    },
  };
}
export type Refusals = ReturnType<typeof refusalsIn>;
