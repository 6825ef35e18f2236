import type { Air } from '../air/index.ts';
import type { TaskKind } from '../answer.ts';
import { taskKey } from '../answer.ts';
import type { Celsius, Instant } from '../units.ts';
import { celsius } from '../units.ts';
import { fresh, freshAir } from './column.ts';
import { type How, readBy, told } from './how.ts';
import { type Sun, sunAround } from './night.ts';
import type { Crop, NightForecast, PlaceNow, Snapshot, SpotName, SpotNow } from './snapshot.ts';

/** What several rules need from one snapshot, worked out once. */
export type Look = {
  readonly snapshot: Snapshot;
  readonly now: Instant;
  /** null where the sun does not both rise and set. */
  readonly sun: Sun | null;
  readonly forecasts: readonly NightForecast[];
  /** Outside air younger than 30 minutes. */
  readonly outside: (Air & { readonly place: string; readonly how: How }) | null;
  /** Outside temperature younger than 30 minutes; it may come from a probe without humidity. */
  readonly outsideTemperature: Celsius | null;
  /** Which probe said so, and when. */
  readonly outsideHow: How;
};

// A reading decides for half an hour. Ours, from no source.
export const VALID = 30; // minutes

const SPEAKS_FOR_AIR: readonly SpotName[] = ['air', 'canopy', 'grass'];
const SPEAKS_FOR_CROP: readonly SpotName[] = ['canopy', 'air', 'grass'];

/** The first of `order` that gives something. */
function firstSpot<T>(
  place: PlaceNow,
  order: readonly SpotName[],
  read: (spot: SpotNow) => T | null,
): T | null {
  for (const name of order) {
    for (const spot of place.spots) {
      if (spot.spot !== name) continue;
      const found = read(spot);
      if (found !== null) return found;
    }
  }
  return null;
}

/** Inside air of a place, where the crop hangs if a probe does; null when older than 30 minutes. */
export const airIn = (place: PlaceNow, now: Instant) =>
  firstSpot(place, SPEAKS_FOR_CROP, (spot) => {
    const read = freshAir(spot.air, now, VALID);
    return read === null ? null : { ...read, spot };
  });

export const temperatureIn = (
  place: PlaceNow,
  now: Instant,
  order: readonly SpotName[] = SPEAKS_FOR_CROP,
) =>
  firstSpot(place, order, (spot) => {
    const column = spot.columns.temperature;
    const read = fresh(column, now, VALID);
    return read === null || column === undefined
      ? null
      : { t: read.t, value: celsius(read.value), column, spot };
  });

/** Outdoor places speak for outside; a patch does where there is none. */
function outdoors({ places }: Snapshot) {
  const outdoor = places.filter(({ kind }) => kind === 'outdoor');
  return outdoor.length > 0 ? outdoor : places.filter(({ kind }) => kind === 'patch');
}

export function outsideAir(snapshot: Snapshot): Look['outside'] {
  for (const place of outdoors(snapshot)) {
    const air = firstSpot(place, SPEAKS_FOR_AIR, (spot) => {
      const read = freshAir(spot.air, snapshot.now, VALID);
      return read === null ? null : { ...read, how: readBy(spot.probe, read.t) };
    });
    if (air !== null) {
      const { temperature, humidity, how } = air;
      return { place: place.id, temperature, humidity, how };
    }
  }
  return null;
}

export function outsideNow(snapshot: Snapshot) {
  for (const place of outdoors(snapshot)) {
    const read = temperatureIn(place, snapshot.now, SPEAKS_FOR_AIR);
    if (read !== null) return read;
  }
  return null;
}

/** Tonight's low in the open, from the probe that stands for outside air. */
export function outsideLow({ snapshot, forecasts }: Look): NightForecast | null {
  for (const place of outdoors(snapshot)) {
    for (const name of SPEAKS_FOR_AIR) {
      const found = forecasts.find((f) => f.place === place.id && f.spot === name);
      if (found !== undefined) return found;
    }
  }
  return null;
}

/** @param sun where it is known already, from a look of the same day */
export function lookAt(
  snapshot: Snapshot,
  forecasts: readonly NightForecast[],
  sun: Sun | null = sunAround(snapshot),
): Look {
  const outside = outsideNow(snapshot);
  return {
    snapshot,
    now: snapshot.now,
    sun,
    forecasts,
    outside: outsideAir(snapshot),
    outsideTemperature: outside?.value ?? null,
    outsideHow: outside === null ? told : readBy(outside.spot.probe, outside.t),
  };
}

export const cropOf = ({ snapshot }: Look, place: PlaceNow): Crop | null =>
  snapshot.crops.find(({ id }) => id === place.crop) ?? null;

export const stands = ({ snapshot }: Look, kind: TaskKind, place: string, subject?: string) =>
  snapshot.standing.includes(taskKey({ kind, place, subject: subject ?? null }));
