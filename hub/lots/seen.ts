import {
  ANY_GAP,
  exposureClock,
  type LotPiece,
  lotHistory,
  unknownSpans,
} from '../../rules/cooler/index.ts';
import { HOUR, instant } from '../../rules/units.ts';
import type { Lot } from './lot.ts';
import { OF_FIELD, OF_PRODUCE, placeSeries, type Readings } from './placeSeries.ts';

/** What a lot went through in one stretch of time; two that follow each other are added up. */
export type Seen = {
  readonly pieces: readonly LotPiece[];
  /** Minutes over the limit, and minutes nobody knows. */
  readonly above: number;
  readonly unknown: number;
  /** Hours that a probe in a crate knows, and hours any probe does. */
  readonly productHours: number;
  readonly knownHours: number;
  /** Of the unknown hours those for which outdoors is known, and their degrees times hours. */
  readonly outdoorHours: number;
  readonly outdoorSum: number;
};

const NOTHING: Seen = {
  pieces: [],
  above: 0,
  unknown: 0,
  productHours: 0,
  knownHours: 0,
  outdoorHours: 0,
  outdoorSum: 0,
};

export const joinSeen = (a: Seen, b: Seen): Seen => ({
  pieces: [...a.pieces, ...b.pieces],
  above: a.above + b.above,
  unknown: a.unknown + b.unknown,
  productHours: a.productHours + b.productHours,
  knownHours: a.knownHours + b.knownHours,
  outdoorHours: a.outdoorHours + b.outdoorHours,
  outdoorSum: a.outdoorSum + b.outdoorSum,
});

export type SeenParts = {
  readonly readings: Readings;
  /** The place that stands for outdoors. */
  readonly outside: string | null;
  /** °C of the lot's class. */
  readonly limit: number;
  /** What one room was like in one stretch, for lots that lay there side by side. */
  readonly shared?: Map<string, Seen>;
};

/** Where a lot was from when to when: where it was harvested, then each room it lay in. */
export function whereabouts(lot: Lot, end: number) {
  const begun = Math.min(lot.harvestedAt ?? lot.storedAt, lot.storedAt);
  const field = { place: lot.from, order: OF_FIELD as readonly string[], from: begun };
  const rooms = lot.stays.map(({ place, from }) => ({ place, order: OF_PRODUCE, from }));
  const all = begun < lot.storedAt ? [field, ...rooms] : rooms;
  return all.map((one, i) => ({ ...one, to: Math.max(one.from, all[i + 1]?.from ?? end) }));
}

/** What a lot went through between two instants, as far as probes know. */
export function seenBetween(
  { readings, outside, limit, shared }: SeenParts,
  lot: Lot,
  from: number,
  to: number,
): Seen {
  let seen = NOTHING;
  for (const where of whereabouts(lot, Math.max(to, lot.storedAt))) {
    const begins = Math.max(from, where.from);
    const ends = Math.min(to, where.to);
    if (ends <= begins) continue;
    const key = `${where.place}\n${where.order[0]}\n${begins}\n${ends}\n${limit}`;
    const found = shared?.get(key) ?? inOnePlace(where.place, where.order, begins, ends);
    shared?.set(key, found);
    seen = joinSeen(seen, found);
  }
  return seen;

  function inOnePlace(
    place: string | null,
    order: readonly string[],
    begins: number,
    ends: number,
  ) {
    // Nobody told where it was harvested: time that no probe speaks for.
    const series = placeSeries(readings, place ?? '', order, begins, ends);
    const clock = exposureClock(series, {
      cutAt: instant(begins),
      now: instant(ends),
      limit,
      clockMinutes: 0,
      of: 'air',
      gapMaxMinutes: ANY_GAP,
    });
    let [outdoorHours, outdoorSum] = [0, 0];
    for (const span of outside === null ? [] : unknownSpans(series))
      for (const { hours, temperature } of lotHistory(
        placeSeries(readings, outside ?? '', OF_FIELD, span.from, span.to),
      ))
        if (temperature !== null) {
          outdoorHours += hours;
          outdoorSum += hours * temperature;
        }
    const crate = place === null ? [] : placeSeries(readings, place, ['product'], begins, ends);
    return {
      pieces: lotHistory(series),
      above: clock.above,
      unknown: clock.unknown,
      productHours: knownIn(crate),
      knownHours: knownIn(series),
      outdoorHours,
      outdoorSum,
    };
  }
}

const knownIn = (series: Parameters<typeof lotHistory>[0]) => {
  const first = series[0]?.t ?? 0;
  const whole = ((series.at(-1)?.t ?? first) - first) / HOUR;
  return whole - unknownSpans(series).reduce((sum, { from, to }) => sum + (to - from) / HOUR, 0);
};
