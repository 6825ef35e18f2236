import {
  type Look,
  lookAt,
  moveProduce,
  type PlaceNow,
  type Snapshot,
  type SpotName,
  type SpotNow,
} from '../../rules/decide/index.ts';
import { type Instant, instant, minutes } from '../../rules/units.ts';
import type { Past, Placement } from '../store/index.ts';
import { keeper, type WouldAsk } from './keeper.ts';
import { HOUR } from './pastSpots.ts';

const MINUTE = 60_000; // ms
const BACK = 12 * HOUR; // readings that the rules on a room look back on; ours
/** K under the limit from which a room may race to it within the hour. Ours. */
const NEAR = 1;
const STEP = 10 * MINUTE; // between two looks; ours
/** A limit inside the room's own cycle is near all day: then a look every half hour has to do. Ours. */
const MANY = 1500; // hours
const WIDE_STEP = 30 * MINUTE;
const QUANTITIES = ['temperature', 'power', 'door'] as const;
const AIR: readonly SpotName[] = ['air', 'canopy', 'product'];

type Hung = Pick<Placement, 'probe' | 'from' | 'to'> & { readonly spot: SpotName };

/**
 * Walks a cool room through the hours in which its air came near either limit, by the readings of
 * those hours: when produce would have had to be moved. As the hub judges a room that it does not
 * know yet, by set point and limit.
 * @param limits the limits of both sides: the hours walked are the same
 */
export function walkRoom(
  past: Past,
  place: PlaceNow,
  placements: readonly Placement[],
  looks: readonly Look[],
  limits: readonly number[],
): readonly WouldAsk[] {
  const hung = placements.filter(
    (one): one is Placement & { spot: SpotName } => one.place === place.id,
  );
  const [first, last] = [looks[0], looks.at(-1)];
  if (first === undefined || last === undefined || place.coolRoom === null) return [];
  const span = { from: first.now, to: last.now };
  const near = nearHours(past, hung, span, Math.min(...limits) - NEAR);
  const step = near.size > MANY ? WIDE_STEP : STEP;
  const keep = keeper(step);
  let columns: SpotNow[] = [];
  let read = Number.NEGATIVE_INFINITY;
  for (const hourly of looks) {
    const hour = Math.floor(hourly.now / HOUR) * HOUR;
    if (!near.has(hour) && keep.idle()) continue;
    if (hour >= read) {
      columns = spotsAt(past, hung, hour - BACK, hour + 24 * HOUR);
      read = hour + 24 * HOUR;
    }
    for (let at = hour; at < hour + HOUR; at += step) {
      const now = instant(at);
      const snapshot: Snapshot = { ...hourly.snapshot, now, standing: keep.standing() };
      const look = lookAt(snapshot, [], hourly.sun);
      const here = { ...place, spots: columns.map((spot) => cut(spot, now)) };
      const answer = moveProduce(look, here);
      keep.take([{ kind: 'move-produce', place: place.id, subject: null, ...answer }], now);
    }
  }
  return keep.asked();
}

/** Hours in which the air rose over `above`, each with the one after it. */
function nearHours(
  past: Past,
  hung: readonly Hung[],
  { from, to }: { readonly from: number; readonly to: number },
  above: number,
): Set<number> {
  const near = new Set<number>();
  for (const one of hung.filter(({ spot }) => AIR.includes(spot)))
    for (const [t, max] of past.peaks(
      one.probe,
      'temperature',
      Math.max(from - HOUR, one.from),
      Math.min(to + HOUR, one.to ?? Number.MAX_SAFE_INTEGER),
    ))
      if (max > above) for (const after of [0, HOUR]) near.add(t + after);
  return near;
}

function spotsAt(past: Past, hung: readonly Hung[], from: number, to: number): SpotNow[] {
  return hung.flatMap(({ probe, spot, from: since, to: until }) => {
    const columns: Record<string, { t: Instant[]; value: number[] }> = {};
    for (const quantity of QUANTITIES) {
      const reads = past.readings(
        probe,
        quantity,
        Math.max(from, since),
        Math.min(to, until ?? Number.MAX_SAFE_INTEGER),
      );
      if (reads.length === 0) continue;
      columns[quantity] = {
        t: reads.map(([t]) => instant(t)),
        value: reads.map(([, value]) => value),
      };
    }
    return Object.keys(columns).length === 0
      ? []
      : [{ spot, probe, every: minutes(1), nights: [], columns, air: [] }];
  });
}

/** Nothing that was read later is known yet. */
const cut = (spot: SpotNow, now: Instant): SpotNow => ({
  ...spot,
  columns: Object.fromEntries(
    Object.entries(spot.columns).map(([quantity, column]) => {
      const to = column.t.findLastIndex((t) => t <= now) + 1;
      const from = column.t.findIndex((t) => t > now - BACK);
      return [
        quantity,
        {
          t: column.t.slice(Math.max(0, from), to),
          value: column.value.slice(Math.max(0, from), to),
        },
      ];
    }),
  ),
});
