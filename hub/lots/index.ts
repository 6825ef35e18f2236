import type { LotNow, Stored } from '../../rules/decide/index.ts';
import { celsius, instant, MINUTE, minutes } from '../../rules/units.ts';
import type { Calendar } from '../clock.ts';
import type { Farm } from '../farm/index.ts';
import type { Store } from '../store/index.ts';
import { makeBook } from './book.ts';
import { makeFoodClocks } from './foodClocks.ts';
import { cropName, keepingOf } from './keepingOf.ts';
import type { Lot } from './lot.ts';
import { nextSales } from './nextSales.ts';
import { OF_PRODUCE, placeSeries, type Readings } from './placeSeries.ts';
import { joinSeen, type Seen, seenBetween } from './seen.ts';

export { foldLot } from './foldLot.ts';
export type { FoodClock } from './foodClocks.ts';
export { type CropKeeping, cropName, keepingOf } from './keepingOf.ts';
export { type Lot, type LotEntry, type LotEvent, type LotFacts, lotUses } from './lot.ts';
export { OF_PRODUCE, OF_ROOM, placeSeries, type Readings, type Series } from './placeSeries.ts';
export type { Seen } from './seen.ts';

const DAY = 24 * 60 * MINUTE;
const DEFAULT_EVERY = 5 * MINUTE;
/** A reading says how warm a lot lies for half an hour, as it does for all decisions. Ours. */
const FRESH = 30 * MINUTE;
/** Where neither the class nor the room has a limit. Ours: it is one with most printed ones. */
const LIMIT = 5; // °C

export type LotsParts = {
  readonly store: Store;
  readonly farm: () => Farm;
  readonly calendar: () => Calendar;
  readonly readings: Omit<Readings, 'everyMs'>;
};
export type Lots = ReturnType<typeof makeLots>;

/** The lots of the cool rooms: what people entered of them, and what probes say they went through. */
export function makeLots({ store, farm, calendar, readings: given }: LotsParts) {
  const book = makeBook(store);
  const clocks = makeFoodClocks(store);
  const readings: Readings = {
    ...given,
    everyMs: (probe) => store.probes.get(probe)?.everyMs ?? DEFAULT_EVERY,
  };
  /** What a lot went through before today: readings of the past seldom change. */
  const kept = new Map<string, { readonly until: number; readonly seen: Seen }>();

  const classOf = (lot: Lot) => lot.class ?? keepingOf(farm(), lot.crop).class;
  const clockOf = (lot: Lot) => clocks.of(classOf(lot));
  const limitOf = (lot: Lot) => clockOf(lot)?.limit ?? farm().place(lot.place)?.limit ?? LIMIT;

  type Shared = Map<string, Seen>;
  const seen = (lot: Lot, now: number, shared: Shared = new Map()): Seen => {
    const parts = { readings, outside: farm().outside?.id ?? null, limit: limitOf(lot), shared };
    const begun = Math.min(lot.harvestedAt ?? lot.storedAt, lot.storedAt);
    const end = Math.max(begun, lot.endedAt ?? now);
    const midnight = calendar().bounds(calendar().dayOf(now)).begins;
    const until = Math.max(begun, Math.min(midnight, end));
    const key = `${lot.id}\n${lot.entries.at(-1)?.id}\n${parts.limit}`;
    let past = kept.get(key);
    if (past?.until !== until) {
      past = { until, seen: seenBetween(parts, lot, begun, until) };
      kept.set(key, past);
    }
    return joinSeen(past.seen, seenBetween(parts, lot, until, end));
  };

  const temperatureOf = (place: string, now: number): number | null =>
    placeSeries(readings, place, OF_PRODUCE, now - FRESH, now)
      .filter(({ value }) => value !== null)
      .at(-1)?.value ?? null;

  const lotNow = (
    lot: Lot,
    now: number,
    shared: Shared = new Map(),
    at = temperatureOf(lot.place, now),
  ): LotNow => {
    const through = seen(lot, now, shared);
    const clock = clockOf(lot)?.clockHours ?? null;
    const { outdoorHours: hours, outdoorSum } = through;
    return {
      id: lot.id,
      place: lot.place,
      crop: cropName(farm(), lot.crop),
      kilograms: lot.kgLeft,
      pricePerKilogram: lot.price ?? farm().crop(lot.crop)?.price ?? null,
      storedAt: instant(lot.storedAt),
      keeps: keepingOf(farm(), lot.crop),
      history: through.pieces,
      at: at === null ? null : celsius(at),
      outdoors: hours === 0 ? null : celsius(outdoorSum / hours),
      exposure: {
        above: minutes(through.above),
        unknown: minutes(through.unknown),
        limit: celsius(limitOf(lot)),
        clock: clock === null ? null : minutes(clock * 60),
      },
      released: lot.released === null ? null : instant(lot.released.at),
    };
  };

  return {
    ...book,
    clocks,
    readings,
    classOf,
    clockOf,
    limitOf,
    seen,
    now: lotNow,
    sales: (now: number) => nextSales(farm(), calendar(), now),
    /** For the snapshot: undefined where nobody keeps lots. */
    stored(now: number): Stored | undefined {
      const lots = book.inStore();
      if (lots.length === 0) return undefined;
      const shared: Shared = new Map();
      const rooms = new Map<string, number | null>();
      const at = (place: string) => {
        if (!rooms.has(place)) rooms.set(place, temperatureOf(place, now));
        return rooms.get(place) ?? null;
      };
      return {
        lots: lots.map((lot) => lotNow(lot, now, shared, at(lot.place))),
        sales: nextSales(farm(), calendar(), now),
      };
    },
    /** The room's usual temperature: the median over 24 hours; null without readings. */
    dayOf: (place: string, now: number) => placeSeries(readings, place, OF_PRODUCE, now - DAY, now),
    /** Readings since `from`, or placings, or the farm's description changed. */
    touched(from: number) {
      for (const [key, { until }] of kept) if (from < until) kept.delete(key);
    },
  };
}
