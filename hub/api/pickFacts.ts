import { storageOf } from '../../rules/cooler/index.ts';
import type { EnterPick } from '../contract/index.ts';
import type { PickFacts } from '../picks/index.ts';
import { shown } from '../words/index.ts';
import { type ApiParts, Refused } from './parts.ts';
import { iso } from './present.ts';

/** What somebody sends of a picking; a field left out is not said. Times ISO 8601. */
type PickSaid = { readonly [Field in keyof EnterPick]?: EnterPick[Field] | undefined };

/** Fields that were said, with times in ms. */
export function saidPick({ at, ...rest }: PickSaid): Partial<PickFacts> {
  const facts = { ...rest, at: at === undefined ? undefined : Date.parse(at) };
  return Object.fromEntries(Object.entries(facts).filter(([, value]) => value !== undefined));
}

/** Where something may be picked: everywhere but in a cool room. */
export const pickPlaces = (parts: ApiParts) =>
  parts.farm().places.filter(({ kind }) => kind !== 'cool-room');

/** @throws Refused 400 where nothing is picked */
function checkPlace(parts: ApiParts, place: string) {
  const ids = pickPlaces(parts).map(({ id }) => id);
  if (ids.includes(place)) return;
  throw new Refused(400, `Expected one of ${ids.join(', ')} in place, got ${shown(place)}`);
}

/** The crop of a picking: what was said, else what the place grows. @throws Refused 400 */
export function cropOfPick(parts: ApiParts, said: string | undefined, place: string): string {
  checkPlace(parts, place);
  const crop = said ?? parts.farm().place(place)?.crop;
  if (crop !== undefined) return crop;
  throw new Refused(
    400,
    `Expected a crop in crop, because ${shown(place)} has none of its own, got nothing`,
  );
}

/** What no schema of one field can see. @throws Refused 400 with the field */
export function checkPick(parts: ApiParts, facts: PickFacts, now: number) {
  const { place, crop, at, kg, lostKg, minutes, walkMinutes } = facts;
  checkPlace(parts, place);
  const farm = parts.farm();
  if (!farm.crop(crop) && !storageOf(crop)) {
    const crops = farm.file.crops.map(({ id }) => id).join(', ');
    throw new Refused(400, `Expected one of ${crops} in crop, got ${shown(crop)}`);
  }
  if (at > now) throw new Refused(400, `Expected a time that is past in at, got ${iso(at)}`);
  if (lostKg !== null && lostKg > kg)
    throw new Refused(400, `Expected at most the ${kg} kg picked in lostKg, got ${lostKg}`);
  if (walkMinutes !== null && minutes !== null && walkMinutes > minutes)
    throw new Refused(
      400,
      `Expected at most the ${minutes} minutes of it all in walkMinutes, got ${walkMinutes}`,
    );
}
