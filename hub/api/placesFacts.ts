import { placeScore } from '../../rules/days/index.ts';
import type { PairedDifference } from '../../rules/statistics/index.ts';
import type { FarmCrop, PlacesCompared, PlacesPair, TraysThere } from '../contract/index.ts';
import { type PlacesCompared as Compared, destination } from '../placesCompared/index.ts';
import {
  bestPlaceWords,
  movingSavingWords,
  noBandWords,
  placeForCropWords,
  placesPairWords,
  traysThereWords,
} from '../words/index.ts';
import type { ApiParts } from './parts.ts';

type Found = ReturnType<Compared['compare']>;

const apart = (of: PairedDifference | null) =>
  of && { mean: of.mean, low: of.low, high: of.high, worth: of.worth };

/** Places compared for a crop, as the contract has it. */
export function placesFacts(parts: ApiParts, crop: FarmCrop, days: number): PlacesCompared {
  const now = parts.clock.now();
  const found = parts.placesCompared.compare(crop.id, days, now);
  const name = crop.name ?? crop.id;
  const nameOf = (id: string) => parts.farm().crop(id)?.name ?? id;
  const pairs = found.pairs.map(pairOf);
  const { best, next, sure } = bestOf(found, pairs);
  const rule = found.places[0]?.rule ?? null;
  const { share } = found;
  const limits = { heatLimit: rule?.heatLimit ?? null, chill: rule?.chill ?? null };
  return {
    ...{ crop: crop.id, name, days, from: found.from, to: found.to },
    crops: parts.placesCompared.crops(now).map((id) => ({ crop: id, name: nameOf(id) })),
    band: crop.band ?? [0, 0],
    ...limits,
    places: found.places.map((one) => {
      const { place, tally, tallyBefore, before, room, free, gave, lately, daysKept } = one;
      const facts = {
        ...{ name: place.name, tally, before: tallyBefore, trays: room, free, gave },
        yearsBefore: before.map(({ year }) => year),
      };
      const leftOut = tally?.leftOut ?? lately.map(({ day }) => day);
      return {
        ...facts,
        ...{ place: place.id, kind: place.kind, capacity: place.capacity ?? null },
        words: placeForCropWords({ ...facts, leftOut, daysKept }),
      };
    }),
    pairs,
    best: best?.place.id ?? null,
    sure,
    sentence: bestPlaceWords({
      ...{ crop: name, places: found.places.length, best: best?.place.name ?? null, sure, next },
      notKnown: found.places.filter(({ tally }) => tally === null).map(({ place }) => place.name),
    }),
    standing: standingOf(parts, found),
    saving: movingSavingWords({ ...limits, share }),
  };
}

function pairOf({ from, to, difference, before, says }: Found['pairs'][number]): PlacesPair {
  const { score, inBand, hot, cold, wet, disease } = difference;
  return {
    ...{ from: from.id, to: to.id, days: difference.days, leftOut: difference.leftOut, says },
    ...{ score: apart(score), inBand: apart(inBand), hot: apart(hot), cold: apart(cold) },
    ...{ wet: apart(wet), disease: apart(disease), before: apart(before.score) },
    words: placesPairWords(from.name, to.name, score, says, difference.days),
  };
}

/** The place with the most of the score, the one that comes next, and whether it beat every other that is known. */
function bestOf({ places }: Found, pairs: readonly PlacesPair[]) {
  const ranked = places
    .flatMap((one) => {
      if (one.tally === null) return [];
      const { inBand, hot, wet } = one.tally;
      const score = placeScore({ inBand: inBand[0], hot: hot[0], wet: wet[0] });
      return [{ one, score }];
    })
    .sort((a, b) => b.score - a.score)
    .map(({ one }) => one);
  const [best, second] = ranked;
  if (best === undefined || second === undefined) return { best: null, next: null, sure: false };
  const lead = (other: string) => {
    const pair = pairs.find(
      ({ from, to }) => [from, to].sort().join() === [best.place.id, other].sort().join(),
    );
    if (!pair?.score) return null;
    const { mean, low, high } = pair.score;
    return pair.to === best.place.id
      ? { mean, low, high }
      : { mean: -mean, low: -high, high: -low };
  };
  const leads = ranked.slice(1).map(({ place }) => lead(place.id));
  const sure = leads.every((score) => score !== null && score.low > 0);
  return { best, next: { name: second.place.name, score: leads[0] ?? null }, sure };
}

/** For a crop whose band nobody told, or a farm that tells of none. */
export function noPlaces(
  parts: ApiParts,
  crop: FarmCrop | undefined,
  days: number,
): PlacesCompared {
  const now = parts.clock.now();
  const today = parts.calendar().dayOf(now);
  const nameOf = (id: string) => parts.farm().crop(id)?.name ?? id;
  return {
    ...{ crop: crop?.id ?? '', name: crop?.name ?? crop?.id ?? '', days, band: [0, 0] },
    crops: parts.placesCompared.crops(now).map((id) => ({ crop: id, name: nameOf(id) })),
    ...{ heatLimit: null, chill: null, best: null, sure: false, saving: '' },
    ...{ from: parts.calendar().add(today, -days), to: parts.calendar().add(today, -1) },
    ...{ places: [], pairs: [], standing: [] },
    sentence: noBandWords(crop === undefined ? null : (crop.name ?? crop.id)),
  };
}

/** Trays of any crop that stand somewhere, with what the newest look decided of them. */
function standingOf(parts: ApiParts, { places }: Found): TraysThere[] {
  const decisions = parts.lastLook()?.outlook.decisions ?? [];
  return places.flatMap(({ place, standing }) =>
    standing.map(({ batch, crop, cropName, trays, daysLeft }) => {
      const said = decisions.find(
        (one) => one.kind === 'move-trays' && one.place === place.id && one.subject === batch,
      );
      const facts = { name: cropName, trays, batch, verdict: said?.verdict ?? null };
      return {
        ...facts,
        ...{
          crop,
          place: place.id,
          daysLeft,
          to: said?.verdict === 'act' ? destination(said) : null,
        },
        words: traysThereWords({
          ...facts,
          place: place.name,
          because: said?.because.map((fact) => ({ ...fact })) ?? [],
          missing: said?.verdict === 'unknown' ? said.missing : [],
        }),
      };
    }),
  );
}
