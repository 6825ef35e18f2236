/** Messages that came while the hub's clock was not to be believed, until they can be given a time. */
export const held = `
  -- boot, steady: which count of milliseconds, and where it stood when the message came.
  -- received_at: the time that was, once it is known (ms since 1970).
  CREATE TABLE held (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    boot TEXT NOT NULL,
    steady INTEGER NOT NULL,
    topic TEXT NOT NULL,
    payload BLOB NOT NULL,
    again INTEGER NOT NULL,
    sender TEXT,
    received_at INTEGER
  );
  CREATE INDEX held_by_time ON held (received_at, id);
`;
