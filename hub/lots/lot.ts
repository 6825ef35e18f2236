import type { LotClass } from '../contract/index.ts';
import type { Entry, Undone } from '../journal/index.ts';

// A lot as the journal tells it. Times in ms since 1970; null is not known, never zero.

export const lotUses = ['sold', 'used', 'moved', 'thrown-out'] as const;
export type LotUse = (typeof lotUses)[number];

/** What somebody says when a lot is put away, and may correct later. */
export type LotFacts = {
  readonly crop: string;
  readonly kg: number;
  /** The cool room it was put into. */
  readonly place: string;
  /** The tunnel or patch it was harvested from. */
  readonly from: string | null;
  readonly harvestedAt: number | null;
  readonly storedAt: number;
  readonly cooled: string | null;
  readonly class: LotClass | null;
  /** Money per kg. */
  readonly price: number | null;
};

/** What one entry of the journal says of a lot. Nothing of it is ever changed: a later one says otherwise. */
export type LotEvent =
  | {
      readonly event: 'put-away';
      readonly facts: LotFacts;
      /** Who put it away in spite of a warning, and what the warning said. */
      readonly override: { readonly by: string; readonly warning: string } | null;
      /** The lot it was a part of until it was carried over. */
      readonly of?: string;
    }
  | { readonly event: 'corrected'; readonly set: Partial<LotFacts>; readonly note: string | null }
  | {
      readonly event: 'taken';
      readonly how: LotUse;
      readonly kg: number;
      readonly at: number;
      readonly to: string | null;
      readonly by: string | null;
      readonly note: string | null;
      /** The lot as which this part goes on in another cool room of the farm. */
      readonly into?: string;
    }
  /** All that is left goes on in another cool room of the farm. */
  | { readonly event: 'carried'; readonly place: string; readonly at: number }
  | {
      readonly event: 'released';
      readonly by: string;
      readonly at: number;
      readonly note: string | null;
    }
  | Undone;

export type LotEntry = Entry<LotEvent>;

export type Taken = Extract<LotEvent, { event: 'taken' }> & {
  readonly entry: number;
  readonly who: string;
};

/** A lot as it stands after all that was said of it. */
export type Lot = LotFacts & {
  readonly id: string;
  /** `withdrawn`: putting it away was a mistake. */
  readonly state: 'stored' | 'ended' | 'withdrawn';
  readonly kgLeft: number;
  readonly endedAt: number | null;
  readonly taken: readonly Taken[];
  /** Where it lay from when on, the first room first. */
  readonly stays: readonly { readonly place: string; readonly from: number }[];
  readonly released: { readonly by: string; readonly at: number } | null;
  readonly override: { readonly by: string; readonly warning: string } | null;
  /** The lot it was a part of; null for one that was put away as it is. */
  readonly partOf: string | null;
  readonly entries: readonly LotEntry[];
};
