import { z } from 'zod';
import { id, time } from './terms.ts';

// Pickings of patches, and of anything cut that is no batch of trays. null means unknown, never zero.

const kilograms = z.number().min(0).max(100_000);
const minutes = z.number().gt(0).max(10_000);

const facts = {
  /** A patch, a tunnel or a place outdoors. */
  place: id,
  crop: id,
  at: time,
  /** Picked, sorted out or not. */
  kg: kilograms,
  /** Of that sorted out, and not sold. */
  lostKg: kilograms.nullable(),
  /** Of each picker: the walk, the picking, the sorting. */
  minutes: minutes.nullable(),
  /** Of those, the walk there and back. */
  walkMinutes: z.number().min(0).max(10_000).nullable(),
  pickers: z.number().int().min(1).max(100),
  /** Money per kg; the crop's own where none is told. */
  price: z.number().min(0).max(100_000).nullable(),
  note: z.string().trim().max(500).nullable(),
};

export const enterPick = z.strictObject({
  place: facts.place,
  kg: facts.kg,
  /** The place's own crop, when left out. */
  crop: facts.crop.optional(),
  /** Now, when left out. */
  at: facts.at.optional(),
  lostKg: facts.lostKg.optional(),
  minutes: facts.minutes.optional(),
  walkMinutes: facts.walkMinutes.optional(),
  /** One, when left out. */
  pickers: facts.pickers.optional(),
  price: facts.price.optional(),
  note: facts.note.optional(),
});

/** One change; each is an entry of its own, and none removes another. */
export const changePick = z
  .strictObject({
    correct: z.strictObject(facts).partial().optional(),
    /** The entry that was a mistake. */
    undo: z.number().int().min(1).optional(),
    /** Why it is corrected. */
    why: z.string().trim().max(500).optional(),
  })
  .refine(
    ({ correct, undo }) => (correct === undefined) !== (undo === undefined),
    'expected one of correct and undo',
  );

export const pick = z.object({
  id: z.string(),
  ...facts,
  /** The crop and the place as people call them. */
  name: z.string(),
  placeName: z.string(),
  state: z.enum(['kept', 'withdrawn']),
  who: z.string(),
  /** The entry it was entered with, and how many there are by now. */
  entry: z.number().int(),
  entries: z.number().int(),
  /** Fields without which nobody can say what it earned. */
  missing: z.array(z.enum(['lostKg', 'minutes', 'price'])),
});

export const pickHistory = pick.extend({
  /** The newest first. */
  history: z.array(
    z.object({
      entry: z.number().int(),
      t: time,
      who: z.string(),
      event: z.enum(['picked', 'corrected', 'undone']),
      undone: z.boolean(),
      words: z.string(),
    }),
  ),
});

/** What the quick entry offers, what was picked most lately first. */
export const pickOffers = z.object({
  spots: z.array(
    z.object({
      place: z.string(),
      placeName: z.string(),
      crop: z.string(),
      name: z.string(),
      times: z.number().int(),
      /** Of the newest pickings there. */
      weights: z.array(z.number()),
      minutes: z.array(z.number()),
      walkMinutes: z.number().nullable(),
      pickers: z.number().int(),
    }),
  ),
  places: z.array(z.object({ id: z.string(), name: z.string() })),
  crops: z.array(z.object({ id: z.string(), name: z.string() })),
});

export type EnterPick = z.infer<typeof enterPick>;
export type ChangePick = z.infer<typeof changePick>;
export type Pick = z.infer<typeof pick>;
export type PickHistory = z.infer<typeof pickHistory>;
export type PickOffers = z.infer<typeof pickOffers>;
