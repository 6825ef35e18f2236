import { lookAt, type PlaceNow } from '../../rules/decide/index.ts';
import { instant, minutes } from '../../rules/units.ts';
import { calendarOf } from '../clock.ts';
import type { FarmFile } from '../contract/index.ts';
import { type Farm, farmOf } from '../farm/index.ts';
import { coverOf, cropsOf, wetOf } from '../snapshot/index.ts';
import type { Past } from '../store/index.ts';
import { issuedThen } from './issuedThen.ts';
import { HOUR, MIDDLE, type PastSpot, pastSpots } from './pastSpots.ts';
import { type PastLook, type WouldAsk, walkPlace } from './walkPlace.ts';

/** Rules look back two days, and yesterday is asked about. */
const BEFORE = 48 * HOUR;

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
  readonly before: readonly WouldAsk[];
  readonly after: readonly WouldAsk[];
};
export type Progress = { readonly done: number; readonly of: number; readonly place: string };

/** A place as the rules take it, without anything said or measured. */
function bare(farm: Farm, place: Farm['places'][number]): PlaceNow {
  return {
    id: place.id,
    kind: place.kind,
    crop: place.crop ?? null,
    trays: place.trays ?? null,
    vents: place.vents,
    opened: null,
    covered: null,
    wet: wetOf(place),
    cover: coverOf(farm, place),
    coolRoom: null,
    spots: [],
  };
}

/** What of a place's limits the trial changes; the same text, nothing. */
const limitsOf = (farm: Farm, place: Farm['places'][number]) =>
  JSON.stringify([bare(farm, place), cropsOf(farm).find(({ id }) => id === place.crop) ?? null]);

/**
 * Walks the places whose limits differ through the past, hour by hour, once under each set of
 * limits. Yields after each place.
 */
export function* walkPast(
  past: Past,
  { before, after, from, to }: TrialJob,
): Generator<Progress, PlaceTrial[]> {
  const [old, next] = [farmOf(before), farmOf(after)];
  const span = { from: from - BEFORE, to };
  const placements = past.placements();
  const spotsOf = (place: string) => pastSpots(past, placements, place, span);
  const wages = before.farm.wage !== after.farm.wage;
  const touched = old.places.filter((place) => {
    if (place.kind === 'cool-room' || place.kind === 'outdoor') return false;
    const other = next.place(place.id);
    if (other === undefined) return false;
    return (wages && place.cover !== undefined) || limitsOf(old, place) !== limitsOf(next, other);
  });
  const looks = looksOf(past, old, spotsOf, { from, to });
  const trials: PlaceTrial[] = [];
  for (const [i, place] of touched.entries()) {
    const spots = spotsOf(place.id);
    const walk = (farm: Farm) => {
      const here = farm.place(place.id);
      return here === undefined
        ? []
        : walkPlace(bare(farm, here), spots, looks, cropsOf(farm), farm.file.farm.wage);
    };
    trials.push({ place: place.id, before: walk(old), after: walk(next) });
    yield { done: i + 1, of: touched.length, place: place.id };
  }
  return trials;
}

/** A look in the middle of each hour: outside air, the sun, and what was forecast of the night then. */
function looksOf(
  past: Past,
  farm: Farm,
  spotsOf: (place: string) => PastSpot[],
  { from, to }: { readonly from: number; readonly to: number },
): PastLook[] {
  const calendar = calendarOf(farm.zone);
  const { lat, lon, wage } = farm.file.farm;
  const open = ({ kind }: Farm['places'][number]) => kind === 'outdoor' || kind === 'patch';
  const outdoors: PlaceNow[] = farm.places.filter(open).map((place) => ({
    ...bare(farm, place),
    spots: spotsOf(place.id).map(({ spot, probe, temperature, air }) => ({
      ...{ spot, probe, every: minutes(60), nights: [], columns: { temperature }, air },
    })),
  }));
  const issued = issuedThen(
    past.forecasts(calendar.dayOf(from), calendar.add(calendar.dayOf(to), 1)),
  );
  const looks: PastLook[] = [];
  for (let hour = Math.ceil(from / HOUR) * HOUR; hour < to; hour += HOUR) {
    const now = instant(hour + MIDDLE);
    const name = calendar.dayOf(now);
    const snapshot = {
      ...{ now, day: { name, ...calendar.bounds(name) }, farm: { lat, lon, wage } },
      ...{ crops: [], places: outdoors, probes: [], standing: [] },
    };
    const look = lookAt(snapshot, []);
    looks.push({ ...look, issued: look.sun === null ? [] : issued(look.sun.night.name, now) });
  }
  return looks;
}
