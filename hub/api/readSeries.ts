import type { Series } from '../contract/index.ts';
import { longestGap, SPOT_ORDER } from '../snapshot/index.ts';
import type { Rollup } from '../store/index.ts';
import type { ApiParts } from './parts.ts';

const HOUR = 3_600_000; // ms
const DAY = 24 * HOUR;
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
  const level = levelFor(wanted, every);
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
  const rows = new Map<number, Rollup>();
  for (const { probe, from: since, to: until } of here) {
    const id = store.readings.idOf(probe, quantity);
    if (id === undefined) continue;
    const step = level === 'hour' ? HOUR : DAY;
    // A roll-up that reaches over a move belongs to where the probe hung when it began.
    const begin = Math.max(from - step + 1, since);
    const end = Math.min(to, until ?? Number.MAX_SAFE_INTEGER);
    for (const row of store.rollups[level === 'hour' ? 'hours' : 'days'](id, begin, end))
      rows.set(row.t, row);
  }
  const slot = (t: number) => {
    const row = rows.get(t);
    if (row) put(series, t, row.sum / row.n, row.min, row.max);
    else put(series, t, null, null, null);
  };
  if (level === 'hour') {
    for (let t = Math.floor(from / HOUR) * HOUR; t < to; t += HOUR) slot(t);
  } else {
    const calendar = parts.calendar();
    const last = calendar.dayOf(to - 1);
    for (let day = calendar.dayOf(from); day <= last; day = calendar.add(day, 1))
      slot(calendar.bounds(day).begins);
  }
  return series;
}
