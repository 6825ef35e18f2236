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
};

export type PlannedCrop = {
  readonly id: string;
  /** Heat units of past batches at the stage it is cut, °C d; none yet where empty. */
  readonly pastDegreeDays: readonly number[];
  /** kg a tray of past batches, or the grower's own figure. */
  readonly perTray: readonly number[];
  readonly keepDays: number;
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
};

/** Why some of the wanted weight is in no sowing. */
export type Shortfall = WantedWeight & {
  readonly trays: number;
  readonly reason: 'no-past-batches' | 'too-late' | 'no-room' | 'beyond-the-days';
};

/** The least chance worth sowing for when the right day is past; ours. */
const WORTH_TRYING = 0.5;

type Option = {
  readonly place: PlannedPlace;
  readonly day: number;
  readonly ready: Probability | null;
  readonly tooEarly: Probability | null;
};

/**
 * What to sow on which day, in which place, for the weights wanted on the delivery days, within the
 * room there is; what does not fit is said as a shortfall with its reason, never left out.
 *
 * One delivery after another, the nearest first; each goes where it stands the fewest days, and
 * over to the next place when that is full. Nobody's tray is moved for it, so a cleverer order may
 * fit a little more: it is a plan to be read, not the best of all.
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
    if (!crop || crop.pastDegreeDays.length === 0 || crop.perTray.length === 0) {
      shortfalls.push({ ...want, trays: 0, reason: 'no-past-batches' });
      continue;
    }
    let left = traysFor(want.kilograms, crop.perTray);
    const perTray = want.kilograms / left;
    const options = optionsFor(want, crop, places, chance);
    for (const { place, day, ready, tooEarly } of options.worth) {
      const room = free.get(place.id) ?? [];
      const trays = Math.min(left, ...room.slice(day, want.delivery + 1));
      if (trays < 1) continue;
      for (let on = day; on <= want.delivery; on += 1) room[on] = (room[on] ?? 0) - trays;
      left -= trays;
      const kilograms = trays * perTray;
      sowings.push({ ...want, kilograms, place: place.id, day, trays, ready, tooEarly });
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
  { delivery }: WantedWeight,
  crop: PlannedCrop,
  places: readonly PlannedPlace[],
  chance: number | undefined,
): { readonly worth: readonly Option[]; readonly otherwise: Shortfall['reason'] } {
  const worth: Option[] = [];
  let otherwise: Shortfall['reason'] = 'no-room';
  for (const place of places) {
    const units = place.unitsOf(crop.id);
    if (units === null || place.free.length <= delivery) {
      if (units !== null) otherwise = 'beyond-the-days';
      continue;
    }
    const unitsBefore = units.slice(0, delivery).reverse(); // the day before the delivery first
    const { pastDegreeDays, keepDays } = crop;
    const asked = { pastDegreeDays, keepDays, unitsBefore, daysLeft: delivery };
    const plan = sowingDay({ ...asked, ...(chance === undefined ? {} : { chance }) });
    if (plan.daysBefore !== null && plan.daysBefore <= delivery) {
      const { ready, tooEarly } = plan;
      worth.push({ place, day: delivery - plan.daysBefore, ready, tooEarly });
      continue;
    }
    // The right day is past: sown today it may still be ready.
    const sum = unitsBefore.reduce((total, each) => total + each, 0);
    const ready = readyProbability(pastDegreeDays, sum);
    if (ready === null || ready < WORTH_TRYING) otherwise = 'too-late';
    else worth.push({ place, day: 0, ready, tooEarly: plan.tooEarly });
  }
  return { worth: worth.sort((a, b) => b.day - a.day), otherwise };
}
