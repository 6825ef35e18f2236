import { type DayAround, isWhole, liveRollups } from './liveRollups.ts';
import type { Db } from './open.ts';
import type { Changed } from './touched.ts';

const HOUR = 3_600_000; // ms

/**
 * Hourly and daily roll-ups, made from the readings themselves: a late reading, a back-filled week
 * or a changed flag marks its hours stale, and folding makes those hours and their days again. What
 * waits in the inbox is counted in when they are read.
 */
export function rollupsIn(db: Db) {
  const stale = db.prepare<[], { series_id: number; t: number; probe: string }>(
    `SELECT series_id, t, probe FROM stale_hours JOIN series ON series.id = series_id
     ORDER BY series_id, t`,
  );
  const anyStale = db.prepare<[], { one: number }>('SELECT 1 AS one FROM stale_hours LIMIT 1');
  const wipe = db.prepare('DELETE FROM stale_hours');
  const rawFrom = db.prepare<[], number>('SELECT from_t FROM raw_kept').pluck();
  const count = db
    .prepare<[number, number, number], number>(
      `SELECT count(*) FROM main.readings WHERE series_id = ? AND t >= ? AND t < ? AND flag IS NULL`,
    )
    .pluck();
  const replace = (table: 'hours' | 'days', source: string) => {
    const had = db
      .prepare<[number, number], number>(`SELECT n FROM ${table} WHERE series_id = ? AND t = ?`)
      .pluck();
    const remove = db.prepare(`DELETE FROM ${table} WHERE series_id = ? AND t = ?`);
    const make = db.prepare(`INSERT INTO ${table} (series_id, t, n, min, max, sum) ${source}`);
    return {
      had: (id: number, t: number) => had.get(id, t) ?? 0,
      make(id: number, from: number, to: number) {
        remove.run(id, from);
        make.run(id, from, id, from, to);
      },
    };
  };
  const fromReadings = `SELECT ?, ?, count(*), min(value), max(value), sum(value)
    FROM main.readings WHERE series_id = ? AND t >= ? AND t < ? AND flag IS NULL HAVING count(*) > 0`;
  const hour = replace('hours', fromReadings);
  const oddDay = replace('days', fromReadings);
  const wholeDay = replace(
    'days',
    `SELECT ?, ?, sum(n), min(min), max(max), sum(sum) FROM hours
     WHERE series_id = ? AND t >= ? AND t < ? HAVING count(*) > 0`,
  );
  // Where readings were let go of, fewer are left than a roll-up was made from: it stays as it is.
  const isGone = (rolled: typeof hour, id: number, from: number, to: number, kept: number) =>
    from < kept && (count.get(id, from, to) ?? 0) < rolled.had(id, from);
  const makeHour = (id: number, from: number, kept: number) => {
    if (!isGone(hour, id, from, from + HOUR, kept)) hour.make(id, from, from + HOUR);
  };
  const makeDay = (id: number, begins: number, ends: number, kept: number) => {
    // Hours stay, so whole days can always be made of them; an odd one as nearly as they go.
    if (isWhole(begins, ends) || (begins < kept && oddDay.had(id, begins) === 0))
      wholeDay.make(id, begins, ends);
    else if (!isGone(oddDay, id, begins, ends, kept)) oddDay.make(id, begins, ends);
  };
  const live = liveRollups(db);

  return {
    isStale: () => anyStale.get() !== undefined,
    /** The farm's days, for what is asked before it is folded. */
    daysAre: live.daysAre,
    /** The stretches that are marked stale, oldest first for each series. */
    stretches(): Changed[] {
      const changed: Changed[] = [];
      for (const { t, probe } of stale.all()) {
        const last = changed.at(-1);
        if (last && last.probe === probe && t <= last.to && t >= last.from)
          changed[changed.length - 1] = { ...last, to: Math.max(last.to, t + HOUR) };
        else changed.push({ probe, from: t, to: t + HOUR });
      }
      return changed;
    },
    /** Brings the roll-ups up to date with the readings in their places, in the caller's transaction. */
    fold(dayAround: DayAround) {
      const kept = rawFrom.get() ?? Number.NEGATIVE_INFINITY;
      const days = new Map<string, [id: number, begins: number, ends: number]>();
      for (const { series_id, t } of stale.all()) {
        makeHour(series_id, t, kept);
        for (const at of [t, t + HOUR - 1]) {
          const { begins, ends } = dayAround(at);
          days.set(`${series_id}:${begins}`, [series_id, begins, ends]);
        }
      }
      for (const day of days.values()) makeDay(...day, kept);
      wipe.run();
    },
    hours: live.hours,
    days: live.days,
    /** When the farm's zone changes, days begin elsewhere: all are made again. */
    restaleAll() {
      db.exec(`DELETE FROM days;
        INSERT INTO stale_hours SELECT series_id, t FROM hours WHERE true ON CONFLICT DO NOTHING`);
    },
  };
}
