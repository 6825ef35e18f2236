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

/** What could not be used, counted by source, reason and day, with the newest as an example. */
export function refusalsIn(db: Db) {
  const add = db.prepare(
    `INSERT INTO refusals (source, reason, day, n, last, last_at) VALUES (?, ?, ?, 1, ?, ?)
     ON CONFLICT (source, reason, day) DO UPDATE SET n = n + 1, last = excluded.last,
       last_at = excluded.last_at`,
  );
  const since = db.prepare<[string], RefusalCount>(
    `SELECT source, reason, sum(n) AS count, max(last_at) AS lastAt,
       (SELECT last FROM refusals r WHERE r.source = o.source AND r.reason = o.reason
        ORDER BY last_at DESC LIMIT 1) AS last
     FROM refusals o WHERE day >= ? GROUP BY source, reason ORDER BY source, reason`,
  );
  return {
    add: (refusal: Refusal, day: string) =>
      add.run(refusal.source, refusal.reason, day, refusal.sentence, refusal.t),
    /** Counts from this day of the farm on. */
    since: (day: string) => since.all(day),
  };
}
