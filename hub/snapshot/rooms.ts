import {
  countedDay,
  drawnDay,
  type EnergyDay,
  type OffFit,
  offFits,
  offSpans,
  powerDay,
  type RoomDay,
  type RoomHabits,
  roomDay,
  roomHabits,
  type Span,
  smoothTrace,
  type Trace,
  unitCalls,
  worksBy,
} from '../../rules/cooler/index.ts';
import { percentile } from '../../rules/statistics/index.ts';
import { type Instant, instant } from '../../rules/units.ts';
import type { Calendar } from '../clock.ts';
import type { Farm } from '../farm/index.ts';
import type { Lot } from '../lots/index.ts';
import type { Store } from '../store/index.ts';
import { type Filled, filledNow, type RoomFill, roomFill } from './roomFill.ts';
import type { Spots } from './spots.ts';
import { supplyPlan } from './supplyPlan.ts';
import { type SupplyDay, supplyDay, type UsualHours, usualHours } from './usualHours.ts';

const MINUTE = 60_000;
const HOUR = 60 * MINUTE;
/** Days a room's habits are learned from. Two to four weeks: common practice; 28 is ours. */
const DAYS = 28;
/** From so many whole days on, today's beginning teaches nothing more. Ours. */
const WITHOUT_TODAY = 5;

const AIR = ['air', 'canopy', 'product'];
const METER = ['unit', 'air', 'canopy', 'product', 'under-cover', 'grass'];
const OUTSIDE = ['air', 'canopy', 'grass'];

export type RoomLearned = {
  readonly habits: RoomHabits;
  readonly energyDays: readonly EnergyDay[];
  /** Hours in which its supply usually is on; null while they are not clear, or told. */
  readonly usual: UsualHours | null;
  /** How full it is now by the book of lots, and how many stops were seen with as much in it. */
  readonly filled: Filled;
};

type MadeDay = {
  readonly day: RoomDay;
  readonly fits: readonly OffFit[];
  readonly supply: SupplyDay | null;
};
type Kept = {
  /** Which probes hung where, and what was told of the room: with others all is made again. */
  readonly made: string;
  readonly days: Map<string, MadeDay | null>;
  learned: Omit<RoomLearned, 'filled'> & { readonly fill: RoomFill };
  /** The days it was learned from. */
  from: readonly MadeDay[];
  at: number;
};

/** What is usual in each cool room: whole days worked out once, looked at again once an hour. */
export function makeRooms(
  store: Store,
  spots: Spots,
  farm: () => Farm,
  calendar: () => Calendar,
  lots: { readonly all: () => readonly Lot[]; readonly inStore: () => readonly Lot[] },
) {
  const rooms = new Map<string, Kept>();

  const trace = (
    place: string,
    order: readonly string[],
    quantity: string,
    from: number,
    to: number,
  ): Trace => {
    for (const spot of order) {
      const points = spots.points(place, spot, quantity, from, to);
      if (points.length > 0)
        return { t: points.map(({ t }) => instant(t)), value: points.map(({ value }) => value) };
    }
    return { t: [], value: [] };
  };
  const everyOf = (place: string) => {
    const here = spots.current().filter((one) => one.place === place && AIR.includes(one.spot));
    const found = AIR.flatMap((spot) => here.find((one) => one.spot === spot) ?? [])[0];
    return (found ? (store.probes.get(found.probe)?.everyMs ?? 5 * MINUTE) : 5 * MINUTE) / MINUTE;
  };

  /** Stretches of a day in which the supply was off by plan. */
  const stops = (place: string, from: Instant, to: Instant): Span[] => {
    const hours = farm().place(place)?.power?.hours;
    if (!hours || hours.length === 0) return [];
    const on = supplyPlan(hours, calendar(), from).filter((span) => span.to > from);
    const off: Span[] = [];
    let last: Instant = from;
    for (const span of on) {
      if (span.from > last && last < to)
        off.push({ from: last, to: instant(Math.min(span.from, to)) });
      last = instant(Math.max(last, span.to));
    }
    return off;
  };

  const make = (place: string, from: Instant, to: Instant): MadeDay | null => {
    const air = trace(place, AIR, 'temperature', from, to);
    if (air.t.length === 0) return null;
    const every = everyOf(place);
    const hole = Math.max(10, 3 * every) * MINUTE;
    const power = trace(place, METER, 'power', from, to);
    const energy = trace(place, METER, 'energy', from, to);
    const door = trace(place, METER, 'door', from, to);
    const there = farm().outside?.id;
    const outside =
      there === undefined ? { t: [], value: [] } : trace(there, OUTSIDE, 'temperature', from, to);
    const cold = trace(place, ['unit'], 'temperature', from, to);
    const coil = coilDay(cold, air);
    const off = [...stops(place, from, to), ...offSpans(power, hole)];
    const fits = offFits(off, { air, outside, door: door.t.length > 0 ? door : null });
    const day = roomDay(
      air,
      { from, to, every },
      {
        meanOutside: meanOf(outside.value),
        warmestOutside: outside.value.length === 0 ? null : percentile(outside.value, 0.97),
        power: powerDay(power, hole),
        coil,
        calls: unitCalls(worksBy(power, cold, air, coil), smoothTrace(air, from, to)),
        tauFits: fits.map(({ tauHours }) => tauHours),
        kilowattHours: (countedDay(energy) ?? drawnDay(power, hole))?.kilowattHours ?? null,
      },
    );
    return { day, fits, supply: supplyDay(power, hole) };
  };

  const learn = (place: string, kept: Kept, now: Instant): Kept['learned'] => {
    const today = calendar().dayOf(now);
    const made: MadeDay[] = [];
    for (let back = DAYS; back >= 1; back--) {
      const day = calendar().add(today, -back);
      let one = kept.days.get(day);
      if (one === undefined) {
        const { begins, ends } = calendar().bounds(day);
        one = make(place, begins, ends);
        kept.days.set(day, one);
      }
      if (one !== null) made.push(one);
    }
    for (const day of kept.days.keys())
      if (day < calendar().add(today, -DAYS)) kept.days.delete(day);
    const partial = made.length < WITHOUT_TODAY;
    // The same days teach the same: made again only where one of them was.
    const { from: known } = kept;
    const same =
      !partial && known.length === made.length && known.every((day, i) => day === made[i]);
    kept.from = partial ? [] : made;
    const begun = partial ? make(place, calendar().bounds(today).begins, now) : null;
    const here = farm().place(place);
    const days = made.map(({ day }) => day);
    const hole = Math.max(10, 3 * everyOf(place)) * MINUTE;
    const supplies = made.flatMap(({ supply }) => supply ?? []);
    return {
      habits: same
        ? kept.learned.habits
        : roomHabits([...days, ...(begun ? [begun.day] : [])], {
            setPoint: here?.setPoint ?? 0,
            every: everyOf(place),
          }),
      energyDays: days.map(energyOf),
      fill: roomFill(
        lots.all(),
        place,
        Array.from({ length: DAYS + 1 }, (_, back) => now - back * 24 * HOUR),
        [...made, ...(begun ? [begun] : [])].flatMap(({ fits }) => fits),
      ),
      usual: here?.power?.hours ? null : usualHours(supplies, calendar(), hole),
    };
  };

  return {
    /** What was learned of a cool room; of one that was not looked at this hour it is learned anew. */
    of(place: string, now: Instant): RoomLearned {
      const here = spots.overlapping(place, null, now - DAYS * 24 * HOUR, now);
      const made = JSON.stringify([here, farm().place(place)]);
      let kept = rooms.get(place);
      if (!kept || kept.made !== made) {
        kept = { made, days: new Map(), learned: NOTHING, from: [], at: Number.NEGATIVE_INFINITY };
        rooms.set(place, kept);
      }
      if (now - kept.at >= HOUR || now < kept.at) {
        kept.learned = learn(place, kept, now);
        kept.at = now;
      }
      const { fill, ...learned } = kept.learned;
      const { filled, tauFits } = filledNow(fill, lots.inStore(), place);
      return { ...learned, habits: { ...learned.habits, tauFits }, filled };
    },
    /** Readings of these days changed. */
    touched(place: string, firstDay: string, lastDay: string) {
      const days = rooms.get(place)?.days;
      for (const day of days?.keys() ?? [])
        if (day >= firstDay && day <= lastDay) days?.delete(day);
    },
  };
}
export type Rooms = ReturnType<typeof makeRooms>;

const NOTHING: Kept['learned'] = {
  habits: roomHabits([], { setPoint: 0, every: 1 }),
  ...{ energyDays: [], usual: null, fill: { most: 0, stops: [] } },
};

const meanOf = (values: readonly number[]) =>
  values.length === 0 ? null : values.reduce((sum, value) => sum + value, 0) / values.length;

function energyOf({ from, kilowattHours, meanInside, meanOutside, power, cycle }: RoomDay) {
  const gap = meanInside === null || meanOutside === null ? null : meanOutside - meanInside;
  return { from, kilowattHours, gap, duty: power?.duty ?? cycle?.fallingShare ?? null };
}

const FEWEST = 100; // readings of a day's coil. Ours

/** How cold the coil gets, and how far below the air it mostly is while the unit works. */
function coilDay(coil: Trace, air: Trace): RoomDay['coil'] {
  if (coil.t.length < FEWEST) return null;
  const middle = meanOf(air.value) ?? 0;
  const below = coil.value.map((value) => middle - value);
  return { lowest: percentile(coil.value, 0.002), belowAir: percentile(below, 0.9) };
}
