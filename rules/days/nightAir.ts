import { meanOf } from '../statistics/index.ts';
import type { PlaceDay } from './placeDay.ts';

// Ours: a closed film house keeps 1 to 1.5 K (Savage 1980), an open one nothing, until own nights tell.
const SHUT_KEEPS = 1.25; // K
const OPEN_KEEPS = 0; // K
const FEWEST = 3; // nights of one kind before they are believed; ours
const FEWEST_DAMP = 2; // shut nights before their damp is believed; ours
const NEWEST = 7; // nights of one kind that speak; ours
const DARK = 6; // hours of the calendar day, from midnight, in which a night is looked at; ours

/** What nights with the vents shut and open were like in one place. */
export type NightAir = {
  /** K warmer than outside after midnight. */
  readonly keeps: { readonly shut: number; readonly open: number };
  /** Hours that suited a disease of the crop; null where nobody knows. */
  readonly damp: { readonly shut: number | null; readonly open: number | null };
  readonly nights: { readonly shut: number; readonly open: number };
};

const openAtNight = ({ hours }: PlaceDay) =>
  hours.length > DARK && hours.slice(0, DARK).every(({ open }) => open === true);

function warmer(day: PlaceDay, outside: PlaceDay | undefined): number | null {
  const apart = day.hours.slice(0, DARK).flatMap(({ temperature }, at) => {
    const other = outside?.hours[at]?.temperature ?? null;
    return temperature === null || other === null ? [] : [temperature - other];
  });
  return apart.length < DARK / 2 ? null : meanOf(apart);
}

/**
 * What the last nights of a place say of shutting it: how much warmer than outside it stays, and
 * for how many hours the weather inside suits a disease of the crop, with the vents shut and open.
 * Nights in which nobody said that the vents stood open all night count as shut. Where fewer than
 * three open nights are known, the air outside speaks for an open house.
 *
 * Source: counted on the readings; hours that suit a disease by each disease's own source; that
 * nights to come are like the last ones is ours. Savage 1980, Agrochemophysica 12:5, for what a
 * closed house keeps before own nights tell.
 * @param here days of the place, oldest first; the disease day that ends on a day holds its night
 * @param outside days of the open air, by the same names
 */
export function nightAir(here: readonly PlaceDay[], outside: readonly PlaceDay[]): NightAir {
  const out = new Map(outside.map((day) => [day.day, day]));
  const known = here.filter(({ hours }) => hours.length > 0).toReversed();
  const nights = {
    open: known.filter(openAtNight).slice(0, NEWEST),
    shut: known.filter((day) => !openAtNight(day)).slice(0, NEWEST),
  };
  const keeps = (days: readonly PlaceDay[], usual: number) => {
    const apart = days.flatMap((day) => warmer(day, out.get(day.day)) ?? []);
    return apart.length < FEWEST ? usual : Math.max(0, meanOf(apart));
  };
  const damp = (days: readonly (PlaceDay | undefined)[], least: number) => {
    const hours = days.flatMap((day) => day?.disease?.hours[0] ?? []);
    return hours.length < least ? null : meanOf(hours);
  };
  const newest = known.slice(0, NEWEST).map(({ day }) => out.get(day));
  const shutDamp = damp(nights.shut, FEWEST_DAMP);
  const openDamp = damp(nights.open, FEWEST) ?? damp(newest, FEWEST);
  return {
    keeps: { shut: keeps(nights.shut, SHUT_KEEPS), open: keeps(nights.open, OPEN_KEEPS) },
    damp: { shut: shutDamp, open: openDamp },
    nights: { shut: nights.shut.length, open: nights.open.length },
  };
}
