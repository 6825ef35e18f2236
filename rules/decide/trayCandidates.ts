import { comparePlaces, type PlaceDifference } from '../days/index.ts';
import type { Look } from './look.ts';
import type { CropPlaces, TrayPlace, TraysStanding } from './snapshot.ts';

/** It is looked at every day, so that with 95 % equal places seem apart in most seasons by chance
 *  alone: 99 times of 100 it has to be. Ours, measured on seasons of equal places. */
const CLEAR = 0.99;

export type TrayCandidate = {
  readonly to: TrayPlace;
  readonly difference: PlaceDifference;
};

/** What was compared already: trays of one crop that stand together ask the same, and days that are
 *  over stay as they were from one look to the next. */
const compared = new WeakMap<CropPlaces['places'], Map<string, PlaceDifference>>();

function differenceOf(known: CropPlaces, from: string, to: string): PlaceDifference | null {
  const daysOf = (id: string) => known.places.find(({ place }) => place === id)?.days;
  const there = daysOf(to);
  if (there === undefined) return null;
  const kept = compared.get(known.places) ?? new Map<string, PlaceDifference>();
  compared.set(known.places, kept);
  const key = `${from}\n${to}`;
  const found = kept.get(key) ?? comparePlaces(daysOf(from) ?? [], there, CLEAR);
  kept.set(key, found);
  return found;
}

/** Every other place that can be compared, the best first. */
export function trayCandidates(
  { snapshot }: Look,
  stand: TraysStanding,
  known: CropPlaces,
): readonly TrayCandidate[] {
  return (snapshot.trays?.places ?? [])
    .filter(({ id }) => id !== stand.place)
    .flatMap((to) => {
      const difference = differenceOf(known, stand.place, to.id);
      return difference === null || difference.score === null ? [] : [{ to, difference }];
    })
    .sort((a, b) => (b.difference.score?.mean ?? 0) - (a.difference.score?.mean ?? 0));
}
