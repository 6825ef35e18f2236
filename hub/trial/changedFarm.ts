import { WET_LIMIT } from '../../rules/decide/index.ts';
import type { FarmFile, TrialChange } from '../contract/index.ts';
import { WET } from '../farm/index.ts';

/** A limit that is tried, as it stands: of a place, of a crop, or of the whole farm. */
export function limitNow(file: FarmFile, { of, what }: Omit<TrialChange, 'to'>): number | null {
  const place = file.places.find(({ id }) => id === of);
  const crop = file.crops.find(({ id }) => id === of);
  switch (what) {
    case 'wet-at':
      return place === undefined ? null : (place.wet ?? WET).at;
    case 'wet-below':
      return place === undefined ? null : (place.wet ?? WET).below;
    case 'wet-hours':
      return place === undefined ? null : (place.wet?.hours ?? WET_LIMIT);
    case 'cover-minutes':
      return place?.cover?.minutes ?? null;
    case 'cover-value':
      return place?.cover?.value ?? null;
    case 'cover-damage':
      return place?.cover?.damage ?? null;
    case 'heat-limit':
      return crop?.heatLimit ?? null;
    case 'band-top':
      return crop?.band?.[1] ?? null;
    case 'chill':
      return crop?.chill ?? null;
    case 'wage':
      return file.farm.wage;
  }
}

/** The farm file with its limits changed; the one given stays as it is. */
export function changedFarm(file: FarmFile, changes: readonly TrialChange[]): FarmFile {
  const next = structuredClone(file);
  for (const { of, what, to } of changes) {
    const place = next.places.find(({ id }) => id === of);
    const crop = next.crops.find(({ id }) => id === of);
    const wet = { ...WET, ...place?.wet };
    if (place && what === 'wet-at') place.wet = { ...wet, at: to };
    if (place && what === 'wet-below') place.wet = { ...wet, below: to };
    if (place && what === 'wet-hours') place.wet = { ...wet, hours: to };
    if (place?.cover && what === 'cover-minutes') place.cover.minutes = to;
    if (place?.cover && what === 'cover-value') place.cover.value = to;
    if (place?.cover && what === 'cover-damage') place.cover.damage = to;
    if (crop && what === 'heat-limit') crop.heatLimit = to;
    if (crop?.band && what === 'band-top') crop.band = [crop.band[0], to];
    if (crop && what === 'chill') crop.chill = to;
    if (what === 'wage') next.farm.wage = to;
  }
  return next;
}
