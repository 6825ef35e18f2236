import type { Look } from '../../rules/decide/index.ts';
import type { FarmFile } from '../contract/index.ts';
import { type Farm, farmOf } from '../farm/index.ts';
import { cropsOf } from '../snapshot/index.ts';
import type { Past } from '../store/index.ts';
import { barePlace } from './barePlace.ts';
import type { WouldAsk } from './keeper.ts';
import { nightsPast } from './nightsPast.ts';
import { pastLooks } from './pastLooks.ts';
import { HOUR, type PastSpot, pastSpots } from './pastSpots.ts';
import { type MayAsk, walkPlace } from './walkPlace.ts';
import { walkRoom } from './walkRoom.ts';

/** Rules look back two days; for what nights were like seven of them, each with eleven days before it. */
const BEFORE = 19 * 24 * HOUR;

export type TrialJob = {
  readonly before: FarmFile;
  readonly after: FarmFile;
  /** ms since 1970 */
  readonly from: number;
  readonly to: number;
};
/** What both sets of limits would have asked for at one place. */
export type PlaceTrial = {
  readonly place: string;
  /** Whether there were readings to walk on. */
  readonly read: boolean;
  readonly before: readonly WouldAsk[];
  readonly after: readonly WouldAsk[];
};
export type Progress = { readonly done: number; readonly of: number; readonly place: string };

/** What of a place's limits the trial changes; the same text, nothing. */
const limitsOf = (farm: Farm, place: Farm['places'][number]) =>
  JSON.stringify([
    barePlace(farm, place),
    cropsOf(farm).find(({ id }) => id === place.crop) ?? null,
  ]);

/**
 * Walks the places whose limits differ through the past, hour by hour, once under each set of
 * limits. Yields before each place.
 * @param may first conditions of the rules, where they are to be others
 */
export function* walkPast(
  past: Past,
  { before, after, from, to }: TrialJob,
  may?: MayAsk,
): Generator<Progress, PlaceTrial[]> {
  const [old, next] = [farmOf(before), farmOf(after)];
  const span = { from: from - BEFORE, to };
  const placements = past.placements();
  const spotsRead = new Map<string, PastSpot[]>();
  const spotsOf = (place: string) => {
    const spots = spotsRead.get(place) ?? pastSpots(past, placements, place, span);
    spotsRead.set(place, spots);
    return spots;
  };
  const wages = before.farm.wage !== after.farm.wage;
  const touched = old.places.filter((place) => {
    if (place.kind === 'outdoor') return false;
    const other = next.place(place.id);
    if (other === undefined) return false;
    return (wages && place.kind !== 'cool-room') || limitsOf(old, place) !== limitsOf(next, other);
  });
  if (touched.length === 0) return [];
  const looks = pastLooks(past, old, spotsOf, { from, to });
  const snapshot = { crops: cropsOf(next), wage: after.farm.wage };
  // The same sun, air and forecasts; only what the farm file says of crops and work differs.
  const looksNext = looks.map(
    (look): Look => ({
      ...look,
      snapshot: {
        ...look.snapshot,
        crops: snapshot.crops,
        farm: { ...look.snapshot.farm, wage: snapshot.wage },
      },
    }),
  );
  const roomRead = (room: string) =>
    placements.some(
      ({ place, probe }) =>
        place === room && past.peaks(probe, 'temperature', span.from, span.to).length > 0,
    );
  const trials: PlaceTrial[] = [];
  for (const [i, place] of touched.entries()) {
    yield { done: i, of: touched.length, place: place.id };
    const spots = place.kind === 'cool-room' ? [] : spotsOf(place.id);
    const limits = [place.limit, next.place(place.id)?.limit].flatMap((limit) => limit ?? []);
    const walk = (farm: Farm, looks: readonly Look[]) => {
      const here = farm.place(place.id);
      if (here === undefined) return [];
      const bare = barePlace(farm, here);
      return bare.coolRoom === null
        ? walkPlace(bare, spots, looks, nightsPast(farm, here, spotsOf), may)
        : walkRoom(past, bare, placements, looks, limits);
    };
    const read = spots.length > 0 || roomRead(place.id);
    trials.push({ place: place.id, read, before: walk(old, looks), after: walk(next, looksNext) });
    spotsRead.delete(place.id);
  }
  return trials;
}
