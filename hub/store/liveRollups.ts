import type { Db } from './open.ts';
import { everywhere } from './readings.ts';

const HOUR = 3_600_000; // ms

export type Rollup = {
  readonly t: number;
  readonly n: number;
  readonly min: number;
  readonly max: number;
  readonly sum: number;
};
/** Bounds of the farm's day an instant falls in. */
export type DayAround = (t: number) => { readonly begins: number; readonly ends: number };

/** Where the zone is off by a part of an hour a day is not made of whole hours. */
export const isWhole = (begins: number, ends: number) => begins % HOUR === 0 && ends % HOUR === 0;

const sorted = (rows: ReadonlyMap<number, Rollup>) => [...rows.values()].sort((a, b) => a.t - b.t);

/** Roll-ups as they are asked for: those of the tables, and for hours and days with readings in the
 *  inbox, made anew from all readings there are. */
export function liveRollups(db: Db) {
  let dayAround: DayAround = (t) => {
    const begins = Math.floor(t / (24 * HOUR)) * 24 * HOUR;
    return { begins, ends: begins + 24 * HOUR };
  };
  const query = (table: 'hours' | 'days') =>
    db.prepare<[number, number, number], Rollup>(
      `SELECT t, n, min, max, sum FROM ${table} WHERE series_id = ? AND t >= ? AND t < ? ORDER BY t`,
    );
  const keptHours = query('hours');
  const keptDays = query('days');
  const freshHours = db
    .prepare<[number, number, number], number>(
      `SELECT DISTINCT t / ${HOUR} * ${HOUR} FROM temp.fresh
       WHERE series_id = ? AND t >= ? AND t < ?`,
    )
    .pluck();
  const made = db.prepare<number[], Omit<Rollup, 't'>>(
    `SELECT count(*) AS n, min(value) AS min, max(value) AS max, sum(value) AS sum FROM
     (${everywhere('r.value', 'r.series_id = ? AND r.t >= ? AND r.t < ? AND r.flag IS NULL')})`,
  );
  /** From the readings; where fewer are left than were counted once, the count stands. */
  const renew = (rows: Map<number, Rollup>, id: number, from: number, to: number) => {
    const row = made.get(id, from, to, id, from, to);
    if (row && row.n > 0 && row.n >= (rows.get(from)?.n ?? 0)) rows.set(from, { t: from, ...row });
  };

  const hours = (id: number, from: number, to: number): Rollup[] => {
    const rows = new Map(keptHours.all(id, from, to).map((row) => [row.t, row]));
    for (const t of freshHours.all(id, from, Math.min(to + HOUR, Number.MAX_SAFE_INTEGER)))
      if (t >= from && t < to) renew(rows, id, t, t + HOUR);
    return sorted(rows);
  };
  const together = (t: number, parts: readonly Rollup[]): Rollup => ({
    t,
    n: parts.reduce((sum, { n }) => sum + n, 0),
    min: Math.min(...parts.map(({ min }) => min)),
    max: Math.max(...parts.map(({ max }) => max)),
    sum: parts.reduce((total, { sum }) => total + sum, 0),
  });

  return {
    daysAre(around: DayAround) {
      dayAround = around;
    },
    hours,
    days(id: number, from: number, to: number): Rollup[] {
      const rows = new Map(keptDays.all(id, from, to).map((row) => [row.t, row]));
      const open = new Map<number, number>();
      for (const t of freshHours.all(id, from, Number.MAX_SAFE_INTEGER))
        for (const at of [t, t + HOUR - 1]) {
          const { begins, ends } = dayAround(at);
          if (begins >= from && begins < to) open.set(begins, ends);
        }
      for (const [begins, ends] of open) {
        if (!isWhole(begins, ends)) renew(rows, id, begins, ends);
        else {
          const parts = hours(id, begins, ends);
          if (parts.length > 0) rows.set(begins, together(begins, parts));
        }
      }
      return sorted(rows);
    },
  };
}
