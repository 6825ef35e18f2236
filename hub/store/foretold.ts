import type { Db } from './open.ts';

export type ForetoldRow = {
  readonly source: string;
  readonly quantity: string;
  readonly issuedAt: number;
  readonly t: number;
  readonly value: number;
};
type Value = { readonly t: number; readonly value: number };

/** An issue older than this teaches nothing any more: the record of a source is sixty nights. Ours. */
const KEPT = 100 * 86_400_000; // ms

/** Forecasts as they were pushed: every issue, never overwritten by the next. */
export function foretoldIn(db: Db) {
  const insert = db.prepare(
    `INSERT INTO foretold (source, quantity, issued_at, t, value) VALUES (?, ?, ?, ?, ?)
     ON CONFLICT (source, quantity, issued_at, t) DO UPDATE SET value = excluded.value`,
  );
  const prune = db.prepare('DELETE FROM foretold WHERE issued_at < ?');
  const sources = db
    .prepare<[], string>('SELECT DISTINCT source FROM foretold ORDER BY source')
    .pluck();
  const newestIssue = db
    .prepare<[string, string, number], number | null>(
      `SELECT max(issued_at) FROM foretold WHERE source = ? AND quantity = ? AND issued_at <= ?`,
    )
    .pluck();
  const values = db.prepare<[string, string, number], Value>(
    `SELECT t, value FROM foretold WHERE source = ? AND quantity = ? AND issued_at = ? ORDER BY t`,
  );
  /** Counts changes, so that what was made of the issues is made again. */
  let version = 0;
  return {
    version: () => version,
    add(rows: readonly ForetoldRow[]) {
      version++;
      let newest = 0;
      for (const { source, quantity, issuedAt, t, value } of rows) {
        insert.run(source, quantity, issuedAt, t, value);
        newest = Math.max(newest, issuedAt);
      }
      prune.run(newest - KEPT);
    },
    sources: (): string[] => sources.all(),
    /** The newest issue by `at`, with its values in order of time; undefined when there was none. */
    issueBy(source: string, quantity: string, at: number) {
      const issuedAt = newestIssue.get(source, quantity, at) ?? null;
      if (issuedAt === null) return undefined;
      return { issuedAt, values: values.all(source, quantity, issuedAt) };
    },
  };
}
