import { z } from 'zod';
import { placeKind, time } from './terms.ts';

// What the page of batches offers for a quick entry, and files of batches.

const known = z.number().nullable();

export const batchOffers = z.object({
  /** Crops most sown first, with what was said the last time. */
  crops: z.array(
    z.object({
      crop: z.string(),
      name: z.string(),
      times: z.number().int(),
      trays: z.number().int().nullable(),
      variety: z.string().nullable(),
      place: z.string().nullable(),
      seedCost: known,
      otherCost: known,
      /** Cut weights of its trays, the newest first, in kg for a tray. */
      perTray: z.array(z.number()),
      /** Minutes the last cut took. */
      cutMinutes: known,
      regrows: z.boolean(),
    }),
  ),
  /** Places where things grow, with trays that stand there and room for more; null where not told. */
  places: z.array(
    z.object({
      place: z.string(),
      name: z.string(),
      kind: placeKind,
      capacity: z.number().int().nullable(),
      standing: z.number().int(),
      room: z.number().int().nullable(),
    }),
  ),
  /** What was sown on this day of last week, a day sooner or later too. */
  asLastWeek: z.array(
    z.object({
      batch: z.string(),
      crop: z.string(),
      name: z.string(),
      variety: z.string().nullable(),
      trays: z.number().int(),
      place: z.string(),
      placeName: z.string(),
      sownAt: time,
      /** The batch of this week that does it again already. */
      again: z.string().nullable(),
    }),
  ),
});

export const MOST_BATCH_FILE = 2_000_000; // characters; ours: some ten thousand entries

/** A file of batches (CSV): what would be entered; with `enter` it is. */
export const batchFile = z.strictObject({
  csv: z.string().min(1).max(MOST_BATCH_FILE),
  enter: z.boolean().default(false),
});

export const batchFileResult = z.object({
  entered: z.boolean(),
  /** Batches that are new, or get further entries. */
  batches: z.array(
    z.object({
      line: z.number().int(),
      id: z.string(),
      name: z.string(),
      trays: z.number().int(),
      sownAt: time,
      placeName: z.string(),
      /** Not in the hub yet. */
      fresh: z.boolean(),
      /** Entries it gets, the sowing among them. */
      entries: z.number().int(),
    }),
  ),
  /** Entries in all. */
  entries: z.number().int(),
  /** Rows that the hub has already. */
  known: z.number().int(),
  refused: z.array(z.object({ line: z.number().int(), reason: z.string() })),
  /** Columns that say nothing to the hub. */
  ignored: z.array(z.string()),
});

export type BatchOffers = z.infer<typeof batchOffers>;
export type BatchFile = z.infer<typeof batchFile>;
export type BatchFileResult = z.infer<typeof batchFileResult>;
