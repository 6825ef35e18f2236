import { z } from 'zod';
import { photoName } from './photos.ts';
import { calendarDay, id, time } from './terms.ts';

// Batches of trays: sown, carried from place to place, cut. null means unknown, never zero.

const known = z.number().nullable();
const person = z.string().trim().min(1).max(60);
const note = z.string().trim().max(500);
const trays = z.number().int().min(1).max(100_000);
const kilograms = z.number().gt(0).max(100_000);
const money = z.number().min(0).max(100_000);
const minutes = z.number().min(0).max(10_000);

/** What somebody sees on a batch. */
export const batchLook = z.enum([
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
]);
/** Young leaves, or the cut the crop is usually grown for. */
export const cutStage = z.enum(['young', 'later']);
export const batchWork = z.enum(['sowing', 'tending', 'moving', 'cutting', 'packing']);

const facts = {
  crop: id,
  variety: z.string().trim().min(1).max(60).nullable(),
  trays,
  sownAt: time,
  /** A tunnel, patch or place outdoors. */
  place: id,
  /** Seed, for the whole batch. */
  seedCost: money.nullable(),
  /** Medium, tray wear, packing, for the whole batch. */
  otherCost: money.nullable(),
  /** The delivery day it is meant for. */
  meantFor: calendarDay.nullable(),
};
const override = z.strictObject({ by: person }).optional();

export const sowBatch = z.strictObject({
  crop: facts.crop,
  trays: facts.trays,
  place: facts.place,
  variety: facts.variety.optional(),
  /** Now, when left out. */
  sownAt: facts.sownAt.optional(),
  seedCost: facts.seedCost.optional(),
  otherCost: facts.otherCost.optional(),
  meantFor: facts.meantFor.optional(),
  /** Minutes the sowing took. */
  minutes: minutes.optional(),
  /** Sows it there in spite of a warning: who says so. */
  override,
});

/** Sows batches again as they were sown. */
export const repeatBatches = z.strictObject({
  batches: z.array(z.string().min(1).max(100)).min(1).max(50),
  sownAt: time.optional(),
  override,
});

const at = time.optional();
/** Each command of a change, by its name. */
export const batchChanges = {
  correct: z
    .strictObject({ ...facts, note: note.optional() })
    .partial()
    .optional(),
  /** All its trays, or some, which then go on as a batch of their own. */
  move: z
    .strictObject({ place: id, trays: trays.optional(), at, minutes: minutes.optional() })
    .optional(),
  cut: z
    .strictObject({
      kg: kilograms,
      /** All that are left, when left out. */
      trays: trays.optional(),
      /** `later`, when left out. */
      stage: cutStage.optional(),
      /** The trays are done with; when left out, unless the crop grows again. */
      clears: z.boolean().optional(),
      at,
      minutes: minutes.nullable().optional(),
      price: money.nullable().optional(),
      /** Cut, and not sold. */
      lostKg: z.number().min(0).max(100_000).nullable().optional(),
      note: note.optional(),
    })
    .optional(),
  throwOut: z
    .strictObject({ trays: trays.optional(), look: batchLook, at, note: note.optional() })
    .optional(),
  note: z
    .strictObject({ look: batchLook, note: note.optional(), photo: photoName.optional(), at })
    .optional(),
  work: z.strictObject({ work: batchWork, minutes: minutes.gt(0), at }).optional(),
  /** What is left of it is done with. */
  clear: z.strictObject({ at, note: note.optional() }).optional(),
  /** The entry that was a mistake. */
  undo: z.number().int().min(1).optional(),
};

/** One change; each is an entry of its own, and none removes another. */
export const changeBatch = z
  .strictObject({ ...batchChanges, override })
  .refine(
    (said) =>
      Object.keys(batchChanges).filter((key) => said[key as keyof typeof said] !== undefined)
        .length === 1,
    'expected one of correct, move, cut, throwOut, note, work, clear and undo',
  );

const told = { entry: z.number().int(), at: time, by: z.string() };

export const batch = z.object({
  id: z.string(),
  crop: z.string(),
  /** The crop as people call it. */
  name: z.string(),
  variety: z.string().nullable(),
  /** Trays it was sown in, and those that still grow. */
  trays: z.number().int(),
  traysLeft: z.number().int(),
  sownAt: time,
  /** Days since it was sown, up to now or to its end. */
  days: z.number(),
  /** Where it stands, or stood last. */
  place: z.string(),
  placeName: z.string(),
  /** The places it stood in, the first one first. */
  stays: z.array(
    z.object({ place: z.string(), placeName: z.string(), from: time, to: time.nullable() }),
  ),
  seedCost: known,
  otherCost: known,
  meantFor: z.string().nullable(),
  state: z.enum(['growing', 'ended', 'withdrawn']),
  endedAt: time.nullable(),
  /** When it was first seen ready, or first cut. */
  readyAt: z.object({ young: time.nullable(), later: time.nullable() }),
  /** The batch its trays were carried off from, and those that were carried off from it. */
  partOf: z.string().nullable(),
  parted: z.array(z.object({ ...told, into: z.string(), trays: z.number().int() })),
  cuts: z.array(
    z.object({
      ...told,
      kg: z.number(),
      trays: z.number().int(),
      stage: cutStage,
      clears: z.boolean(),
      minutes: known,
      price: known,
      lostKg: known,
      note: z.string().nullable(),
    }),
  ),
  thrownOut: z.array(
    z.object({ ...told, trays: z.number().int(), look: batchLook, note: z.string().nullable() }),
  ),
  notes: z.array(
    z.object({
      ...told,
      look: batchLook,
      note: z.string().nullable(),
      photo: z.string().nullable(),
    }),
  ),
  works: z.array(z.object({ ...told, work: batchWork, minutes: z.number() })),
  /** The entry it was sown with, and how many there are by now. */
  entry: z.number().int(),
  entries: z.number().int(),
  /** How it is, in words. */
  words: z.string(),
});

/** One entry of a batch's history, in words. */
export const batchEntry = z.object({
  entry: z.number().int(),
  t: time,
  who: z.string(),
  event: z.enum([
    'sown',
    'corrected',
    'moved',
    'parted',
    'cut',
    'thrown-out',
    'noted',
    'worked',
    'cleared',
    'undone',
  ]),
  /** A later entry says that this one was a mistake. */
  undone: z.boolean(),
  words: z.string(),
});
export const batchHistory = batch.extend({
  history: z.array(batchEntry),
  /** The batch that the last entry made: trays that were carried off. */
  made: z.string().nullable(),
});

export type BatchLook = z.infer<typeof batchLook>;
export type CutStage = z.infer<typeof cutStage>;
export type BatchWork = z.infer<typeof batchWork>;
export type SowBatch = z.infer<typeof sowBatch>;
export type RepeatBatches = z.infer<typeof repeatBatches>;
export type ChangeBatch = z.infer<typeof changeBatch>;
export type Batch = z.infer<typeof batch>;
export type BatchEntry = z.infer<typeof batchEntry>;
export type BatchHistory = z.infer<typeof batchHistory>;
