import type { Series } from '../contract/index.ts';
import { longestGap, SPOT_ORDER } from '../snapshot/index.ts';
import type { Placement, Rollup } from '../store/index.ts';
import type { ApiParts } from './parts.ts';

const HOUR = 3_600_000; // ms
const LONGEST_DAY = 25 * HOUR;
const MINUTE = 60_000;

export type SeriesWanted = {
  readonly place: string;
  readonly spot: string | null;
  readonly quantity: string;
  readonly from: number;
  readonly to: number;
  /** As many points as the picture can show. */
  readonly points: number;
};

const empty = (level: Series['level']): Series => ({ level, t: [], mean: [], min: [], max: [] });

function put(
  series: Series,
  t: number,
  mean: number | null,
  min: number | null,
  max: number | null,
) {
  series.t.push(t);
  series.mean.push(mean);
  series.min.push(min);
  series.max.push(max);
}

/** The coarsest level is read from roll-ups, so that a year costs the same with any history. */
function levelFor({ from, to, points }: SeriesWanted, everyMs: number): Series['level'] {
  if ((to - from) / everyMs <= points) return 'raw';
  return (to - from) / HOUR <= points ? 'hour' : 'day';
}

/** One quantity at a place over a stretch of time, at the finest level that fits. Gaps are null. */
export function readSeries(parts: ApiParts, wanted: SeriesWanted): Series {
  const { store, snapshots } = parts;
  const { place, quantity, from, to } = wanted;
  const spot =
    wanted.spot ??
    SPOT_ORDER.find((name) =>
      snapshots.spots
        .overlapping(place, name, from, to)
        .some(({ probe }) => store.readings.idOf(probe, quantity) !== undefined),
    );
  const here = spot ? snapshots.spots.overlapping(place, spot, from, to) : [];
  const every = here.reduce(
    (most, { probe }) => Math.max(most, store.probes.get(probe)?.everyMs ?? 0),
    MINUTE,
  );
  const rawFrom = store.trim.kept()?.from ?? Number.NEGATIVE_INFINITY;
  const finest = levelFor(wanted, every);
  // Single readings from before then were let go of; their hours are still there.
  const level = finest === 'raw' && from < rawFrom ? 'hour' : finest;
  const series = empty(level);
  if (level === 'raw') {
    const gap = longestGap(every) * MINUTE;
    let last: number | null = null;
    for (const { t, value } of snapshots.spots.points(place, spot ?? '', quantity, from, to)) {
      if (last !== null && t - last > gap) put(series, last + gap / 2, null, null, null);
      put(series, t, value, value, value);
      last = t;
    }
    return series;
  }
  const rows = rollupsOf(parts, level, here, wanted);
  const slots = slotsOf(parts, level, from, to);
  // Where even days are more than the picture can show, several make one point.
  const each = Math.ceil(slots.length / wanted.points);
  for (let i = 0; i < slots.length; i += each) {
    const known = slots.slice(i, i + each).flatMap((t) => rows.get(t) ?? []);
    const n = known.reduce((sum, row) => sum + row.n, 0);
    if (n === 0) put(series, slots[i] ?? 0, null, null, null);
    else
      put(
        series,
        slots[i] ?? 0,
        known.reduce((sum, row) => sum + row.sum, 0) / n,
        Math.min(...known.map(({ min }) => min)),
        Math.max(...known.map(({ max }) => max)),
      );
  }
  return series;
}

/** The first instant of each hour or local day that the stretch touches. */
function slotsOf(
  { calendar }: ApiParts,
  level: 'hour' | 'day',
  from: number,
  to: number,
): number[] {
  const slots: number[] = [];
  if (level === 'hour')
    for (let t = Math.floor(from / HOUR) * HOUR; t < to; t += HOUR) slots.push(t);
  else {
    const last = calendar().dayOf(to - 1);
    for (let day = calendar().dayOf(from); day <= last; day = calendar().add(day, 1))
      slots.push(calendar().bounds(day).begins);
  }
  return slots;
}

function rollupsOf(
  { store, calendar }: ApiParts,
  level: 'hour' | 'day',
  here: readonly Placement[],
  { quantity, from, to }: SeriesWanted,
): Map<number, Rollup> {
  const rows = new Map<number, Rollup>();
  const endOf = (t: number) =>
    level === 'hour' ? t + HOUR : calendar().bounds(calendar().dayOf(t)).ends;
  for (const { probe, from: since, to: until } of here) {
    const id = store.readings.idOf(probe, quantity);
    if (id === undefined) continue;
    const left = until ?? Number.MAX_SAFE_INTEGER;
    for (const row of store.rollups[level === 'hour' ? 'hours' : 'days'](
      id,
      from - LONGEST_DAY,
      to,
    )) {
      const end = endOf(row.t);
      if (end <= from || end <= since || row.t >= left) continue;
      const whole = row.t >= since && end <= left;
      // It was moved in the middle: only what was measured here counts here.
      const part = whole
        ? row
        : rollUp(
            row.t,
            store.readings.between(probe, quantity, Math.max(row.t, since), Math.min(end, left)),
          );
      const other = rows.get(row.t);
      if (part) rows.set(row.t, other ? joined(other, part) : part);
    }
  }
  return rows;
}

function rollUp(t: number, points: readonly { value: number }[]): Rollup | null {
  if (points.length === 0) return null;
  const values = points.map(({ value }) => value);
  const sum = values.reduce((total, value) => total + value, 0);
  return { t, n: values.length, min: Math.min(...values), max: Math.max(...values), sum };
}

const joined = (a: Rollup, b: Rollup): Rollup => ({
  t: a.t,
  n: a.n + b.n,
  min: Math.min(a.min, b.min),
  max: Math.max(a.max, b.max),
  sum: a.sum + b.sum,
});
