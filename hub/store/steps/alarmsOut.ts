/** Who is told of alarms, what was told, and who saw them. */
export const alarmsOut = `
  -- was: 'right' or 'false', as somebody answered; NULL while nobody did.
  CREATE TABLE alarms_seen (
    id TEXT NOT NULL, since INTEGER NOT NULL,
    who TEXT NOT NULL, at INTEGER NOT NULL, was TEXT,
    PRIMARY KEY (id, since)
  ) WITHOUT ROWID;
  -- What ended before anybody could say "seen" is not held up to people as unseen.
  INSERT INTO alarms_seen (id, since, who, at)
    SELECT id, since, 'hub', cleared_at FROM alarms WHERE cleared_at IS NOT NULL;
  CREATE INDEX alarms_by_time ON alarms (since);
  CREATE TABLE alarm_silences (
    id TEXT PRIMARY KEY, body TEXT NOT NULL, from_t INTEGER NOT NULL, until_t INTEGER NOT NULL
  ) WITHOUT ROWID;
  CREATE TABLE alarm_settings (only_one INTEGER PRIMARY KEY CHECK (only_one = 1), body TEXT NOT NULL);
  -- One message to one person on one channel, from the moment it is planned.
  CREATE TABLE alarm_messages (
    id TEXT PRIMARY KEY, what TEXT NOT NULL, alarm TEXT, since INTEGER,
    person TEXT NOT NULL, channel TEXT NOT NULL, state TEXT NOT NULL,
    made_at INTEGER NOT NULL, next_at INTEGER NOT NULL, tries INTEGER NOT NULL,
    ended_at INTEGER, words TEXT NOT NULL
  ) WITHOUT ROWID;
  CREATE INDEX alarm_messages_by_state ON alarm_messages (state, next_at);
  CREATE INDEX alarm_messages_by_time ON alarm_messages (made_at);
  CREATE TABLE alarm_tests (
    id TEXT PRIMARY KEY, at INTEGER NOT NULL, made_by TEXT NOT NULL,
    seen_by TEXT, seen_at INTEGER
  ) WITHOUT ROWID;
`;
