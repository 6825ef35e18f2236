import { z } from 'zod';
import { id, lotClass, time } from './terms.ts';

// Lots in the cool rooms, and the clocks that were agreed for them. null means unknown, never zero.

const known = z.number().nullable();
const kilograms = z.number().gt(0).max(100_000);
const person = z.string().trim().min(1).max(60);
const note = z.string().trim().max(500);

export const lotUse = z.enum(['sold', 'used', 'moved', 'thrown-out']);
/** How it was cooled before or while it was put away. */
export const cooling = z.enum(['room', 'fan', 'water', 'ice', 'none']);
const temperature = z.number().min(-30).max(60);

const facts = {
  crop: id,
  kg: kilograms,
  /** A cool room of the farm. */
  place: id,
  /** The tunnel or patch it was harvested from. */
  from: id.nullable(),
  harvestedAt: time.nullable(),
  storedAt: time,
  cooled: cooling.nullable(),
  class: lotClass.nullable(),
  /** Money per kg; the crop's own where none is told. */
  price: z.number().min(0).max(100_000).nullable(),
};

export const putAway = z.strictObject({
  crop: facts.crop,
  kg: facts.kg,
  place: facts.place,
  from: facts.from.optional(),
  harvestedAt: facts.harvestedAt.optional(),
  /** Now, when left out. */
  storedAt: facts.storedAt.optional(),
  cooled: facts.cooled.optional(),
  class: facts.class.optional(),
  price: facts.price.optional(),
  /** Puts it away in spite of a warning: who says so. */
  override: z.strictObject({ by: person }).optional(),
});

/** One change; each is an entry of its own, and none removes another. */
export const changeLot = z
  .strictObject({
    correct: z.strictObject(facts).partial().optional(),
    take: z
      .strictObject({
        how: lotUse,
        /** All that is left, when left out. */
        kg: kilograms.optional(),
        at: time.optional(),
        /** Where it was moved to: another cool room of the farm, where what was moved goes on as a
         *  lot (a part as one of its own, with the past of the whole), or any words. */
        to: z.string().trim().max(60).optional(),
        /** Who decided; needed for what is thrown out, unless somebody is signed in. */
        by: person.optional(),
      })
      .optional(),
    /** A named person says that it may stay. */
    release: z.strictObject({ by: person.optional() }).optional(),
    /** The entry that was a mistake. */
    undo: z.number().int().min(1).optional(),
    override: z.strictObject({ by: person }).optional(),
    note: note.optional(),
  })
  .refine(
    ({ correct, take, release, undo }) =>
      [correct, take, release, undo].filter((one) => one !== undefined).length === 1,
    'expected one of correct, take, release and undo',
  );

const days = z.object({ least: z.number(), most: z.number() });

export const lot = z.object({
  id: z.string(),
  crop: z.string(),
  /** The crop as people call it. */
  name: z.string(),
  kg: z.number(),
  kgLeft: z.number(),
  place: z.string(),
  placeName: z.string(),
  /** The room it was put into first. */
  firstPlace: z.string(),
  /** Its class as somebody told it; null where it goes by its crop's, in `class`. */
  saidClass: lotClass.nullable(),
  from: z.string().nullable(),
  fromName: z.string().nullable(),
  harvestedAt: time.nullable(),
  storedAt: time,
  cooled: cooling.nullable(),
  class: lotClass.nullable(),
  price: known,
  state: z.enum(['stored', 'ended', 'withdrawn']),
  endedAt: time.nullable(),
  taken: z.array(
    z.object({
      entry: z.number().int(),
      at: time,
      how: lotUse,
      kg: z.number(),
      to: z.string().nullable(),
      by: z.string(),
      note: z.string().nullable(),
      /** The lot as which this part goes on in another cool room of the farm. */
      into: z.string().nullable(),
    }),
  ),
  /** The lot it was a part of. */
  partOf: z.string().nullable(),
  released: z.object({ by: z.string(), at: time }).nullable(),
  /** Put away in spite of this warning. */
  override: z.object({ by: z.string(), warning: z.string() }).nullable(),
  /** The entry it was put away with, and how many there are by now. */
  entry: z.number().int(),
  entries: z.number().int(),
  /** Its turn among the lots of its room, 1 first; null once it is gone. */
  turn: z.number().int().nullable(),
  /** Days left less days to the next delivery. */
  slack: known,
  life: z.object({
    /** Days left, the least and the most of all that may be; null for no answer. */
    days: days.nullable(),
    /** With unknown hours as warm as last known, and as warm as outdoors. */
    asLastKnown: days.nullable(),
    asOutdoors: days.nullable(),
    knownHours: z.number(),
    unknownHours: z.number(),
    risk: z.enum(['freezing', 'chilling', 'heat']).nullable(),
    /** Where the figures come from; null where nobody tells how long it keeps. */
    source: z.string().nullable(),
  }),
  exposure: z.object({
    limit: z.number(),
    aboveMinutes: z.number(),
    /** Possibly above. */
    unknownMinutes: z.number(),
    worstMinutes: z.number(),
    clockHours: known,
    /** Whether a probe in a crate measured most of it, or one in the air. */
    of: z.enum(['product', 'air']),
  }),
  /** Days left, in words. */
  words: z.string(),
  /** Time over the limit in words, the last line last. No verdict. */
  clockWords: z.array(z.string()),
});

/** One entry of a lot's history, in words. */
export const lotEntry = z.object({
  entry: z.number().int(),
  t: time,
  who: z.string(),
  event: z.enum(['put-away', 'corrected', 'taken', 'carried', 'released', 'undone']),
  /** A later entry says that this one was a mistake. */
  undone: z.boolean(),
  words: z.string(),
});
export const lotHistory = lot.extend({ history: z.array(lotEntry) });

/** What the quick entry offers: the most used crops first. */
export const lotOffers = z.object({
  crops: z.array(
    z.object({
      crop: z.string(),
      name: z.string(),
      times: z.number().int(),
      /** The last weights, the newest first. */
      weights: z.array(z.number()),
      from: z.string().nullable(),
      /** Minutes from harvest to put-away the last time. */
      waitMinutes: known,
      cooled: cooling.nullable(),
      /** What speaks against this room, before anything is saved. */
      warning: z.string().nullable(),
    }),
  ),
  /** The lot put away last, to be put away again with one tap. */
  last: z.object({ crop: z.string(), name: z.string(), kg: z.number() }).nullable(),
});

export const foodClock = z.object({
  class: lotClass,
  /** °C; null: the room's own limit. */
  limit: known,
  /** Hours over the limit since harvest or cutting; null: no clock was agreed. */
  clockHours: known,
  words: z.string().nullable(),
  setBy: z.string().nullable(),
  setAt: time.nullable(),
});
export const foodClocks = z.object({
  clocks: z.array(foodClock),
  /** Who decides on them, in words. */
  why: z.string(),
  /** What some countries print, to talk over with the officer; none applies by itself. */
  printed: z.array(z.string()),
});
export const setFoodClock = z.strictObject({
  limit: temperature.nullable(),
  clockHours: z.number().gt(0).max(1000).nullable(),
  words: z.string().trim().min(1).max(300).nullable(),
  by: person.optional(),
});

export type LotUse = z.infer<typeof lotUse>;
export type Cooling = z.infer<typeof cooling>;
export type PutAway = z.infer<typeof putAway>;
export type ChangeLot = z.infer<typeof changeLot>;
export type Lot = z.infer<typeof lot>;
export type LotEntry = z.infer<typeof lotEntry>;
export type LotHistory = z.infer<typeof lotHistory>;
export type LotOffers = z.infer<typeof lotOffers>;
export type FoodClock = z.infer<typeof foodClock>;
export type FoodClocks = z.infer<typeof foodClocks>;
export type SetFoodClock = z.infer<typeof setFoodClock>;
