import type { LossLook, LossUnit } from '../contract/index.ts';
import type { Entry, Undone } from '../journal/index.ts';

// A loss as the journal tells it. Times in ms since 1970; null is not known, never zero.

/** What somebody says when a loss is logged, and may correct later. */
export type LossFacts = {
  readonly place: string;
  readonly crop: string;
  /** In `unit`; a share in % of what stood there. */
  readonly amount: number;
  readonly unit: LossUnit;
  readonly of: { readonly amount: number; readonly unit: 'kg' | 'trays' } | null;
  readonly look: LossLook;
  /** The farm's day on which it was seen. */
  readonly day: string;
  readonly batch: string | null;
  readonly note: string | null;
};

/** What one entry of the journal says of a loss. Nothing of it is ever changed: a later one says otherwise. */
export type LossEvent =
  | {
      readonly event: 'entered';
      readonly facts: LossFacts;
      readonly photo: string | null;
      /** Not the same as what was thrown out of a lot there. */
      readonly another: boolean;
    }
  | { readonly event: 'corrected'; readonly set: Partial<LossFacts>; readonly why: string | null }
  /** null: the photo was withdrawn, and deleted. */
  | { readonly event: 'photo'; readonly photo: string | null }
  /** An entry was a mistake. */
  | Undone;

export type LossEntry = Entry<LossEvent>;

/** A loss as it stands after all that was said of it. */
export type Loss = LossFacts & {
  readonly id: string;
  readonly withdrawn: boolean;
  readonly another: boolean;
  readonly photo: string | null;
  readonly entries: readonly LossEntry[];
};
