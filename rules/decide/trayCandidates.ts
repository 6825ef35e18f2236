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

/** Every other place that can be compared, the best first. */
export function trayCandidates(
  { snapshot }: Look,
  stand: TraysStanding,
  known: CropPlaces,
): readonly TrayCandidate[] {
  const here = known.places.find(({ place }) => place === stand.place)?.days ?? [];
  return (snapshot.trays?.places ?? [])
    .filter(({ id }) => id !== stand.place)
    .flatMap((to) => {
      const there = known.places.find(({ place }) => place === to.id)?.days;
      if (there === undefined) return [];
      const difference = comparePlaces(here, there, CLEAR);
      return difference.score === null ? [] : [{ to, difference }];
    })
    .sort((a, b) => (b.difference.score?.mean ?? 0) - (a.difference.score?.mean ?? 0));
}
