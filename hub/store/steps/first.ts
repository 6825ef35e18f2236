/** The store as it was first. */
export const first = `
  CREATE TABLE series (
    id INTEGER PRIMARY KEY,
    probe TEXT NOT NULL,
    quantity TEXT NOT NULL,
    UNIQUE (probe, quantity)
  );
  -- value: with the probe's correction. raw: as sent, where that differs. flag: why it is doubted.
  CREATE TABLE readings (
    series_id INTEGER NOT NULL REFERENCES series,
    t INTEGER NOT NULL,
    value REAL NOT NULL,
    raw REAL,
    flag TEXT,
    PRIMARY KEY (series_id, t)
  ) WITHOUT ROWID;

  -- Roll-ups of the readings without a flag. t: start of the hour (UTC), of the farm's day.
  CREATE TABLE hours (
    series_id INTEGER NOT NULL, t INTEGER NOT NULL,
    n INTEGER NOT NULL, min REAL NOT NULL, max REAL NOT NULL, sum REAL NOT NULL,
    PRIMARY KEY (series_id, t)
  ) WITHOUT ROWID;
  CREATE TABLE days (
    series_id INTEGER NOT NULL, t INTEGER NOT NULL,
    n INTEGER NOT NULL, min REAL NOT NULL, max REAL NOT NULL, sum REAL NOT NULL,
    PRIMARY KEY (series_id, t)
  ) WITHOUT ROWID;
  -- Hours whose roll-up no longer agrees with the readings. Written with the readings, in one
  -- commit, so that a power cut cannot leave a roll-up silently behind.
  CREATE TABLE stale_hours (
    series_id INTEGER NOT NULL, t INTEGER NOT NULL,
    PRIMARY KEY (series_id, t)
  ) WITHOUT ROWID;

  -- What the rules made of a place's past days and nights; a missing row is made again when asked.
  CREATE TABLE place_days (
    place TEXT NOT NULL, day TEXT NOT NULL, facts TEXT NOT NULL,
    PRIMARY KEY (place, day)
  ) WITHOUT ROWID;
  CREATE TABLE spot_nights (
    place TEXT NOT NULL, spot TEXT NOT NULL, night TEXT NOT NULL, facts TEXT NOT NULL,
    PRIMARY KEY (place, spot, night)
  ) WITHOUT ROWID;

  CREATE TABLE farm (only_one INTEGER PRIMARY KEY CHECK (only_one = 1), file TEXT NOT NULL);
  CREATE TABLE probes (
    id TEXT PRIMARY KEY,
    every_ms INTEGER NOT NULL,
    heard_at INTEGER,
    password TEXT
  ) WITHOUT ROWID;
  CREATE TABLE offsets (
    probe TEXT NOT NULL, quantity TEXT NOT NULL, value REAL NOT NULL,
    PRIMARY KEY (probe, quantity)
  ) WITHOUT ROWID;
  -- to_t NULL: still there. from_t 0: since before anybody wrote it down.
  CREATE TABLE placements (
    probe TEXT NOT NULL, from_t INTEGER NOT NULL, to_t INTEGER,
    place TEXT NOT NULL, spot TEXT NOT NULL,
    PRIMARY KEY (probe, from_t)
  ) WITHOUT ROWID;
  CREATE TABLE refusals (
    source TEXT NOT NULL, reason TEXT NOT NULL, hour INTEGER NOT NULL,
    n INTEGER NOT NULL, last TEXT NOT NULL, last_at INTEGER NOT NULL,
    PRIMARY KEY (source, reason, hour)
  ) WITHOUT ROWID;

  CREATE TABLE tasks (
    id TEXT PRIMARY KEY,
    key TEXT NOT NULL,
    state TEXT NOT NULL,
    body TEXT NOT NULL,
    opened_at INTEGER NOT NULL,
    ended_at INTEGER
  ) WITHOUT ROWID;
  CREATE UNIQUE INDEX one_open_task_a_key ON tasks (key) WHERE state = 'open';
  CREATE INDEX tasks_by_end ON tasks (state, ended_at);
  -- Timing of each decision between looks: since when it says what it says.
  CREATE TABLE decisions (key TEXT PRIMARY KEY, body TEXT NOT NULL) WITHOUT ROWID;
  CREATE TABLE alarms (
    id TEXT NOT NULL, place TEXT NOT NULL, kind TEXT NOT NULL,
    since INTEGER NOT NULL, words TEXT NOT NULL, cleared_at INTEGER,
    PRIMARY KEY (id, since)
  ) WITHOUT ROWID;
  CREATE TABLE forecasts (
    place TEXT NOT NULL, spot TEXT NOT NULL, night TEXT NOT NULL, issued_at INTEGER NOT NULL,
    body TEXT NOT NULL,
    PRIMARY KEY (place, spot, night, issued_at)
  ) WITHOUT ROWID;

  -- Everything people and the hub did, added to and never overwritten.
  CREATE TABLE journal (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    t INTEGER NOT NULL,
    who TEXT NOT NULL,
    what TEXT NOT NULL,
    place TEXT,
    subject TEXT,
    body TEXT NOT NULL
  );
  CREATE INDEX journal_by_place ON journal (place, what, t);
  CREATE TRIGGER journal_is_kept BEFORE UPDATE ON journal
    BEGIN SELECT RAISE(ABORT, 'the journal is added to, never changed'); END;
  CREATE TRIGGER journal_is_not_cut BEFORE DELETE ON journal
    BEGIN SELECT RAISE(ABORT, 'the journal is added to, never cut'); END;

  CREATE TABLE people (name TEXT PRIMARY KEY, password TEXT NOT NULL) WITHOUT ROWID;
  CREATE TABLE sessions (id TEXT PRIMARY KEY, name TEXT NOT NULL, until INTEGER NOT NULL) WITHOUT ROWID;
  CREATE TABLE secrets (name TEXT PRIMARY KEY, value TEXT NOT NULL) WITHOUT ROWID;
`;
