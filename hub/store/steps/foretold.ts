/**
 * Forecasts that somebody pushes, as issued; which method a forecast of our own rests on; and past
 * nights made anew, because more is known of each.
 */
export const foretold = `
  -- issued_at: when it came. t: the moment it speaks of.
  CREATE TABLE foretold (
    source TEXT NOT NULL, quantity TEXT NOT NULL, issued_at INTEGER NOT NULL,
    t INTEGER NOT NULL, value REAL NOT NULL,
    PRIMARY KEY (source, quantity, issued_at, t)
  ) WITHOUT ROWID;
  ALTER TABLE forecasts ADD COLUMN method TEXT NOT NULL DEFAULT '';
  UPDATE forecasts SET method = ifnull(json_extract(body, '$.method'), '');
  CREATE INDEX forecasts_by_night ON forecasts (night);
  DELETE FROM spot_nights;
`;
