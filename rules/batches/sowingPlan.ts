import { expectRange } from '../expectRange.ts';
import type { Probability } from '../units.ts';
import { readyProbability } from './readyProbability.ts';
import { sowingDay } from './sowingDay.ts';
import { traysFor } from './traysFor.ts';

// Days are counted from today: 0 is today.

/** What is to be delivered on a day. A mix is given by its parts: mixParts. */
export type WantedWeight = {
  readonly delivery: number;
  readonly crop: string;
  readonly kilograms: number;
  /** A first sowing for it was made already: the rest is sown so that it is not over early. */
  readonly begun?: boolean | undefined;
};

export type PlannedCrop = {
  readonly id: string;
  /** Heat units of past batches at the stage it is cut, °C d; none yet where empty. */
  readonly pastDegreeDays: readonly number[];
  /** kg a tray of past batches, or the grower's own figure. */
  readonly perTray: readonly number[];
  readonly keepDays: number;
  /** Days from sowing to the cut as the grower knows them, least and most: until batches tell. */
  readonly told?: readonly [number, number] | null | undefined;
};

export type PlannedPlace = {
  readonly id: string;
  /** Trays that fit beside what stands there already, for each coming day. */
  readonly free: readonly number[];
  /** Expected heat units of each coming day for a crop, °C d; null where it should not stand. */
  readonly unitsOf: (crop: string) => readonly number[] | null;
};

export type PlannedSowing = WantedWeight & {
  readonly place: string;
  /** Day to sow on. */
  readonly day: number;
  readonly trays: number;
  /** Chances of being ready in time, and of being ready before it keeps; null for first batches. */
  readonly ready: Probability | null;
  readonly tooEarly: Probability | null;
  /** Where one sowing can not be both ready and fresh: the day for half of it (sowingDay). */
  readonly second: number | null;
  /** The right day is past. */
  readonly late: boolean;
};

/** Why some of the wanted weight is in no sowing. */
export type Shortfall = WantedWeight & {
  readonly trays: number;
  readonly reason: 'no-past-batches' | 'too-late' | 'no-room' | 'beyond-the-days';
};

/** The least chance worth sowing for when the right day is past; ours. */
const WORTH_TRYING = 0.5;

type Option = Pick<PlannedSowing, 'day' | 'ready' | 'tooEarly' | 'second' | 'late'> & {
  readonly place: PlannedPlace;
};

/**
 * What to sow on which day, in which place, for the weights wanted on the delivery days, within the
 * room there is; what does not fit is said as a shortfall with its reason, never left out.
 *
 * One delivery after another, the nearest first; each goes where it stands the fewest days, and
 * over to the next place when that is full. Nobody's tray is moved for it, so a cleverer order may
 * fit a little more: it is a plan to be read, not the best of all.
 * A crop without past batches is sown by the days the grower tells, without a chance.
 * Ours, from no source; the days are sowingDay's, the trays traysFor's.
 * @throws RangeError for days or weights below 0, or as sowingDay
 */
export function sowingPlan(
  wanted: readonly WantedWeight[],
  crops: readonly PlannedCrop[],
  places: readonly PlannedPlace[],
  chance?: number,
): { readonly sowings: readonly PlannedSowing[]; readonly shortfalls: readonly Shortfall[] } {
  const free = new Map(places.map(({ id, free }) => [id, [...free]]));
  const sowings: PlannedSowing[] = [];
  const shortfalls: Shortfall[] = [];
  for (const want of [...wanted].sort((a, b) => a.delivery - b.delivery)) {
    expectRange('day of delivery', want.delivery, 0, 366, 'd');
    expectRange('wanted weight', want.kilograms, 0, 100_000, 'kg');
    if (want.kilograms === 0) continue;
    const crop = crops.find(({ id }) => id === want.crop);
    const known = crop && (crop.pastDegreeDays.length > 0 || crop.told != null);
    if (!crop || !known || crop.perTray.length === 0) {
      shortfalls.push({ ...want, trays: 0, reason: 'no-past-batches' });
      continue;
    }
    let left = traysFor(want.kilograms, crop.perTray);
    const perTray = want.kilograms / left;
    const options = optionsFor(want, crop, places, chance);
    for (const { place, day, ready, tooEarly, second, late } of options.worth) {
      const room = free.get(place.id) ?? [];
      const trays = Math.min(left, ...room.slice(day, want.delivery + 1));
      if (trays < 1) continue;
      for (let on = day; on <= want.delivery; on += 1) room[on] = (room[on] ?? 0) - trays;
      left -= trays;
      const kilograms = trays * perTray;
      const { delivery, crop: name } = want;
      const chances = { ready, tooEarly, second, late };
      sowings.push({ delivery, crop: name, kilograms, place: place.id, day, trays, ...chances });
      if (left === 0) break;
    }
    if (left > 0) {
      const reason = options.worth.length > 0 ? 'no-room' : options.otherwise;
      shortfalls.push({ ...want, kilograms: left * perTray, trays: left, reason });
    }
  }
  return { sowings: sowings.sort((a, b) => a.day - b.day), shortfalls };
}

/** Places where it would be ready in time, the quickest first; and why there is none. */
function optionsFor(
  want: WantedWeight,
  crop: PlannedCrop,
  places: readonly PlannedPlace[],
  chance: number | undefined,
): { readonly worth: readonly Option[]; readonly otherwise: Shortfall['reason'] } {
  const worth: Option[] = [];
  let otherwise: Shortfall['reason'] = 'no-room';
  for (const place of places) {
    const units = place.unitsOf(crop.id);
    if (units === null || place.free.length <= want.delivery) {
      if (units !== null) otherwise = 'beyond-the-days';
      continue;
    }
    const found =
      crop.pastDegreeDays.length > 0
        ? byUnits(want, crop, place, units, chance)
        : byToldDays(want, crop, place);
    if (found === null) otherwise = 'too-late';
    else worth.push(found);
  }
  return { worth: worth.sort((a, b) => b.day - a.day), otherwise };
}

/** By heat units; null when it is too late to be worth trying. */
function byUnits(
  { delivery, begun = false }: WantedWeight,
  crop: PlannedCrop,
  place: PlannedPlace,
  units: readonly number[],
  chance: number | undefined,
): Option | null {
  const unitsBefore = units.slice(0, delivery).reverse(); // the day before the delivery first
  const { pastDegreeDays, keepDays } = crop;
  const asked = { pastDegreeDays, keepDays, unitsBefore, daysLeft: delivery };
  const plan = sowingDay({ ...asked, ...(chance === undefined ? {} : { chance }) });
  const { ready, tooEarly } = plan;
  if (plan.daysBefore !== null && plan.daysBefore <= delivery) {
    const first = delivery - plan.daysBefore;
    const second = plan.second === null ? null : delivery - plan.second;
    if (!begun || second === null)
      return { place, day: first, ready, tooEarly, second, late: false };
    // The other half of a delivery whose first half stands already.
    const sum = unitsBefore.slice(0, delivery - second).reduce((total, each) => total + each, 0);
    const fresh = { ready: readyProbability(pastDegreeDays, sum), tooEarly: null, second: null };
    return { place, day: second, ...fresh, late: false };
  }
  // The right day is past: sown today it may still be ready.
  const sum = unitsBefore.reduce((total, each) => total + each, 0);
  const still = readyProbability(pastDegreeDays, sum);
  if (still === null || still < WORTH_TRYING) return null;
  return { place, day: 0, ready: still, tooEarly, second: null, late: true };
}

/** By the days the grower tells: the most of them, or today while the least still fit. */
function byToldDays({ delivery }: WantedWeight, crop: PlannedCrop, place: PlannedPlace) {
  const [least, most] = crop.told ?? [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY];
  if (delivery < least) return null;
  const unknown = { ready: null, tooEarly: null, second: null };
  return { place, day: Math.max(0, delivery - most), ...unknown, late: delivery < most };
}
