import { type Batches, makeBatches } from '../batches/index.ts';
import type { Calendar, Clock } from '../clock.ts';
import type { Farm } from '../farm/index.ts';
import { makeLots } from '../lots/index.ts';
import { makeChecks } from '../record/index.ts';
import { type Changed, type Store, troubleOf } from '../store/index.ts';
import { makeClimateDays } from './climateDays.ts';
import { makeCrossings } from './crossings.ts';
import { joinedAfter, makeDays, SPELL_DAYS } from './days.ts';
import { makeNights } from './nights.ts';
import { makePushed } from './pushed.ts';
import { makeRooms } from './rooms.ts';
import { makeSpots } from './spots.ts';
import { makeTake } from './take.ts';
import { makeWindow } from './window.ts';

export { type ClimateDays, placeRule } from './climateDays.ts';
export { longestGap } from './days.ts';
export { diseaseOfDay } from './diseaseOfDay.ts';
export { nightBounds } from './nights.ts';
export { type PlaceFacts, placeFacts, type SpotFacts } from './nowFacts.ts';
export { coverOf, cropsOf, wetOf } from './placeLimits.ts';
export { pair, SPOT_ORDER, type Spots } from './spots.ts';
export { type StripsFacts, stripsFacts } from './strips.ts';
export {
  usualVents,
  VENTS_TRUSTED,
  type VentState,
  ventSayings,
  ventStates,
} from './ventStates.ts';

const DEFAULT_EVERY = 300_000; // ms
/** After every calendar day there will be. */
const END_OF_TIME = '9999-12-31';

type StaleDays = {
  readonly place: string;
  readonly first: string;
  readonly last: string;
  readonly from: number;
  readonly to: number;
};
type Stale = (place: string | null, from: number, to: number) => void;
export type Snapshots = ReturnType<typeof makeSnapshots>;

/** Everything known about the farm, at one instant or over days; filled from the store. */
export function makeSnapshots(
  store: Store,
  farm: () => Farm,
  calendar: () => Calendar,
  clock: Clock,
  batches: Batches = makeBatches(store),
) {
  const spots = makeSpots(store);
  const window = makeWindow(store, clock.now);
  const nights = makeNights(store, spots, farm, calendar);
  const days = makeDays(store, spots, farm, calendar);
  const climate = makeClimateDays(store, spots, farm, calendar);
  const pushed = makePushed(store, farm, calendar);
  const lots = makeLots({ store, farm, calendar, readings: spots });
  const rooms = makeRooms(store, spots, farm, calendar, lots);
  let turn = 0;
  /** Told when what was made of a place's readings (null: of all) is stale. */
  const listeners = new Set<Stale>();
  const tell: Stale = (...stale) => {
    for (const listener of listeners) listener(...stale);
  };
  const dayAround = (t: number) => calendar().bounds(calendar().dayOf(t));

  /** Days of places that changed; those of several probes and quantities come to the same, once. */
  const staleDays = (touched: readonly Changed[]) => {
    const stale = new Map<string, StaleDays>();
    for (const { probe, from, to } of touched) {
      lots.touched(from);
      const every = store.probes.get(probe)?.everyMs ?? DEFAULT_EVERY;
      // A day is joined to the first readings after it, and looks back some days for its spells.
      const first = calendar().dayOf(from - joinedAfter(every));
      const last = calendar().add(calendar().dayOf(to), SPELL_DAYS);
      for (const place of spots.placesOf(probe, from, to)) {
        const key = `${place} ${first} ${last}`;
        const known = stale.get(key);
        stale.set(key, {
          ...{ place, first, last },
          from: Math.min(from, known?.from ?? from),
          to: Math.max(to, known?.to ?? to),
        });
      }
    }
    return stale.values();
  };
  const drop = (touched: readonly Changed[]) => {
    for (const { place, first, last, from, to } of staleDays(touched)) {
      store.placeFacts.drop(place, first, last);
      if (place === farm().outside?.id)
        for (const other of farm().places)
          store.placeFacts.dropNights(other.id, calendar().dayOf(from), last);
      nights.touched(place, from);
      climate.touched(place, first, last);
      tell(place, from, to);
      rooms.touched(place, calendar().dayOf(from), calendar().dayOf(to));
    }
  };

  return {
    spots,
    window,
    days,
    climate,
    lots,
    take: makeTake({
      ...{ store, farm, calendar, spots, nights, rooms, window, pushed },
      ...{ stored: lots.stored, batches: batches.all, checked: makeChecks(store).last },
    }),
    nights,
    crossed: makeCrossings(spots, farm),
    /** Hears of every change of what was measured at a place, once it is folded. */
    listen: (listener: Stale) => listeners.add(listener),
    /**
     * Drops what was made from readings that changed; brings roll-ups up to date when it is time.
     *
     * @param all whether to put everything in its place now.
     */
    fold(all = false): Changed[] {
      store.rollups.daysAre(dayAround); // a store that was mended has forgotten it
      let changed: readonly Changed[] = [];
      store.spare(() => {
        changed = all
          ? store.rollups.fold(dayAround)
          : store.rollups.foldWhenDue(dayAround, clock.now());
      });
      const touched = [...changed, ...store.readings.touched.take()];
      try {
        if (touched.length > 0) store.transaction(() => drop(touched));
      } catch (error) {
        for (const { probe, from, to } of touched) store.readings.touched.add(probe, from, to);
        if (troubleOf(error) === null) throw error;
      }
      return touched;
    },
    /** A probe was placed from `from` on: what was made of these places since is stale. */
    moved(places: readonly string[], from: number) {
      spots.refresh();
      const first = calendar().dayOf(from);
      for (const place of places) {
        store.placeFacts.drop(place, first, END_OF_TIME);
        tell(place, from, Number.POSITIVE_INFINITY);
      }
      nights.forgetAll();
      climate.forgetAll();
      lots.touched(0);
    },
    /** The farm's description changed: all that was made with it is stale. */
    refarmed() {
      spots.refresh();
      store.placeFacts.dropAll();
      tell(null, 0, Number.POSITIVE_INFINITY);
      nights.forgetAll();
      climate.forgetAll();
      lots.touched(0);
    },
    /** Works out days of one place that nobody has asked for yet; of the next one at the next call. */
    prepareDays() {
      const { places } = farm();
      const place = places[turn++ % Math.max(1, places.length)];
      if (place) days.between(place.id, '', END_OF_TIME, clock.now());
    },
  };
}
