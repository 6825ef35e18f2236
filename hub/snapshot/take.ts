import type {
  AirReading,
  Column,
  PlaceNow,
  ProbeNow,
  Quantity,
  Snapshot,
  SpotName,
  SpotNow,
  Stored,
} from '../../rules/decide/index.ts';
import { celsius, type Instant, instant, minutes } from '../../rules/units.ts';
import type { Batch } from '../batches/index.ts';
import type { Calendar } from '../clock.ts';
import type { Farm } from '../farm/index.ts';
import type { Placement, Store } from '../store/index.ts';
import { checkOf } from './checkOf.ts';
import { coverNights } from './coverNights.ts';
import { learnedRoom } from './learnedRoom.ts';
import { type Nights, nightBounds } from './nights.ts';
import { pickingNow } from './pickingNow.ts';
import { coverOf, cropsOf, wetOf } from './placeLimits.ts';
import type { makePushed } from './pushed.ts';
import type { Rooms } from './rooms.ts';
import { pair, type Spots } from './spots.ts';
import { supplyPlan } from './supplyPlan.ts';
import { traysNow } from './traysNow.ts';
import { usualVents, ventStates } from './ventStates.ts';
import { WINDOW, type Window } from './window.ts';

const MINUTE = 60_000;
const HOUR = 60 * MINUTE;
const DEFAULT_EVERY = 5 * MINUTE;
/** What somebody said about covers is trusted this long; then it is not known. Ours. */
const COVERS_TRUSTED = 30 * HOUR;

export type TakeParts = {
  readonly store: Store;
  readonly farm: () => Farm;
  readonly calendar: () => Calendar;
  readonly spots: Spots;
  readonly nights: Nights;
  readonly rooms: Rooms;
  readonly window: Window;
  readonly pushed: ReturnType<typeof makePushed>;
  /** The lots of the cool rooms. */
  readonly stored: (now: number) => Stored | undefined;
  /** Every batch of trays that was sown. */
  readonly batches: () => readonly Batch[];
  /** A probe's last check against melting ice. */
  readonly checked: (probe: string) => { readonly at: number } | undefined;
};

/** Reads all that is known at one instant, once, as plain data. */
export function makeTake(parts: TakeParts) {
  const { store, farm, calendar, spots, nights, rooms, window, pushed, checked } = parts;
  const pairs = new Map<string, { versions: string; air: readonly AirReading[] }>();

  const airOf = (probe: string, every: number): readonly AirReading[] => {
    const temperature = window.column(probe, 'temperature');
    const humidity = window.column(probe, 'humidity');
    const versions = `${temperature.version}:${humidity.version}`;
    const known = pairs.get(probe);
    if (known?.versions === versions) return known.air;
    // A probe without humidity, as in most cool rooms, has no pairs to look for.
    if (humidity.t.length === 0) return [];
    const air = pair(temperature, humidity, Math.max(every / 2, 2.5 * MINUTE)).filter(
      ({ humidity: value }) => value !== null,
    ) as unknown as AirReading[];
    pairs.set(probe, { versions, air });
    return air;
  };

  const firstFrom = (air: readonly AirReading[], from: number) => {
    const start = air.findIndex(({ t }) => t >= from);
    return start < 0 ? air.length : start;
  };
  const since = ({ t, value }: Column, from: number): Column => {
    if ((t[0] ?? from) >= from) return { t, value };
    const found = t.findIndex((at) => at >= from);
    const start = found < 0 ? t.length : found;
    return { t: t.slice(start), value: value.slice(start) };
  };

  const spotNow = (here: Placement, every: number, now: number): SpotNow => {
    const from = Math.max(here.from, now - WINDOW);
    const columns: Partial<Record<Quantity, Column>> = {};
    for (const quantity of store.readings.quantitiesOf(here.probe)) {
      const column = since(window.column(here.probe, quantity), from);
      if (column.t.length > 0) columns[quantity as Quantity] = column;
    }
    const air = airOf(here.probe, every);
    return {
      spot: here.spot as SpotName,
      probe: here.probe,
      every: minutes(every / MINUTE),
      columns,
      air: (air[0]?.t ?? from) < from ? air.slice(firstFrom(air, from)) : air,
      nights: nights.of(here.place, here.spot, now),
    };
  };

  const said = (place: string, what: string, trusted: number, now: number): boolean | null => {
    const entry = store.journal.newestOf(place, what);
    return entry && now - entry.t < trusted ? (entry.body as { is: boolean }).is : null;
  };

  const placeNow = (place: Farm['places'][number], spotsHere: SpotNow[], now: number): PlaceNow => {
    return {
      id: place.id,
      kind: place.kind,
      crop: place.crop ?? null,
      ...traysNow(farm(), parts.batches(), place, now),
      vents: place.vents,
      ...(place.vents ? ventsOf(place, now) : { opened: null }),
      covered: place.cover ? said(place.id, 'covers', COVERS_TRUSTED, now) : null,
      wet: wetOf(place),
      cover: coverOf(farm(), place),
      coverNights: coverNights(store, place.id, spotsHere, (night) =>
        nightBounds(farm(), calendar(), night),
      ),
      water: place.water
        ? {
            below: place.water.below,
            minutes: place.water.minutes === undefined ? null : minutes(place.water.minutes),
          }
        : null,
      picking: pickingNow(farm(), place, calendar().dayOf(now)),
      coolRoom:
        place.kind === 'cool-room' && place.setPoint !== undefined && place.limit !== undefined
          ? roomNow(place, place.setPoint, place.limit, now, spotsHere)
          : null,
      spots: spotsHere,
    };
  };

  const ventsOf = (place: Farm['places'][number], now: number) => {
    const airing = usualVents(farm(), calendar(), place.id, calendar().dayOf(now));
    const state = ventStates(store, farm(), calendar(), place.id, now, now)(now);
    return {
      opened: state.open,
      asUsual: state.by === 'usual',
      staysOpen: state.overnight,
      ...(airing === null ? {} : { airing }),
    };
  };

  const roomNow = (
    { id, value, power }: Farm['places'][number],
    setPoint: number,
    limit: number,
    now: number,
    spotsHere: readonly SpotNow[],
  ): PlaceNow['coolRoom'] => ({
    setPoint: celsius(setPoint),
    limit: celsius(limit),
    value: value ?? null,
    ...learnedRoom(rooms.of(id, instant(now)), spotsHere, calendar(), instant(now)),
    ...(power?.hours ? { supply: supplyPlan(power.hours, calendar(), instant(now)) } : {}),
    ...(power?.litresPerHour === undefined
      ? {}
      : {
          burns: {
            litresPerHour: power.litresPerHour,
            fuel: power.fuel,
            price: power.litrePrice ?? null,
          },
        }),
  });

  const batteryOf = (probe: string): ProbeNow['battery'] => {
    const share = window.newest(probe, 'battery');
    const volts = window.newest(probe, 'battery-voltage');
    if (share && (!volts || share.t >= volts.t)) return { ...share, unit: '%' };
    return volts && { ...volts, unit: 'V' };
  };

  const probesNow = (now: number, heardAt: (probe: string) => number | null): ProbeNow[] => {
    const doubtful = new Map<string, number>();
    for (const { source, count } of store.refusals.since(now - 24 * HOUR))
      doubtful.set(source, (doubtful.get(source) ?? 0) + count);
    return store.probes.all().map(({ id, everyMs }) => {
      const here = spots.currentOf(id);
      const heard = heardAt(id);
      return {
        id,
        place: here?.place ?? null,
        spot: (here?.spot as SpotName | undefined) ?? null,
        every: minutes(everyMs / MINUTE),
        // From 0: placed by the farm file before anybody looked, so its silence has no beginning.
        placedAt: here && here.from > 0 ? instant(here.from) : null,
        heardAt: heard === null ? null : instant(heard),
        stuck: (['temperature', 'humidity'] as const).flatMap((quantity) => {
          const from = window.stuckSince(id, quantity);
          return from === null ? [] : [{ quantity, since: from }];
        }),
        doubtful: doubtful.get(id) ?? 0,
        battery: batteryOf(id),
        check: checkOf(store, farm(), here, checked),
      };
    });
  };

  return function take(
    now: Instant,
    standing: readonly string[],
    heardAt: (probe: string) => number | null,
  ): Snapshot {
    const day = calendar().dayOf(now);
    const { lat, lon, wage } = farm().file.farm;
    const every = new Map(store.probes.all().map(({ id, everyMs }) => [id, everyMs]));
    const here = new Map<string, SpotNow[]>();
    for (const placement of spots.current()) {
      const list = here.get(placement.place) ?? [];
      list.push(spotNow(placement, every.get(placement.probe) ?? DEFAULT_EVERY, now));
      here.set(placement.place, list);
    }
    const stored = parts.stored(now);
    return {
      now,
      day: { name: day, ...calendar().bounds(day) },
      farm: { lat, lon, wage },
      crops: cropsOf(farm()),
      places: farm().places.map((place) => placeNow(place, here.get(place.id) ?? [], now)),
      probes: probesNow(now, heardAt),
      standing,
      pushed: pushed(now),
      ...(stored === undefined ? {} : { stored }),
    };
  };
}
