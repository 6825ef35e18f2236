import { heatLimitOf, START_VENTING, WET_LIMIT } from '../../rules/decide/index.ts';
import type { FarmFile, TrialChange } from '../contract/index.ts';
import { damageAt, farmOf, WET } from '../farm/index.ts';

/** A limit as the rules take it, and whether the grower told it. */
export type Standing = { readonly value: number; readonly told: boolean };

const FLOOR = 0; // °C where no chill is told, as in closeUp

const standing = (told: number | undefined, usual: number | null | undefined): Standing | null =>
  told !== undefined
    ? { value: told, told: true }
    : usual == null
      ? null
      : { value: usual, told: false };

/** A limit that can be tried, of a place, of a crop, or of the whole farm; null where there is none. */
export function limitAt(
  file: FarmFile,
  { of, what }: Pick<TrialChange, 'of' | 'what'>,
): Standing | null {
  const place = file.places.find(({ id }) => id === of);
  const crop = file.crops.find(({ id }) => id === of);
  const airy = place?.kind === 'tunnel' && place.vents ? place : null;
  switch (what) {
    case 'wet-at':
      return airy && standing(airy.wet?.at, WET.at);
    case 'wet-below':
      return airy && standing(airy.wet?.below, WET.below);
    case 'wet-hours':
      return airy && standing(airy.wet?.hours, WET_LIMIT);
    case 'cover-minutes':
      return standing(place?.cover?.minutes, null);
    case 'cover-value':
      return standing(place?.cover?.value, null);
    case 'cover-damage':
      return place?.cover === undefined
        ? null
        : standing(place.cover.damage, damageAt(farmOf(file), place)?.at);
    case 'set-point':
      return place?.kind === 'cool-room' ? standing(place.setPoint, null) : null;
    case 'room-limit':
      return place?.kind === 'cool-room' ? standing(place.limit, null) : null;
    case 'heat-limit': {
      const { heatLimit = null, band = null } = crop ?? {};
      return crop ? standing(crop.heatLimit, heatLimitOf({ heatLimit, band })) : null;
    }
    case 'band-top':
      return crop ? standing(crop.band?.[1], START_VENTING) : null;
    case 'chill':
      return crop ? standing(crop.chill, FLOOR) : null;
    case 'wage':
      return { value: file.farm.wage, told: true };
  }
}
export const limitNow = (file: FarmFile, change: Pick<TrialChange, 'of' | 'what'>): number | null =>
  limitAt(file, change)?.value ?? null;

/** K below its top that a band begins at where only its top was tried. Ours. */
const BAND = 8;

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
    if (place && what === 'set-point') place.setPoint = to;
    if (place && what === 'room-limit') place.limit = to;
    if (crop && what === 'heat-limit') crop.heatLimit = to;
    if (crop && what === 'band-top') crop.band = [crop.band?.[0] ?? to - BAND, to];
    if (crop && what === 'chill') crop.chill = to;
    if (what === 'wage') next.farm.wage = to;
  }
  return next;
}

/** Every limit of the farm that can be tried. */
export function limitsOf(file: FarmFile) {
  const each = (of: string | null, whats: readonly TrialChange['what'][]) =>
    whats.flatMap((what) => {
      const limit = limitAt(file, { of, what });
      return limit === null ? [] : [{ what, of, ...limit }];
    });
  const grown = new Set(
    file.places.filter(({ kind }) => kind === 'tunnel').map(({ crop }) => crop),
  );
  return [
    ...file.places.flatMap(({ id }) => each(id, placeLimits)),
    ...file.crops.filter(({ id }) => grown.has(id)).flatMap(({ id }) => each(id, cropLimits)),
    ...each(null, farmLimits),
  ];
}
const placeLimits = [
  'wet-hours',
  'wet-at',
  'wet-below',
  'cover-minutes',
  'cover-value',
  'cover-damage',
  'set-point',
  'room-limit',
] as const;
const cropLimits = ['heat-limit', 'band-top', 'chill'] as const;
const farmLimits = ['wage'] as const;
