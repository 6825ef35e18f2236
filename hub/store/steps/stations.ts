/** Past records of weather stations, one row for each station and day. */
export const stations = `
  -- observed_at: hour of the day at which a reader looks at the thermometer; NULL: midnight.
  CREATE TABLE stations (
    id TEXT PRIMARY KEY,
    name TEXT NOT NULL,
    lat REAL NOT NULL,
    lon REAL NOT NULL,
    altitude REAL,
    form TEXT NOT NULL,
    observed_at INTEGER,
    imported_at INTEGER NOT NULL
  ) WITHOUT ROWID;
  -- NULL: not known. rain 0 with trace 1 was wet all the same. calm: a clear, calm night or not.
  CREATE TABLE station_days (
    station TEXT NOT NULL REFERENCES stations ON DELETE CASCADE,
    day TEXT NOT NULL,
    min REAL, max REAL, mean REAL, rain REAL,
    trace INTEGER NOT NULL DEFAULT 0,
    calm INTEGER,
    PRIMARY KEY (station, day)
  ) WITHOUT ROWID;
`;
