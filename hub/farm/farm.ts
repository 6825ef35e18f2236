import type { FarmCrop, FarmFile, FarmPlace, Mapping } from '../contract/index.ts';

/** The farm as the hub works with it: the farm file, ready to look things up in. */
export type Farm = {
  readonly file: FarmFile;
  /** Whether it is told where it lies; until then nothing is decided. */
  readonly settled: boolean;
  readonly zone: string;
  readonly places: readonly FarmPlace[];
  place(id: string): FarmPlace | undefined;
  crop(id: string | null | undefined): FarmCrop | undefined;
  /** The first outdoor place: what "outside" means in every comparison. */
  readonly outside: FarmPlace | undefined;
  readonly mappings: readonly Mapping[];
};

/** Leaves count as wet from this humidity on, and until it falls below the second.
 *  90: constant threshold of Sentelhas et al. 2008, Agric. For. Meteorol. 148:392 (from memory); 87: ours. */
export const WET = { at: 90, below: 87 };

export function farmOf(file: FarmFile, settled = true): Farm {
  const places = new Map(file.places.map((place) => [place.id, place]));
  const crops = new Map(file.crops.map((crop) => [crop.id, crop]));
  return {
    file,
    settled,
    zone: file.farm.zone,
    places: file.places,
    place: (id) => places.get(id),
    crop: (id) => (id === null || id === undefined ? undefined : crops.get(id)),
    outside: file.places.find(({ kind }) => kind === 'outdoor'),
    mappings: file.mappings,
  };
}

/** `5m` as milliseconds; the schema let nothing else through. */
export function everyMs(every: string): number {
  const unit = { s: 1000, m: 60_000, h: 3_600_000 }[every.slice(-1)] ?? 60_000;
  return Number(every.slice(0, -1)) * unit;
}

/** Where neither a crop nor its base is told, °C. */
export const USUAL_BASE = 10;

/** Temperature the crop's heat units start from; 10 °C when no crop is told (contract of `Day`). */
export const baseOf = (farm: Farm, place: FarmPlace) => farm.crop(place.crop)?.base ?? USUAL_BASE;
