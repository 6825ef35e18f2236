import Database from 'better-sqlite3';
import type { Placement } from './probes.ts';

/** An hour's start, ms, and the mean of its readings, say: a pair, because a year of a farm has a million. */
export type HourValue = readonly [t: number, mean: number];

/** The past of a store, read beside whoever writes it: what is in its tables, not what waits in the inbox. */
export type Past = {
  readonly placements: () => Placement[];
  /** Hours of one probe and quantity, the first of them at `from` or later, before `to`. */
  readonly hours: (probe: string, quantity: string, from: number, to: number) => HourValue[];
  /** The highest of each such hour. */
  readonly peaks: (probe: string, quantity: string, from: number, to: number) => HourValue[];
  /** Good readings with from <= t < to: time, ms, and value. */
  readonly readings: (probe: string, quantity: string, from: number, to: number) => HourValue[];
  /** Forecasts of a place as issued, of nights from `first` to `last`, oldest first. */
  readonly forecasts: (place: string, first: string, last: string) => string[];
  readonly close: () => void;
};

/**
 * Opens a store's file for reading only.
 * @throws Error where there is no such file
 */
export function openPast(path: string): Past {
  const db = new Database(path, { readonly: true, fileMustExist: true });
  const placements = db.prepare<[], Placement>(
    'SELECT probe, place, spot, from_t AS "from", to_t AS "to" FROM placements ORDER BY probe, from_t',
  );
  const pairs = (value: string, table: string, more = '') =>
    db
      .prepare<[string, string, number, number], HourValue>(
        `SELECT t, ${value} FROM ${table}
         WHERE series_id = (SELECT id FROM series WHERE probe = ? AND quantity = ?)
           AND t >= ? AND t < ? ${more} ORDER BY t`,
      )
      .raw();
  const hours = pairs('sum / n', 'hours');
  const peaks = pairs('max', 'hours');
  const readings = pairs('value', 'readings', 'AND flag IS NULL');
  const forecasts = db
    .prepare<[string, string, string], string>(
      'SELECT body FROM forecasts WHERE place = ? AND night >= ? AND night <= ? ORDER BY issued_at',
    )
    .pluck();
  return {
    placements: () => placements.all(),
    hours: (probe, quantity, from, to) => hours.all(probe, quantity, from, to),
    peaks: (probe, quantity, from, to) => peaks.all(probe, quantity, from, to),
    readings: (probe, quantity, from, to) => readings.all(probe, quantity, from, to),
    forecasts: (place, first, last) => forecasts.all(place, first, last),
    close: () => db.close(),
  };
}
