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
  const add = db.prepare(
    `INSERT INTO refusals (source, reason, hour, n, last, last_at) VALUES (?, ?, ?, ?, ?, ?)
     ON CONFLICT (source, reason, hour) DO UPDATE SET n = n + excluded.n, last = excluded.last,
       last_at = excluded.last_at`,
  );
  const since = db.prepare<[number], RefusalCount>(
    `SELECT source, reason, sum(n) AS count, max(last_at) AS lastAt,
       (SELECT last FROM refusals r WHERE r.source = o.source AND r.reason = o.reason
        ORDER BY last_at DESC LIMIT 1) AS last
     FROM refusals o WHERE hour >= ? GROUP BY source, reason ORDER BY source, reason`,
  );
  const inHour = db.prepare<[number], { source: string; reason: string }>(
    'SELECT source, reason FROM refusals WHERE hour = ?',
  );
  const forget = db.prepare('DELETE FROM refusals WHERE hour < ?');
  return {
    add: ({ source, reason, sentence, t, n = 1 }: Refusal) =>
      add.run(source, reason, Math.floor(t / HOUR) * HOUR, n, sentence, t),
    /** Sources and reasons counted in the hour of this moment. */
    inHour: (t: number) => inHour.all(Math.floor(t / HOUR) * HOUR),
    forgetBefore: (t: number) => forget.run(t),
    /** Counts from about this moment on: from the hour it falls in. */
    since: (t: number) => since.all(Math.floor(t / HOUR) * HOUR),
  };
}
