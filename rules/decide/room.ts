import { type RoomHabits, roomHabits, type Span } from '../cooler/index.ts';
import { median } from '../statistics/index.ts';
import { type Celsius, celsius, HOUR, type Instant, MINUTE } from '../units.ts';
import { fresh, highest, newest, type Read, within } from './column.ts';
import { type How, readBy, told } from './how.ts';
import { type Look, outsideNow, VALID } from './look.ts';
import type { Column, GeneratorTold, PlaceNow, Quantity, SpotName } from './snapshot.ts';

// A cool room's probes by what they tell.

export type Feed = {
  readonly column: Column;
  readonly probe: string;
  /** Minutes between readings. */
  readonly every: number;
  /** Newest reading, while it is not too old to decide on. */
  readonly latest: Read | null;
};
export type Room = {
  readonly place: PlaceNow;
  readonly now: Instant;
  readonly setPoint: Celsius;
  readonly limit: Celsius;
  readonly value: number | null;
  readonly air: Feed | null;
  readonly product: Feed | null;
  readonly power: Feed | null;
  readonly door: Feed | null;
  /** A probe on the unit's coil or in the air it blows. */
  readonly coil: Feed | null;
  readonly habits: RoomHabits;
  readonly supply: SupplyNow;
  readonly burns: GeneratorTold | null;
  /** Outside now. */
  readonly outside: Celsius | null;
  /** The warmest to expect in the next 12 hours: now, or yesterday at those hours. Ours. */
  readonly warmestAhead: Celsius | null;
};

/** What the power plan of the farm file says of this moment; nothing planned is always on. */
export type SupplyNow = {
  readonly planned: boolean;
  readonly on: boolean;
  /** Since when it is so; null for always, or from before the plan that was given. */
  readonly since: Instant | null;
  /** When it changes next; null for never, or later than the plan that was given. */
  readonly until: Instant | null;
};

const MISSED = 3; // reports, common practice: silent for three is not heard
const LEAST = 10; // minutes, ours: a probe that reports each minute may lose a few
const DOOR_HOLDS = 60; // minutes, ours: a contact may report changes only

export const silentAfter = (every: number) => Math.max(MISSED * every, LEAST);
/** Longest hole, in minutes, that a stretch of readings may have. */
export const holeOf = ({ every }: Feed) => silentAfter(every);

function feed(
  place: PlaceNow,
  now: Instant,
  quantity: Quantity,
  order: readonly SpotName[],
  atLeast = 0,
): Feed | null {
  let old: Feed | null = null;
  for (const name of order) {
    for (const spot of place.spots) {
      const column = spot.columns[quantity];
      if (spot.spot !== name || column === undefined || newest(column, now) === null) continue;
      const latest = fresh(column, now, Math.max(silentAfter(spot.every), atLeast));
      const { probe } = spot;
      const found = { column, probe, every: reportsEach(column, spot.every), latest };
      if (latest !== null) return found;
      old ??= found;
    }
  }
  return old;
}

// A probe may report more seldom than the farm file says; that is a slow probe and not one with
// holes, as long as it still sees a cycle. Ours.
const SLOWEST = 15; // minutes
const LOOKED_AT = 24; // readings
const ONE_MINUTE = 1;

function reportsEach({ t }: Column, told: number): number {
  const last = t.slice(-LOOKED_AT);
  if (last.length < 3) return told;
  const steps = last.slice(1).map((at, i) => (at - (last[i] ?? at)) / MINUTE);
  return Math.max(told, Math.min(SLOWEST, median(steps)));
}

const ANY: readonly SpotName[] = ['unit', 'air', 'canopy', 'product', 'under-cover', 'grass'];

/** Which probe gave the newest reading, and when. */
export const feedHow = (feed: Feed | null): How =>
  feed?.latest == null ? told : readBy(feed.probe, feed.latest.t);

/** @throws RangeError for a place without set point and limit */
export function roomOf(look: Look, place: PlaceNow): Room {
  const { coolRoom } = place;
  if (coolRoom === null) throw new RangeError(`Expected a cool room, got ${place.id}`);
  const { now } = look;
  const outside = outsideNow(look.snapshot);
  const ahead =
    outside && (highest(outside.column, now - 24 * HOUR, now - 12 * HOUR)?.value ?? outside.value);
  return {
    place,
    now,
    setPoint: coolRoom.setPoint,
    limit: coolRoom.limit,
    value: coolRoom.value,
    air: feed(place, now, 'temperature', ['air', 'canopy', 'product']),
    product: feed(place, now, 'temperature', ['product']),
    power: feed(place, now, 'power', ANY),
    door: feed(place, now, 'door', ANY, DOOR_HOLDS),
    coil: feed(place, now, 'temperature', ['unit']),
    habits: coolRoom.habits ?? roomHabits([], { setPoint: coolRoom.setPoint, every: ONE_MINUTE }),
    supply: supplyNow(coolRoom.supply ?? null, now),
    burns: coolRoom.burns ?? null,
    outside: outside?.value ?? null,
    warmestAhead: outside && ahead !== null ? celsius(Math.max(outside.value, ahead)) : null,
  };
}

function supplyNow(windows: readonly Span[] | null, now: Instant): SupplyNow {
  if (windows === null) return { planned: false, on: true, since: null, until: null };
  const here = windows.find(({ from, to }) => from <= now && now < to);
  if (here !== undefined) return { planned: true, on: true, since: here.from, until: here.to };
  const before = windows.findLast(({ to }) => to <= now);
  const next = windows.find(({ from }) => from > now);
  const until = next?.from ?? null;
  return { planned: true, on: false, since: before?.to ?? null, until };
}

/** Share of the readings expected in the last `minutes` that came. */
export function coverage({ column, every }: Feed, now: Instant, minutes: number): number {
  const { from, to } = within(column, now - minutes * MINUTE + 1, now);
  return (to - from) / Math.max(1, Math.floor(minutes / every));
}

export const ENOUGH = 0.8; // share of samples, common practice: under it "not enough data"

/** Whether the air has fallen by half a kelvin from the highest of the last half hour. Ours. */
export function recovering({ air, now }: Room): boolean {
  if (air?.latest == null) return false;
  const peak = highest(air.column, now - VALID * MINUTE, now);
  return peak !== null && peak.value - air.latest.value >= 0.5;
}
