import Database from 'better-sqlite3';
import type { Placement } from './probes.ts';

/** An hour's start, ms, and the mean of its readings: a pair, because a year of a farm has a million. */
export type HourMean = readonly [t: number, mean: number];

/** The past of a store, read beside whoever writes it: what is in its tables, not what waits in the inbox. */
export type Past = {
  readonly placements: () => Placement[];
  /** Hours of one probe and quantity, the first of them at `from` or later, before `to`. */
  readonly hours: (probe: string, quantity: string, from: number, to: number) => HourMean[];
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
  const hours = db
    .prepare<[string, string, number, number], HourMean>(
      `SELECT t, sum / n FROM hours
     WHERE series_id = (SELECT id FROM series WHERE probe = ? AND quantity = ?)
       AND t >= ? AND t < ? ORDER BY t`,
    )
    .raw();
  const forecasts = db
    .prepare<[string, string, string], string>(
      'SELECT body FROM forecasts WHERE place = ? AND night >= ? AND night <= ? ORDER BY issued_at',
    )
    .pluck();
  return {
    placements: () => placements.all(),
    hours: (probe, quantity, from, to) => hours.all(probe, quantity, from, to),
    forecasts: (place, first, last) => forecasts.all(place, first, last),
    close: () => db.close(),
  };
}
