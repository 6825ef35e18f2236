import { type Batch, growingPlaces } from '../batches/index.ts';
import type { BatchOffers } from '../contract/index.ts';
import { cropName } from '../lots/index.ts';
import { standingTrays } from './batchFacts.ts';
import type { ApiParts } from './parts.ts';
import { iso, nameOf, rounded, roundedOrNull } from './present.ts';

const DAY = 86_400_000; // ms
const SEASON = 120 * DAY; // ms; ours: what was sown most lately comes first
const WEIGHTS = 3;
/** Days before and after the day a week ago that count as that day: a sowing slips. Ours. */
const SLIP = 1;

/** What the quick entry offers: crops most sown first, places with room, and last week's sowings. */
export function batchOffers(parts: ApiParts, now: number): BatchOffers {
  const farm = parts.farm();
  const sown = parts.batches
    .all()
    .filter(({ state, partOf }) => state !== 'withdrawn' && partOf === null)
    .sort((a, b) => b.sownAt - a.sownAt);
  const crops = farm.file.crops.map(({ id: crop, regrows }) => {
    const own = sown.filter((batch) => batch.crop === crop);
    const [last] = own;
    const cuts = own.flatMap((batch) => batch.cuts).sort((a, b) => b.at - a.at);
    return {
      crop,
      name: cropName(farm, crop),
      times: own.filter(({ sownAt }) => now - sownAt < SEASON).length,
      trays: last?.trays ?? null,
      variety: last?.variety ?? null,
      place: last?.firstPlace ?? null,
      seedCost: roundedOrNull(last?.seedCost ?? null),
      otherCost: roundedOrNull(last?.otherCost ?? null),
      perTray: [...new Set(cuts.map(({ kg, trays }) => rounded(kg / trays, 3)))].slice(0, WEIGHTS),
      cutMinutes: cuts.find(({ minutes }) => minutes !== null)?.minutes ?? null,
      regrows,
    };
  });
  return {
    crops: crops.sort((a, b) => b.times - a.times),
    places: growingPlaces(farm).map(({ id, name, kind, capacity = null }) => {
      const standing = standingTrays(parts, id);
      const room = capacity === null ? null : Math.max(0, capacity - standing);
      return { place: id, name, kind, capacity, standing, room };
    }),
    asLastWeek: asLastWeek(parts, sown, now),
  };
}

/** Each sowing of a week ago, and the one of this week that did it again. */
function asLastWeek(
  parts: ApiParts,
  sown: readonly Batch[],
  now: number,
): BatchOffers['asLastWeek'] {
  const calendar = parts.calendar();
  const day = calendar.add(calendar.dayOf(now), -7);
  const [first, last] = [calendar.add(day, -SLIP), calendar.add(day, SLIP)];
  const within = (batch: Batch, from: string, to: string) => {
    const on = calendar.dayOf(batch.sownAt);
    return on >= from && on <= to;
  };
  const taken = new Set<string>();
  const next = (batch: Batch) => {
    const due = calendar.add(calendar.dayOf(batch.sownAt), 7);
    const found = sown.find(
      (one) =>
        !taken.has(one.id) &&
        one.crop === batch.crop &&
        one.variety === batch.variety &&
        within(one, calendar.add(due, -SLIP), calendar.add(due, SLIP)),
    );
    if (found) taken.add(found.id);
    return found?.id ?? null;
  };
  return sown
    .filter((batch) => within(batch, first, last))
    .sort((a, b) => a.sownAt - b.sownAt)
    .map((batch) => ({
      batch: batch.id,
      crop: batch.crop,
      name: cropName(parts.farm(), batch.crop),
      variety: batch.variety,
      trays: batch.trays,
      place: batch.firstPlace,
      placeName: nameOf(parts, batch.firstPlace),
      sownAt: iso(batch.sownAt),
      again: next(batch),
    }));
}
