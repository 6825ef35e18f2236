import { fitsFor, type OffFit, type RoomContents, roomContents } from '../../rules/cooler/index.ts';
import { type Hours, hours } from '../../rules/units.ts';
import type { Lot } from '../lots/index.ts';

/** kg that lay in a room at a time, by the book; null before anybody put a lot away there. */
export function kilogramsIn(lots: readonly Lot[], place: string, t: number): number | null {
  let begun = false;
  let sum = 0;
  for (const { state, stays, taken, kg, storedAt } of lots) {
    if (state === 'withdrawn' || storedAt > t) continue;
    begun ||= stays.some((stay) => stay.place === place && stay.from <= t);
    const here = stays.findLast(({ from }) => from <= t) ?? stays[0];
    if (here?.place !== place) continue;
    const gone = taken.reduce((all, one) => all + (one.at <= t ? one.kg : 0), 0);
    sum += Math.max(0, kg - gone);
  }
  return begun ? sum : null;
}

/** What the book says of a room's last weeks: the most that lay there, and what did at each stop. */
export type RoomFill = {
  readonly most: number;
  readonly stops: readonly (Omit<OffFit, 'at'> & { readonly kilograms: number | null })[];
};

export function roomFill(
  lots: readonly Lot[],
  place: string,
  times: readonly number[],
  fits: readonly OffFit[],
): RoomFill {
  const stops = fits.map(({ at, ...fit }) => ({
    ...fit,
    kilograms: kilogramsIn(lots, place, at),
  }));
  const all = [
    ...times.map((t) => kilogramsIn(lots, place, t)),
    ...stops.map(({ kilograms }) => kilograms),
  ];
  return { most: Math.max(0, ...all.map((kilograms) => kilograms ?? 0)), stops };
}

export type Filled = {
  /** How full it is now; null where the book says nothing. */
  readonly now: RoomContents | null;
  readonly kilograms: number | null;
  /** Stops seen with as much in it. */
  readonly stops: number;
  /** The time constant of the quickest beginning among the last of them, h. */
  readonly swift: number | null;
};

const LAST = 5; // stops, as many as the hold-over goes by

/** How full a room is now, and the time constants that speak for it: of stops with as much in it first. */
export function filledNow(
  { most, stops }: RoomFill,
  lots: readonly Lot[],
  place: string,
): { readonly filled: Filled; readonly tauFits: readonly Hours[] } {
  const here = lots.reduce((sum, lot) => sum + (lot.place === place ? lot.kgLeft : 0), 0);
  const top = Math.max(most, here);
  const kilograms = top > 0 ? here : null;
  const now = roomContents(kilograms, top);
  const known = stops.map((stop) => ({
    ...stop,
    contents: roomContents(stop.kilograms, top),
  }));
  const same = known.filter(({ contents }) => now !== null && contents === now);
  const begun = (same.length > 0 ? same : known).slice(-LAST);
  const swift = begun.flatMap(({ swiftHours }) => swiftHours ?? []);
  return {
    filled: {
      ...{ now, kilograms, stops: same.length },
      swift: swift.length === 0 ? null : Math.min(...swift),
    },
    tauFits: fitsFor(known, now).map(hours),
  };
}
