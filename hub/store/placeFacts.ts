import type { Db } from './open.ts';

/** What the rules made of past days and nights: kept so that a year is read, not worked out. */
export function placeFactsIn(db: Db) {
  const days = db.prepare<[string, string, string], { day: string; facts: string }>(
    'SELECT day, facts FROM place_days WHERE place = ? AND day >= ? AND day <= ? ORDER BY day',
  );
  const putDay = db.prepare(
    `INSERT INTO place_days (place, day, facts) VALUES (?, ?, ?)
     ON CONFLICT (place, day) DO UPDATE SET facts = excluded.facts`,
  );
  // What can no longer be made again, because its readings were let go of, is never dropped.
  const again = "ifnull((SELECT first_day FROM raw_kept), '')";
  const dropDays = db.prepare(
    `DELETE FROM place_days WHERE place = ? AND day >= max(?, ${again}) AND day <= ?`,
  );
  const nights = db.prepare<[string, string, string, string], { night: string; facts: string }>(
    `SELECT night, facts FROM spot_nights
     WHERE place = ? AND spot = ? AND night >= ? AND night <= ? ORDER BY night`,
  );
  const putNight = db.prepare(
    `INSERT INTO spot_nights (place, spot, night, facts) VALUES (?, ?, ?, ?)
     ON CONFLICT (place, spot, night) DO UPDATE SET facts = excluded.facts`,
  );
  const dropNights = db.prepare(
    `DELETE FROM spot_nights WHERE place = ? AND night >= max(?, ${again}) AND night <= ?`,
  );
  return {
    days: (place: string, first: string, last: string) => days.all(place, first, last),
    putDay: (place: string, day: string, facts: string) => putDay.run(place, day, facts),
    nights: (place: string, spot: string, first: string, last: string) =>
      nights.all(place, spot, first, last),
    putNight: (place: string, spot: string, night: string, facts: string) =>
      putNight.run(place, spot, night, facts),
    /** Readings from `first` to `last` changed: what was made from them is made again when asked. */
    drop(place: string, first: string, last: string) {
      dropDays.run(place, first, last);
      dropNights.run(place, first, last);
    },
    dropNights: (place: string, first: string, last: string) => dropNights.run(place, first, last),
    dropAll() {
      db.exec(`DELETE FROM place_days WHERE day >= ${again};
        DELETE FROM spot_nights WHERE night >= ${again}`);
    },
  };
}
