import { sunTimes } from '../../rules/heat/index.ts';
import { type Instant, instant } from '../../rules/units.ts';
import type { Calendar } from '../clock.ts';
import type { Farm } from '../farm/index.ts';
import type { Store } from '../store/index.ts';

const MINUTE = 60_000;
const HOUR = 60 * MINUTE;
/** What somebody said of vents is trusted this long; then it is not known. Ours. */
export const VENTS_TRUSTED = 24 * HOUR;
/** "Stays open tonight" is said this long before the usual shutting, at most, and then outlives it. Ours. */
const EVENING = 8 * HOUR;
/** It is over this long after it was said: by then it is day. Ours. */
const NIGHT = 16 * HOUR;
/** Shut an hour before sunset, where nobody told when. Ours, after Savage 1980. */
const BEFORE_SET = HOUR;

export type VentState = {
  readonly open: boolean | null;
  /** Whether somebody said so, or it is usual at this hour; null where nobody knows. */
  readonly by: 'said' | 'usual' | null;
  /** Since when, and the entry that says so. */
  readonly since: number | null;
  readonly entry: number | null;
  /** Somebody said that it stays open through this night. */
  readonly overnight: boolean;
};
export type VentSaid = {
  readonly id: number;
  readonly at: number;
  readonly is: boolean;
  readonly overnight: boolean;
};

/** What was said of a place's vents, by the time it tells of; what was taken back is left out. */
export function ventSayings(store: Store, place: string, from: number, to: number): VentSaid[] {
  const entries = store.journal
    .between('vents', from, to + VENTS_TRUSTED)
    .filter((entry) => entry.place === place && entry.t <= to + VENTS_TRUSTED);
  const undone = new Set(entries.flatMap(({ body }) => (body as { undoes?: number }).undoes ?? []));
  return entries
    .flatMap(({ id, t, body }) => {
      const { is, at = t, overnight = false } = body as Partial<VentSaid>;
      return is === undefined || undone.has(id) ? [] : [{ id, at, is, overnight }];
    })
    .sort((a, b) => a.at - b.at || a.id - b.id);
}

/** When the vents of a place are usually opened and shut on a day; null where nobody told. */
export function usualVents(
  farm: Farm,
  calendar: Calendar,
  placeId: string,
  day: string,
): { readonly opens: Instant; readonly shuts: Instant } | null {
  const airing = farm.place(placeId)?.airing;
  if (airing === undefined) return null;
  const { begins, ends } = calendar.bounds(day);
  const at = (clock: string) => {
    const [hour = 0, minute = 0] = clock.split(':').map(Number);
    const t = begins + (hour * 60 + minute) * MINUTE;
    // The clock on the wall: an hour that is left out or comes twice counts.
    return t + (calendar.offsetMinutes(begins) - calendar.offsetMinutes(t)) * MINUTE;
  };
  const { lat, lon } = farm.file.farm;
  const set = sunTimes(instant((begins + ends) / 2), lat, lon).set;
  const shuts =
    airing.shuts === undefined ? (set === null ? null : set - BEFORE_SET) : at(airing.shuts);
  const opens = at(airing.opens);
  return shuts === null || shuts <= opens ? null : { opens: instant(opens), shuts: instant(shuts) };
}

/**
 * How a place's vents stand at any time from `from` to `to`: as was said last, for a day; as is
 * usual from the next usual opening or shutting on, where the farm file tells of one. Vents that
 * somebody said stay open tonight are not taken for shut at the usual hour.
 */
export function ventStates(
  store: Store,
  farm: Farm,
  calendar: Calendar,
  place: string,
  from: number,
  to: number,
): (t: number) => VentState {
  const said = ventSayings(store, place, from - VENTS_TRUSTED, to);
  const usual: { at: number; is: boolean }[] = [];
  if (farm.place(place)?.airing !== undefined) {
    const last = calendar.dayOf(to);
    for (let day = calendar.dayOf(from - VENTS_TRUSTED); day <= last; day = calendar.add(day, 1)) {
      const hours = usualVents(farm, calendar, place, day);
      if (hours !== null) usual.push({ at: hours.opens, is: true }, { at: hours.shuts, is: false });
    }
  }
  return (t) => {
    const told = said.findLast(({ at }) => at <= t);
    const fresh = told !== undefined && t - told.at < VENTS_TRUSTED ? told : null;
    const overnight = fresh?.overnight === true && fresh.is && t - fresh.at < NIGHT;
    const habit = usual.findLast(
      ({ at, is }) =>
        at <= t && (is || !fresh?.overnight || at < fresh.at || at - fresh.at > EVENING),
    );
    if (habit !== undefined && (fresh === null || habit.at > fresh.at))
      return { open: habit.is, by: 'usual', since: habit.at, entry: null, overnight };
    if (fresh === null) return { open: null, by: null, since: null, entry: null, overnight: false };
    return { open: fresh.is, by: 'said', since: fresh.at, entry: fresh.id, overnight };
  };
}
