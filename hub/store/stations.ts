import type { Db } from './open.ts';

export type StationRow = {
  readonly id: string;
  readonly name: string;
  readonly lat: number;
  readonly lon: number;
  /** m; null where nobody told. */
  readonly altitude: number | null;
  /** What kind of file it came from. */
  readonly form: string;
  readonly observedAt: number | null;
  readonly importedAt: number;
};
/** One day of a station: °C and mm; null is not known. */
export type DayRow = {
  readonly day: string;
  readonly min: number | null;
  readonly max: number | null;
  readonly mean: number | null;
  readonly rain: number | null;
  readonly trace: boolean;
  readonly calm: boolean | null;
};
type Kept = Omit<DayRow, 'trace' | 'calm'> & { trace: number; calm: number | null };

/** Records of weather stations, once each by (station, day): taking one in again changes nothing. */
export function stationsIn(db: Db) {
  const columns =
    'SELECT id, name, lat, lon, altitude, form, observed_at AS observedAt, imported_at AS importedAt FROM stations';
  const all = db.prepare<[], StationRow>(`${columns} ORDER BY id`);
  const one = db.prepare<[string], StationRow>(`${columns} WHERE id = ?`);
  const put = db.prepare(
    `INSERT INTO stations (id, name, lat, lon, altitude, form, observed_at, imported_at)
     VALUES (?, ?, ?, ?, ?, ?, ?, ?)
     ON CONFLICT (id) DO UPDATE SET name = excluded.name, lat = excluded.lat, lon = excluded.lon,
       altitude = excluded.altitude, form = excluded.form, observed_at = excluded.observed_at,
       imported_at = excluded.imported_at`,
  );
  const drop = db.prepare('DELETE FROM stations WHERE id = ?');
  const putDay = db.prepare(
    `INSERT INTO station_days (station, day, min, max, mean, rain, trace, calm)
     VALUES (?, ?, ?, ?, ?, ?, ?, ?)
     ON CONFLICT (station, day) DO UPDATE SET min = coalesce(excluded.min, min),
       max = coalesce(excluded.max, max), mean = coalesce(excluded.mean, mean),
       trace = iif(excluded.rain IS NULL, trace, excluded.trace),
       rain = coalesce(excluded.rain, rain), calm = coalesce(excluded.calm, calm)`,
  );
  const days = db.prepare<[string], Kept>(
    'SELECT day, min, max, mean, rain, trace, calm FROM station_days WHERE station = ? ORDER BY day',
  );
  const extent = db.prepare<[string], { days: number; first: string | null; last: string | null }>(
    'SELECT count(*) AS days, min(day) AS first, max(day) AS last FROM station_days WHERE station = ?',
  );
  const dropDays = db.prepare('DELETE FROM station_days WHERE station = ?');
  const flag = (value: boolean | null) => (value === null ? null : Number(value));

  return {
    all: () => all.all(),
    get: (id: string) => one.get(id),
    put: (row: StationRow) =>
      put.run(
        ...[row.id, row.name, row.lat, row.lon, row.altitude],
        ...[row.form, row.observedAt, row.importedAt],
      ),
    /** With all its days. @returns whether there was one. */
    remove: (id: string) => drop.run(id).changes > 0,
    /** A day already there keeps what the new row does not know. */
    putDays(station: string, rows: readonly DayRow[]) {
      for (const { day, min, max, mean, rain, trace, calm } of rows)
        putDay.run(station, day, min, max, mean, rain, Number(trace), flag(calm));
    },
    dropDays: (station: string) => dropDays.run(station),
    days: (station: string): DayRow[] =>
      days.all(station).map((row) => ({
        ...row,
        trace: row.trace === 1,
        calm: row.calm === null ? null : row.calm === 1,
      })),
    extent: (station: string) => extent.get(station) ?? { days: 0, first: null, last: null },
  };
}
