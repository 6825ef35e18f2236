import type { Calendar } from '../clock.ts';
import type { Day } from '../contract/index.ts';
import type { Farm } from '../farm/index.ts';
import type { Lot, Seen } from '../lots/index.ts';
import type { Placement, Store } from '../store/index.ts';

/** A batch as its book tells it, so far as losses need it. Days are the farm's. */
export type BatchSpan = {
  readonly id: string;
  readonly name: string;
  readonly place: string;
  readonly crop: string;
  readonly from: string;
  /** null while it goes on. */
  readonly to: string | null;
};

export type LossParts = {
  readonly store: Store;
  readonly farm: () => Farm;
  readonly calendar: () => Calendar;
  /** What each day was like at a place, from and to included. */
  readonly days: (place: string, from: string, to: string, now: number) => readonly Day[];
  readonly spots: {
    readonly ordered: (place: string, from: number, to: number) => readonly string[];
    readonly overlapping: (
      place: string,
      spot: string | null,
      from: number,
      to: number,
    ) => readonly Placement[];
  };
  readonly lots: {
    readonly all: () => readonly Lot[];
    readonly seen: (lot: Lot, now: number) => Seen;
  };
  /** Every batch there is; undefined where nobody keeps batches: then none is compared. */
  readonly batches?: () => readonly BatchSpan[];
  /** Whether a batch has this id; undefined where nobody keeps batches: then any id will do. */
  readonly batchKnown?: (id: string) => boolean;
};
