import { handMinutes, type Pick } from './pick.ts';
import { seasonPicks } from './seasonPicks.ts';

/** A picking of the season that runs, with the minutes of all hands. */
export type Picked = {
  readonly kilograms: number;
  readonly minutes: number;
  /** The walk of all hands; null where nobody told it apart. */
  readonly walk: number | null;
  readonly pickers: number;
};

/** The pickings of a place this season whose minutes somebody wrote down, oldest first. */
export function pickedOf(
  picks: readonly Pick[],
  place: string,
  crop: string | undefined,
  now: number,
): Picked[] {
  const own = picks.filter((pick) => pick.place === place && pick.crop === crop);
  return seasonPicks(own, now).flatMap((pick) => {
    const minutes = handMinutes(pick);
    if (minutes === null || pick.kg === 0) return [];
    const { kg: kilograms, walkMinutes, pickers } = pick;
    return [{ kilograms, minutes, walk: walkMinutes && walkMinutes * pickers, pickers }];
  });
}
