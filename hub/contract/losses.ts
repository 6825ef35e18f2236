import { z } from 'zod';
import { photoName } from './photos.ts';
import { calendarDay, id, placeKind, time } from './terms.ts';

// Losses as people log them, and what stands beside them. null means unknown, never zero.

const known = z.number().nullable();
const note = z.string().trim().max(500);

/** What it looked like, in plain words; no diagnosis. */
export const lossLooks = [
  'grey-mould',
  'white-down',
  'stem-rot',
  'wilted',
  'frosted',
  'scorched',
  'eaten',
  'leggy',
  'other',
] as const;
export const lossLook = z.enum(lossLooks);

/** `share` is in % of what stood there. */
export const lossUnits = ['kg', 'trays', 'share'] as const;
export const lossUnit = z.enum(lossUnits);

const facts = {
  place: id,
  crop: id,
  amount: z.number().gt(0).max(100_000),
  unit: lossUnit,
  /** What stood there before, of which this was lost. */
  of: z
    .strictObject({ amount: z.number().gt(0).max(100_000), unit: z.enum(['kg', 'trays']) })
    .nullable(),
  look: lossLook,
  /** The farm's day on which it was seen. */
  day: calendarDay,
  batch: id.nullable(),
  note: note.nullable(),
};

export const enterLoss = z.strictObject({
  place: facts.place,
  crop: facts.crop,
  amount: facts.amount,
  unit: facts.unit,
  of: facts.of.optional(),
  look: facts.look,
  /** Today, when left out. */
  day: facts.day.optional(),
  batch: facts.batch.optional(),
  note: facts.note.optional(),
  photo: photoName.optional(),
  /** Not the same as what was thrown out of a lot there. */
  another: z.boolean().optional(),
});

/** One change; each is an entry of its own, and none removes another. */
export const changeLoss = z
  .strictObject({
    correct: z.strictObject(facts).partial().optional(),
    /** A photo that was sent; null withdraws the one there is, and deletes it. */
    photo: photoName.nullable().optional(),
    /** The entry that was a mistake. */
    undo: z.number().int().min(1).optional(),
    /** Why; with a correction. */
    why: note.optional(),
  })
  .refine(
    ({ correct, photo, undo }) =>
      [correct, photo, undo].filter((one) => one !== undefined).length === 1,
    'expected one of correct, photo and undo',
  );

export const loss = z.object({
  id: z.string(),
  /** `lot`: thrown out of a lot of the cool room, and kept there. */
  origin: z.enum(['entered', 'lot']),
  /** The lot it was thrown out of, or, for one that was entered, the lot that tells the same. */
  lot: z.string().nullable(),
  place: z.string(),
  placeName: z.string(),
  crop: z.string(),
  /** The crop as people call it. */
  name: z.string(),
  amount: z.number(),
  unit: lossUnit,
  of: z.object({ amount: z.number(), unit: z.enum(['kg', 'trays']) }).nullable(),
  /** Share lost of what stood there, 0 to 1; null where the whole is not known. */
  share: known,
  /** kg, from the amount or from what a tray yields. */
  kg: known,
  /** At the crop's price. */
  money: known,
  look: lossLook.nullable(),
  day: calendarDay,
  batch: z.string().nullable(),
  note: z.string().nullable(),
  /** Where its photo is. */
  photo: z.string().nullable(),
  /** `withdrawn`: entering it was a mistake. `same`: a lot tells of it, so it is counted there. */
  state: z.enum(['holds', 'same', 'withdrawn']),
  /** The entry it was entered with, and how many there are by now. */
  entry: z.number().int(),
  entries: z.number().int(),
  by: z.string(),
  enteredAt: time,
  words: z.string(),
});

export const lossEntry = z.object({
  entry: z.number().int(),
  t: time,
  who: z.string(),
  event: z.enum(['entered', 'corrected', 'photo', 'undone']),
  /** A later entry says that this one was a mistake. */
  undone: z.boolean(),
  /** Whether it can be taken back; a photo that was deleted cannot come again. */
  mayUndo: z.boolean(),
  words: z.string(),
});
export const lossHistory = loss.extend({ history: z.array(lossEntry) });

export const lossOffers = z.object({
  /** Today on the farm. */
  today: calendarDay,
  places: z.array(
    z.object({
      place: z.string(),
      name: z.string(),
      kind: placeKind,
      /** What stands there first, then what was lost there, then the rest. */
      crops: z.array(z.object({ crop: z.string(), name: z.string(), standing: z.boolean() })),
      /** Trays standing there, by the farm file. */
      trays: known,
    }),
  ),
  /** The week that can be said to have had no losses, its Monday, and places without an entry in it. */
  quiet: z.object({
    week: calendarDay,
    places: z.array(z.object({ place: z.string(), name: z.string(), said: z.boolean() })),
  }),
});

export const sayQuiet = z.strictObject({
  /** Monday of the week. */
  week: calendarDay,
  /** All growing places without a loss in it, when left out. */
  place: id.optional(),
  /** false takes it back. */
  holds: z.boolean().default(true),
});

export const lossRange = z.object({
  from: calendarDay.optional(),
  to: calendarDay.optional(),
  place: z.string().optional(),
});

export type LossLook = z.infer<typeof lossLook>;
export type LossUnit = z.infer<typeof lossUnit>;
export type EnterLoss = z.infer<typeof enterLoss>;
export type ChangeLoss = z.infer<typeof changeLoss>;
export type Loss = z.infer<typeof loss>;
export type LossEntry = z.infer<typeof lossEntry>;
export type LossHistory = z.infer<typeof lossHistory>;
export type LossOffers = z.infer<typeof lossOffers>;
export type SayQuiet = z.infer<typeof sayQuiet>;
