import type Database from 'better-sqlite3';
import type { Noted } from './publishers.ts';

// What a store must never show, whatever happened to its hub. Each fault is one sentence.

const HOUR = 3_600_000;
const few = (faults: readonly string[]) => faults.slice(0, 10);

/** Every acknowledged reading is there exactly once, with its value. */
export function lostReadings(db: Database.Database, acknowledged: readonly Noted[]): string[] {
  const find = db.prepare<[string, string, number], { sent: number }>(
    `SELECT coalesce(raw, value) AS sent FROM readings JOIN series ON series.id = series_id
     WHERE probe = ? AND quantity = ? AND t = ?`,
  );
  return few(
    acknowledged.flatMap(({ probe, quantity, t, value }) => {
      const rows = find.all(probe, quantity, t);
      return rows.length === 1 && rows[0]?.sent === value
        ? []
        : [`${probe} ${quantity} at ${t}: sent ${value}, kept ${JSON.stringify(rows)}`];
    }),
  );
}

/** The file is sound, and hours agree with the readings they were made of. */
export function brokenStore(db: Database.Database): string[] {
  const faults: string[] = [];
  const found = db.pragma('integrity_check', { simple: true });
  if (found !== 'ok') faults.push(`integrity: ${found}`);
  if ((db.pragma('foreign_key_check') as unknown[]).length > 0) faults.push('foreign keys');
  const list = (what: string, sql: string) => {
    for (const row of db.prepare(`${sql} LIMIT 5`).all())
      faults.push(`${what}: ${JSON.stringify(row)}`);
  };
  list('readings still in the inbox', 'SELECT id FROM inbox');
  list(
    'an hour that does not agree with its readings',
    `SELECT h.series_id, h.t, h.n, count(r.t) AS really FROM hours h
     LEFT JOIN readings r ON r.series_id = h.series_id AND r.t >= h.t AND r.t < h.t + ${HOUR}
       AND r.flag IS NULL
     WHERE NOT EXISTS (SELECT 1 FROM stale_hours s WHERE s.series_id = h.series_id AND s.t = h.t)
     GROUP BY h.series_id, h.t
     HAVING h.n <> count(r.t) OR h.min <> min(r.value) OR h.max <> max(r.value)`,
  );
  list(
    'readings that no hour knows of',
    `SELECT series_id, t FROM readings r WHERE flag IS NULL
     AND NOT EXISTS (SELECT 1 FROM hours h WHERE h.series_id = r.series_id AND h.t = r.t / ${HOUR} * ${HOUR})
     AND NOT EXISTS (SELECT 1 FROM stale_hours s WHERE s.series_id = r.series_id AND s.t = r.t / ${HOUR} * ${HOUR})`,
  );
  return faults;
}

/** No task stands twice or was opened before it ended; no alarm was raised twice. */
export function doubledTasks(db: Database.Database): {
  readonly faults: readonly string[];
  readonly opened: number;
  readonly alarms: number;
} {
  const faults: string[] = [];
  const open = new Set<string>();
  let opened = 0;
  const events = db
    .prepare<[], { key: string; event: string }>(
      `SELECT tasks.key, json_extract(journal.body, '$.event') AS event
       FROM journal JOIN tasks ON tasks.id = journal.subject WHERE what = 'task' ORDER BY journal.id`,
    )
    .all();
  for (const { key, event } of events) {
    if (event === 'opened' && open.has(key)) faults.push(`${key} opened twice`);
    if (event !== 'opened' && !open.has(key)) faults.push(`${key} ${event} while it was not open`);
    if (event === 'opened') {
      open.add(key);
      opened++;
    }
    if (event === 'lapsed' || event === 'done' || event === 'no') open.delete(key);
  }
  const standing = db
    .prepare<[], string>("SELECT key FROM tasks WHERE state = 'open' ORDER BY key")
    .pluck()
    .all();
  if (JSON.stringify(standing) !== JSON.stringify([...open].sort()))
    faults.push(`open by the record: ${[...open].sort()}; by the tasks: ${standing}`);
  const twice = db
    .prepare<[], string>('SELECT id FROM alarms GROUP BY id HAVING count(*) > 1')
    .pluck()
    .all();
  for (const id of twice) faults.push(`alarm ${id} was raised twice`);
  const alarms = db.prepare<[], number>('SELECT count(*) FROM alarms').pluck().get() ?? 0;
  return { faults: few(faults), opened, alarms };
}

/** Every answer that the hub took is in the record once. */
export function lostAnswers(
  db: Database.Database,
  answered: readonly { readonly id: string; readonly answer: string }[],
): string[] {
  const find = db.prepare<[string, string], { n: number }>(
    `SELECT count(*) AS n FROM journal WHERE what = 'task' AND subject = ?
     AND json_extract(body, '$.event') = ?`,
  );
  return answered
    .filter(({ id, answer }) => find.get(id, answer)?.n !== 1)
    .map(({ id, answer }) => `${id}: ${answer}`);
}
