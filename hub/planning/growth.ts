import type { Batch } from '../batches/index.ts';
import type { Ready } from '../growing/index.ts';

/** Heat a crop counts: from `lower` up, no more above `upper`, °C. */
export type Bounds = { readonly lower: number; readonly upper: number | null };

/** What past batches of a crop tell of the next one. */
export type CropPast = {
  readonly base: Bounds;
  /** Heat units from sowing to ready of each, °C d. */
  readonly degreeDays: readonly number[];
  /** kg a tray of each. */
  readonly perTray: readonly number[];
};

/** All that planning needs to know of growth. */
export type Growth = {
  readonly crop: (id: string) => CropPast;
  /** When a batch is ready, as its page says it. */
  readonly ready: (batch: Batch, now: number) => Ready;
  /** Heat units of each coming day at a place, today first; null where its climate is not known. */
  readonly ahead: (
    place: string,
    bounds: Bounds,
    from: string,
    days: number,
  ) => readonly number[] | null;
  /** Changes when anything of this may have changed. */
  readonly version: () => string;
};
