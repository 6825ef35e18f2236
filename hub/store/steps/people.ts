/**
 * Roles, one-time codes, and sessions kept by a hash of their id. Sessions of before held the id
 * itself: they are ended, and those people sign in once more. Times in ms since 1970.
 */
export const people = `
  ALTER TABLE people ADD COLUMN role TEXT NOT NULL DEFAULT 'grower';
  ALTER TABLE people ADD COLUMN seen_at INTEGER;
  DROP TABLE sessions;
  CREATE TABLE sessions (
    key TEXT PRIMARY KEY, name TEXT NOT NULL,
    begun_at INTEGER NOT NULL, seen_at INTEGER NOT NULL
  ) WITHOUT ROWID;
  CREATE INDEX sessions_by_name ON sessions (name);
  -- name NULL: for somebody new; otherwise for that person to set a new password.
  CREATE TABLE join_codes (
    key TEXT PRIMARY KEY, role TEXT NOT NULL, name TEXT, until INTEGER NOT NULL,
    made_by TEXT NOT NULL
  ) WITHOUT ROWID;
`;
