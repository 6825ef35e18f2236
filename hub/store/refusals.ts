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
  const add = db.prepare(
    `INSERT INTO refusals (source, reason, hour, n, last, last_at) VALUES (?, ?, ?, 1, ?, ?)
     ON CONFLICT (source, reason, hour) DO UPDATE SET n = n + 1, last = excluded.last,
       last_at = excluded.last_at`,
  );
  const since = db.prepare<[number], RefusalCount>(
    `SELECT source, reason, sum(n) AS count, max(last_at) AS lastAt,
       (SELECT last FROM refusals r WHERE r.source = o.source AND r.reason = o.reason
        ORDER BY last_at DESC LIMIT 1) AS last
     FROM refusals o WHERE hour >= ? GROUP BY source, reason ORDER BY source, reason`,
  );
  return {
    add: ({ source, reason, sentence, t }: Refusal) =>
      add.run(source, reason, Math.floor(t / HOUR) * HOUR, sentence, t),
    /** Counts from about this moment on: from the hour it falls in. */
    since: (t: number) => since.all(Math.floor(t / HOUR) * HOUR),
  };
}
