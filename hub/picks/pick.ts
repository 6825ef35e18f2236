import type { Entry, Undone } from '../journal/index.ts';

// A picking as the journal tells it: of a patch, or of anything cut that is no batch of trays. Times
// in ms since 1970, weights in kg, money in the farm's currency; null is not known, never zero.

/** What somebody says of a picking, and may correct later. */
export type PickFacts = {
  readonly place: string;
  readonly crop: string;
  readonly at: number;
  /** Picked, sorted out or not. */
  readonly kg: number;
  /** Of that sorted out, and not sold. */
  readonly lostKg: number | null;
  /** Minutes of each picker: the walk, the picking, the sorting. */
  readonly minutes: number | null;
  /** Of those, the walk there and back. */
  readonly walkMinutes: number | null;
  readonly pickers: number;
  /** Money per kg; null: the crop's. */
  readonly price: number | null;
  readonly note: string | null;
};

export type PickEvent =
  | { readonly event: 'picked'; readonly facts: PickFacts }
  | { readonly event: 'corrected'; readonly set: Partial<PickFacts>; readonly why: string | null }
  | Undone;
export type PickEntry = Entry<PickEvent>;

/** A picking as it stands after all that was said of it. */
export type Pick = PickFacts & {
  readonly id: string;
  /** `withdrawn`: it was entered by mistake. */
  readonly state: 'kept' | 'withdrawn';
  readonly who: string;
  readonly entries: readonly PickEntry[];
};

/** Minutes of all hands; null where nobody wrote them down. */
export const handMinutes = ({ minutes, pickers }: Pick): number | null =>
  minutes === null ? null : minutes * pickers;
