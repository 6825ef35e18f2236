import type { LossOffers } from '../contract/index.ts';
import { addDays, weekOf, weekToSay } from '../losses/index.ts';
import { cropName } from '../lots/index.ts';
import type { ApiParts } from './parts.ts';

/** Places that grow something, of which a week can be said to have had no losses. */
export const growingPlaces = (parts: ApiParts) =>
  parts.farm().places.filter(({ kind }) => kind === 'tunnel' || kind === 'patch');

/** What the quick entry offers: each place with what stands there first. */
export function lossOffers(parts: ApiParts): LossOffers {
  const farm = parts.farm();
  const now = parts.clock.now();
  const losses = parts.losses.counted();
  const lots = parts.snapshots.lots.inStore();
  const week = weekToSay(parts.calendar(), now);
  const last = addDays(week, 6);
  return {
    today: parts.calendar().dayOf(now),
    places: farm.places
      .filter(({ kind, crop }) => kind !== 'outdoor' || crop !== undefined)
      .map(({ id, name, kind, crop, trays }) => {
        const standing = new Set([
          ...(crop === undefined ? [] : [crop]),
          ...lots.filter(({ place }) => place === id).map((lot) => lot.crop),
        ]);
        const before = losses.filter(({ place }) => place === id).map((loss) => loss.crop);
        const all = new Set([...standing, ...before, ...farm.file.crops.map((one) => one.id)]);
        return {
          ...{ place: id, name, kind, trays: trays ?? null },
          crops: [...all].map((one) => ({
            crop: one,
            name: cropName(farm, one),
            standing: standing.has(one),
          })),
        };
      }),
    quiet: {
      week,
      places: growingPlaces(parts)
        .filter(
          ({ id }) => !losses.some(({ place, day }) => place === id && inWeek(day, week, last)),
        )
        .map(({ id, name }) => ({ place: id, name, said: parts.losses.quiet.holds(id, week) })),
    },
  };
}

const inWeek = (day: string, week: string, last: string) =>
  day >= week && day <= last && weekOf(day) === week;
