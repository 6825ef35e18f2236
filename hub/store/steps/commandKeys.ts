/**
 * Keys that pages give their commands, with what was answered, so that a command that is sent again is
 * not entered again. `status` NULL: begun, and not known to have ended. Times in ms since 1970.
 */
export const commandKeys = `
  CREATE TABLE command_keys (
    who TEXT NOT NULL, key TEXT NOT NULL, print TEXT NOT NULL, begun_at INTEGER NOT NULL,
    status INTEGER, answer TEXT,
    PRIMARY KEY (who, key)
  ) WITHOUT ROWID;
  CREATE INDEX command_keys_by_time ON command_keys (begun_at);
`;
