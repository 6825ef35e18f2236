import type { Db } from './open.ts';

export type Refusal = {
  /** The probe, or the topic where no probe could be named. */
  readonly source: string;
  readonly reason: string;
  /** Field, value and what was expected, in one sentence. */
  readonly sentence: string;
  readonly t: number;
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
      `INSERT INTO ${table} (source, reason, hour, n, last, last_at) VALUES (?, ?, ?, 1, ?, ?)
       ON CONFLICT (source, reason, hour) DO UPDATE SET n = n + 1, last = excluded.last,
         last_at = excluded.last_at`,
    );
    return ({ source, reason, sentence, t }: Refusal) =>
      add.run(source, reason, Math.floor(t / HOUR) * HOUR, sentence, t);
  };
  // A plain `last` beside max(): SQLite takes it from the row that has the maximum.
  const since = db.prepare<[number, number], RefusalCount>(
    `SELECT source, reason, sum(n) AS count, max(last_at) AS lastAt, last
     FROM (SELECT * FROM main.refusals WHERE hour >= ?
       UNION ALL SELECT * FROM temp.fresh_refusals WHERE hour >= ?)
     GROUP BY source, reason ORDER BY source, reason`,
  );
  return {
    add: addTo('main.refusals'),
    /** Counted in memory, for the inbox. */
    wait: addTo('temp.fresh_refusals'),
    /** Counts from about this moment on: from the hour it falls in. */
    since(t: number): RefusalCount[] {
      const hour = Math.floor(t / HOUR) * HOUR;
      return since.all(hour, hour);
    },
  };
}
export type Refusals = ReturnType<typeof refusalsIn>;
