import type { Db } from './open.ts';

const HOUR = 3_600_000; // ms

export type Rollup = {
  readonly t: number;
  readonly n: number;
  readonly min: number;
  readonly max: number;
  readonly sum: number;
};
/** A stretch of a probe's readings that changed since it was last folded. */
export type Changed = { readonly probe: string; readonly from: number; readonly to: number };

/**
 * Hourly and daily roll-ups, made from the readings themselves: a late reading, a back-filled week
 * or a changed flag marks its hours stale, and folding makes those hours and their days again.
 */
export function rollupsIn(db: Db) {
  const stale = db.prepare<[], { series_id: number; t: number; probe: string }>(
    `SELECT series_id, t, probe FROM stale_hours JOIN series ON series.id = series_id
     ORDER BY series_id, t`,
  );
  const anyStale = db.prepare<[], { one: number }>('SELECT 1 AS one FROM stale_hours LIMIT 1');
  const wipe = db.prepare('DELETE FROM stale_hours');
  const replace = (table: 'hours' | 'days', source: string) => {
    const remove = db.prepare(`DELETE FROM ${table} WHERE series_id = ? AND t = ?`);
    const make = db.prepare(`INSERT INTO ${table} (series_id, t, n, min, max, sum) ${source}`);
    return (id: number, from: number, to: number) => {
      remove.run(id, from);
      make.run(id, from, id, from, to);
    };
  };
  const fromReadings = `SELECT ?, ?, count(*), min(value), max(value), sum(value) FROM readings
    WHERE series_id = ? AND t >= ? AND t < ? AND flag IS NULL HAVING count(*) > 0`;
  const makeHour = replace('hours', fromReadings);
  const makeOddDay = replace('days', fromReadings);
  const makeWholeDay = replace(
    'days',
    `SELECT ?, ?, sum(n), min(min), max(max), sum(sum) FROM hours
     WHERE series_id = ? AND t >= ? AND t < ? HAVING count(*) > 0`,
  );
  /** Where the zone is off by a part of an hour a day is not made of whole hours. */
  const makeDay = (id: number, begins: number, ends: number) =>
    (begins % HOUR === 0 && ends % HOUR === 0 ? makeWholeDay : makeOddDay)(id, begins, ends);
  const query = (table: 'hours' | 'days') =>
    db.prepare<[number, number, number], Rollup>(
      `SELECT t, n, min, max, sum FROM ${table} WHERE series_id = ? AND t >= ? AND t < ? ORDER BY t`,
    );
  const hours = query('hours');
  const days = query('days');

  return {
    isStale: () => anyStale.get() !== undefined,
    /**
     * Brings the roll-ups up to date.
     *
     * @param dayAround bounds of the farm's day an instant falls in.
     * @returns the stretches that changed, so that what was made from them can be made again.
     */
    fold(dayAround: (t: number) => { begins: number; ends: number }): Changed[] {
      const changed: Changed[] = [];
      db.transaction(() => {
        const days = new Map<string, [id: number, begins: number, ends: number]>();
        for (const { series_id, t, probe } of stale.all()) {
          makeHour(series_id, t, t + HOUR);
          for (const at of [t, t + HOUR - 1]) {
            const { begins, ends } = dayAround(at);
            days.set(`${series_id}:${begins}`, [series_id, begins, ends]);
          }
          const last = changed.at(-1);
          if (last && last.probe === probe && t <= last.to && t >= last.from) {
            changed[changed.length - 1] = { ...last, to: Math.max(last.to, t + HOUR) };
          } else changed.push({ probe, from: t, to: t + HOUR });
        }
        for (const day of days.values()) makeDay(...day);
        wipe.run();
      })();
      return changed;
    },
    hours: (id: number, from: number, to: number): Rollup[] => hours.all(id, from, to),
    days: (id: number, from: number, to: number): Rollup[] => days.all(id, from, to),
    /** When the farm's zone changes, days begin elsewhere: all are made again. */
    restaleAll() {
      db.exec(`DELETE FROM days;
        INSERT INTO stale_hours SELECT series_id, t FROM hours WHERE true ON CONFLICT DO NOTHING`);
    },
  };
}
