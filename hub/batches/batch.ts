import type { Entry, Undone } from '../journal/index.ts';

// A batch of trays as the journal tells it. Times in ms since 1970, weights in kg, money in the
// farm's currency; null is not known, never zero.

/** What somebody sees on a batch. */
export const batchLooks = [
  'well',
  'ready',
  'mould',
  'leggy',
  'wilted',
  'scorched',
  'cold-hurt',
  'eaten',
  'uneven',
  'other',
] as const;
export type BatchLook = (typeof batchLooks)[number];

/** Young leaves, or the cut the crop is usually grown for. */
export const cutStages = ['young', 'later'] as const;
export type CutStage = (typeof cutStages)[number];

/** Work on a batch that minutes are written down for. */
export const batchWorks = ['sowing', 'tending', 'moving', 'cutting', 'packing'] as const;
export type BatchWork = (typeof batchWorks)[number];

/** What somebody says when a batch is sown, and may correct later. */
export type BatchFacts = {
  readonly crop: string;
  readonly variety: string | null;
  readonly trays: number;
  readonly sownAt: number;
  /** Where it first stands. */
  readonly place: string;
  /** For the whole batch. */
  readonly seedCost: number | null;
  /** Medium, tray wear, packing: for the whole batch. */
  readonly otherCost: number | null;
  /** Day (`2026-05-14`) it is meant for; null when for none. */
  readonly meantFor: string | null;
};

/** Where it stood, the first place first. */
export type Stay = { readonly place: string; readonly from: number };

/** Entered in spite of a warning: who says so. */
export type Override = { readonly by: string; readonly warning: string };

export type Cut = {
  readonly at: number;
  readonly kg: number;
  /** Trays that were cut. */
  readonly trays: number;
  readonly stage: CutStage;
  /** The cut trays are done with; false where they grow again. */
  readonly clears: boolean;
  readonly minutes: number | null;
  /** Money per kg; null: the crop's. */
  readonly price: number | null;
  /** Cut, and not sold. */
  readonly lostKg: number | null;
};

export type BatchEvent =
  | {
      readonly event: 'sown';
      readonly facts: BatchFacts;
      /** Trays carried off from another batch go on as one of their own, with its past. */
      readonly partOf: { readonly batch: string; readonly stays: readonly Stay[] } | null;
      readonly override?: Override | null;
    }
  | {
      readonly event: 'corrected';
      readonly set: Partial<BatchFacts>;
      readonly note: string | null;
      /** Batches that were one when they were sown are corrected together, under one name. */
      readonly together?: string;
    }
  /** All its trays stand elsewhere from then on. */
  | {
      readonly event: 'moved';
      readonly place: string;
      readonly at: number;
      readonly minutes: number | null;
      readonly override?: Override | null;
    }
  /** Some of its trays go on as the batch `into`. */
  | {
      readonly event: 'parted';
      readonly into: string;
      readonly trays: number;
      readonly at: number;
      /** What of the batch's costs goes with them. */
      readonly seedCost?: number | null;
      readonly otherCost?: number | null;
    }
  | ({ readonly event: 'cut'; readonly note: string | null } & Cut)
  | {
      readonly event: 'thrown-out';
      readonly trays: number;
      readonly at: number;
      readonly look: BatchLook;
      readonly note: string | null;
    }
  | {
      readonly event: 'noted';
      readonly at: number;
      readonly look: BatchLook;
      readonly note: string | null;
      /** Name of a picture that is kept beside the store. */
      readonly photo: string | null;
    }
  | {
      readonly event: 'worked';
      readonly at: number;
      readonly work: BatchWork;
      readonly minutes: number;
    }
  /** What is left of it is done with, with no cut. */
  | { readonly event: 'cleared'; readonly at: number; readonly note: string | null }
  | Undone;

export type BatchEntry = Entry<BatchEvent>;
export type EntryOf<Kind extends BatchEvent['event']> = Extract<BatchEvent, { event: Kind }> & {
  readonly entry: number;
  readonly who: string;
};

/** A batch as it stands after all that was said of it; costs are of the trays that were not carried off. */
export type Batch = BatchFacts & {
  readonly id: string;
  /** Where it stood first. */
  readonly firstPlace: string;
  /** `withdrawn`: its sowing was entered by mistake. */
  readonly state: 'growing' | 'ended' | 'withdrawn';
  /** Where it stands, or stood last. */
  readonly place: string;
  /** Trays still growing. */
  readonly traysLeft: number;
  readonly stays: readonly Stay[];
  readonly partOf: string | null;
  readonly parted: readonly EntryOf<'parted'>[];
  readonly cuts: readonly EntryOf<'cut'>[];
  readonly thrownOut: readonly EntryOf<'thrown-out'>[];
  readonly notes: readonly EntryOf<'noted'>[];
  readonly works: readonly EntryOf<'worked'>[];
  readonly moves: readonly EntryOf<'moved'>[];
  /** When somebody first saw it ready (a note, else a cut); null while it is not. */
  readonly readyAt: Readonly<Record<CutStage, number | null>>;
  readonly endedAt: number | null;
  readonly entries: readonly BatchEntry[];
};
