import type { Db } from './open.ts';

// What hub/alarms keeps: settings and silences as JSON bodies, messages and what people saw as rows.

export type SeenAlarmRow = {
  readonly id: string;
  readonly place: string;
  readonly kind: string;
  readonly since: number;
  readonly words: string;
  readonly clearedAt: number | null;
  readonly seenBy: string | null;
  readonly seenAt: number | null;
  readonly was: 'right' | 'false' | null;
};
export type MessageRow = {
  readonly id: string;
  readonly what: string;
  readonly alarm: string | null;
  readonly since: number | null;
  readonly person: string;
  readonly channel: string;
  readonly state: string;
  readonly madeAt: number;
  readonly nextAt: number;
  readonly tries: number;
  readonly endedAt: number | null;
  readonly words: string;
};
export type AlarmTestRow = {
  readonly id: string;
  readonly at: number;
  readonly madeBy: string;
  readonly seenBy: string | null;
  readonly seenAt: number | null;
};

const ALARMS = `SELECT a.id, a.place, a.kind, a.since, a.words, a.cleared_at AS clearedAt,
    s.who AS seenBy, s.at AS seenAt, s.was
  FROM alarms a LEFT JOIN alarms_seen s ON s.id = a.id AND s.since = a.since`;
const MESSAGES = `SELECT id, what, alarm, since, person, channel, state, made_at AS madeAt,
    next_at AS nextAt, tries, ended_at AS endedAt, words FROM alarm_messages`;
const TESTS =
  'SELECT id, at, made_by AS madeBy, seen_by AS seenBy, seen_at AS seenAt FROM alarm_tests';

export function alarmsOutIn(db: Db) {
  const current = db.prepare<[number], SeenAlarmRow>(
    `${ALARMS} WHERE a.cleared_at IS NULL OR s.at IS NULL OR a.cleared_at >= ?
     ORDER BY a.since, a.id`,
  );
  const between = db.prepare<[number, number], SeenAlarmRow>(
    `${ALARMS} WHERE a.since >= ? AND a.since < ? ORDER BY a.since, a.id`,
  );
  const newest = db.prepare<[string], SeenAlarmRow>(
    `${ALARMS} WHERE a.id = ? ORDER BY a.since DESC LIMIT 1`,
  );
  const putSeen = db.prepare(
    `INSERT INTO alarms_seen (id, since, who, at, was) VALUES (?, ?, ?, ?, ?)
     ON CONFLICT (id, since) DO UPDATE SET was = coalesce(excluded.was, was)`,
  );
  const settings = db.prepare<[], { body: string }>('SELECT body FROM alarm_settings');
  const putSettings = db.prepare(
    `INSERT INTO alarm_settings (only_one, body) VALUES (1, ?)
     ON CONFLICT (only_one) DO UPDATE SET body = excluded.body`,
  );
  const silences = db.prepare<[number, number], { body: string }>(
    'SELECT body FROM alarm_silences WHERE from_t <= ? AND until_t > ? ORDER BY from_t',
  );
  const putSilence = db.prepare(
    `INSERT INTO alarm_silences (id, body, from_t, until_t) VALUES (?, ?, ?, ?)
     ON CONFLICT (id) DO UPDATE SET body = excluded.body, until_t = excluded.until_t`,
  );
  const messages = db.prepare<[number], MessageRow>(
    `${MESSAGES} WHERE made_at >= ? OR state IN ('waiting', 'held') ORDER BY made_at, id`,
  );
  const due = db.prepare<[number], MessageRow>(
    `${MESSAGES} WHERE state = 'waiting' AND next_at <= ? ORDER BY next_at, id`,
  );
  const message = db.prepare<[string], MessageRow>(`${MESSAGES} WHERE id = ?`);
  const add = db.prepare(
    `INSERT INTO alarm_messages (id, what, alarm, since, person, channel, state, made_at, next_at,
       tries, ended_at, words)
     VALUES (@id, @what, @alarm, @since, @person, @channel, @state, @madeAt, @nextAt, @tries,
       @endedAt, @words) ON CONFLICT (id) DO NOTHING`,
  );
  const change = db.prepare(
    `UPDATE alarm_messages SET state = ?, next_at = ?, tries = ?, ended_at = ?, words = ?
     WHERE id = ?`,
  );
  const hurry = db.prepare(
    "UPDATE alarm_messages SET next_at = ? WHERE state = 'waiting' AND next_at > ?",
  );
  const summed = db.prepare<[string, string, number], MessageRow>(
    `${MESSAGES} WHERE state = 'summarised' AND person = ? AND channel = ? AND ended_at = ?`,
  );
  const tests = db.prepare<[number], AlarmTestRow>(`${TESTS} WHERE at >= ? ORDER BY at DESC`);
  const test = db.prepare<[string], AlarmTestRow>(`${TESTS} WHERE id = ?`);
  const addTest = db.prepare('INSERT INTO alarm_tests (id, at, made_by) VALUES (?, ?, ?)');
  const seeTest = db.prepare(
    'UPDATE alarm_tests SET seen_by = ?, seen_at = ? WHERE id = ? AND seen_at IS NULL',
  );
  return {
    /** All that stand, all that nobody has seen, and those that cleared since then. */
    current: (since: number) => current.all(since),
    between: (from: number, to: number) => between.all(from, to),
    newest: (id: string) => newest.get(id),
    /** The first who saw it stays; what it was may be said later. */
    putSeen: (id: string, since: number, who: string, at: number, was: string | null) =>
      putSeen.run(id, since, who, at, was),
    settings: () => settings.get()?.body,
    putSettings: (body: string) => putSettings.run(body),
    silencesAt: (t: number) => silences.all(t, t).map(({ body }) => body),
    putSilence: (id: string, body: string, from: number, until: number) =>
      putSilence.run(id, body, from, until),
    /** All made since then, and all that are not done with. */
    messages: (since: number) => messages.all(since),
    due: (t: number) => due.all(t),
    message: (id: string) => message.get(id),
    addMessage: (row: MessageRow) => add.run(row),
    changeMessage: ({ id, state, nextAt, tries, endedAt, words }: MessageRow) =>
      change.run(state, nextAt, tries, endedAt, words, id),
    /** What waits is tried at once: the way it goes was changed. */
    hurry: (t: number) => hurry.run(t, t),
    /** What was held back and told in the summary made then. */
    summed: (person: string, channel: string, at: number) => summed.all(person, channel, at),
    tests: (since: number) => tests.all(since),
    test: (id: string) => test.get(id),
    addTest: (id: string, at: number, madeBy: string) => addTest.run(id, at, madeBy),
    seeTest: (id: string, who: string, at: number) => seeTest.run(who, at, id),
  };
}
