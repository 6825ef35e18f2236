import type { Db } from './open.ts';

// Tasks, decisions, alarms and forecasts: each a JSON body under its key. What the body holds is
// the business of hub/tasks, hub/alarms and rules/; the store only keeps it.

export type TaskRow = {
  readonly id: string;
  readonly key: string;
  readonly state: 'open' | 'ended';
  readonly body: string;
  readonly openedAt: number;
  readonly endedAt: number | null;
};
export type AlarmRow = {
  readonly id: string;
  readonly place: string;
  readonly kind: string;
  readonly since: number;
  readonly words: string;
  readonly clearedAt: number | null;
};

export function tasksIn(db: Db) {
  const columns =
    'SELECT id, key, state, body, opened_at AS openedAt, ended_at AS endedAt FROM tasks';
  const put = db.prepare(
    `INSERT INTO tasks (id, key, state, body, opened_at, ended_at) VALUES (?, ?, ?, ?, ?, ?)
     ON CONFLICT (id) DO UPDATE SET state = excluded.state, body = excluded.body,
       ended_at = excluded.ended_at`,
  );
  const one = db.prepare<[string], TaskRow>(`${columns} WHERE id = ?`);
  const open = db.prepare<[], TaskRow>(`${columns} WHERE state = 'open' ORDER BY opened_at, id`);
  const ended = db.prepare<[number], TaskRow>(
    `${columns} WHERE state = 'ended' AND ended_at >= ? ORDER BY ended_at DESC`,
  );
  const endedKind = db.prepare<[string, string, number], TaskRow>(
    `${columns} WHERE state = 'ended' AND key >= ? AND key < ? AND ended_at >= ?`,
  );
  const openedIn = db.prepare<[number, number], TaskRow>(
    `${columns} WHERE opened_at >= ? AND opened_at < ? ORDER BY opened_at, id`,
  );
  const decisions = db.prepare<[], { key: string; body: string }>(
    'SELECT key, body FROM decisions',
  );
  const putDecision = db.prepare(
    `INSERT INTO decisions (key, body) VALUES (?, ?)
     ON CONFLICT (key) DO UPDATE SET body = excluded.body`,
  );
  const dropDecision = db.prepare('DELETE FROM decisions WHERE key = ?');
  return {
    put: (row: TaskRow) => put.run(row.id, row.key, row.state, row.body, row.openedAt, row.endedAt),
    get: (id: string) => one.get(id),
    open: () => open.all(),
    endedSince: (t: number) => ended.all(t),
    /** Those of one kind: a key begins with it. */
    endedOf: (kind: string, t: number) => endedKind.all(`${kind}:`, `${kind};`, t),
    openedBetween: (from: number, to: number) => openedIn.all(from, to),
    decisions: () => new Map(decisions.all().map(({ key, body }) => [key, body])),
    putDecision: (key: string, body: string) => putDecision.run(key, body),
    dropDecision: (key: string) => dropDecision.run(key),
  };
}

export function alarmsIn(db: Db) {
  const columns = 'SELECT id, place, kind, since, words, cleared_at AS clearedAt FROM alarms';
  const put = db.prepare(
    `INSERT INTO alarms (id, place, kind, since, words, cleared_at) VALUES (?, ?, ?, ?, ?, ?)
     ON CONFLICT (id, since) DO UPDATE SET words = excluded.words,
       cleared_at = excluded.cleared_at`,
  );
  const raised = db.prepare<[], AlarmRow>(`${columns} WHERE cleared_at IS NULL ORDER BY since`);
  const between = db.prepare<[number, number], AlarmRow>(
    `${columns} WHERE since >= ? AND since < ? ORDER BY since`,
  );
  return {
    put: (row: AlarmRow) =>
      put.run(row.id, row.place, row.kind, row.since, row.words, row.clearedAt),
    raised: () => raised.all(),
    between: (from: number, to: number) => between.all(from, to),
  };
}

export function forecastsIn(db: Db) {
  const put = db.prepare(
    `INSERT INTO forecasts (place, spot, night, issued_at, body, method) VALUES (?, ?, ?, ?, ?, ?)
     ON CONFLICT DO NOTHING`,
  );
  const all = db.prepare<[string, string], { body: string }>(
    'SELECT body FROM forecasts WHERE night >= ? AND night <= ? ORDER BY issued_at, place, spot',
  );
  // The first a night and method: updates through the night follow the evening's.
  const firsts = db.prepare<[string, string], { body: string }>(
    `SELECT body, min(issued_at) FROM forecasts WHERE night >= ? AND night <= ?
     GROUP BY place, spot, night, method ORDER BY night, place, spot, issued_at`,
  );
  const bodies = (rows: readonly { body: string }[]) => rows.map(({ body }) => body);
  return {
    /** As issued: a forecast that is there already is left as it is. */
    put: ({ place, spot, night, issuedAt, method }: ForecastKey, body: string) =>
      put.run(place, spot, night, issuedAt, body, method),
    between: (firstNight: string, lastNight: string) => bodies(all.all(firstNight, lastNight)),
    firstsBetween: (firstNight: string, lastNight: string) =>
      bodies(firsts.all(firstNight, lastNight)),
  };
}

type ForecastKey = {
  readonly place: string;
  readonly spot: string;
  readonly night: string;
  readonly issuedAt: number;
  readonly method: string;
};
