import type { HarmShare, PlaceDay } from '../days/index.ts';
import type { Instant } from '../units.ts';

// Trays that stand somewhere, and what the places were like, as far as it is known.

/** Trays of one batch; or the trays that the farm file tells of a place, where nobody keeps batches. */
export type TraysStanding = {
  /** null: told in the farm file. */
  readonly batch: string | null;
  readonly crop: string;
  /** As it is called on this farm. */
  readonly cropName: string;
  readonly place: string;
  readonly trays: number;
  /** Days until they are ready; null where nobody knows. */
  readonly daysLeft: number | null;
  /** Who says so: the heat they lived through, the crop's days in the farm file, or nobody (ours). */
  readonly daysFrom: 'heat' | 'told' | 'guess';
  /** Mould was seen on them. */
  readonly mouldy: boolean;
  /** Since when they stand there, where they were moved to it; null when never. */
  readonly movedAt: Instant | null;
  /** Places they left, and when. */
  readonly left: readonly { readonly place: string; readonly at: Instant }[];
  /** Minutes of carrying all of them; null where not told. */
  readonly minutes: number | null;
  /** Where an open task asks to carry them. */
  readonly askedTo: string | null;
};

/** One place where trays can stand. */
export type TrayPlace = {
  readonly id: string;
  readonly name: string;
  /** Trays it can hold; null where not told. */
  readonly capacity: number | null;
  /** Trays that stand there now, of all crops. */
  readonly standing: number;
  /** Of the compared days, those on which somebody said that it was shaded. */
  readonly shadedDays: number;
  /** Somebody said in those days that it will not be shaded. */
  readonly notShaded: boolean;
};

/** The last days of every place as one crop sees them, oldest first, today left out. */
export type CropPlaces = {
  readonly crop: string;
  readonly places: readonly { readonly place: string; readonly days: readonly PlaceDay[] }[];
  /** The open air; empty where nobody measures it. */
  readonly outside: readonly PlaceDay[];
  /** More days of the places with vents, and of the open air, for what their nights were like. */
  readonly past?: readonly { readonly place: string; readonly days: readonly PlaceDay[] }[];
  readonly pastOutside?: readonly PlaceDay[];
  readonly share: HarmShare;
};

export type TraysNow = {
  readonly standing: readonly TraysStanding[];
  readonly places: readonly TrayPlace[];
  readonly crops: readonly CropPlaces[];
};
