import { z } from 'zod';
import { time } from './terms.ts';

// The farm's description, looked at and changed as a whole: what a page changes goes back with the
// version it was read in, so that two people never write over one another unseen.

/** A name for one state of the description; `none` before there is any. */
const version = z.string().regex(/^(none|[0-9a-f]{16})$/, 'expected none or 16 hexadecimal digits');

/** As in a farm file, in JSON; held against its schema where it is used. */
const description = z.record(z.string(), z.unknown());

export const farmDescription = z.object({
  version,
  /** Whether it is told where the farm lies: nothing is decided before. */
  settled: z.boolean(),
  /** null: nobody has described the farm yet. */
  description: description.nullable(),
});

export const tryFarm = z.strictObject({ description });
export const changeFarm = z.strictObject({ based: version, description });
export const undoFarm = z.strictObject({ based: version });

export const farmPreview = z.object({
  /** What keeps it from being taken; `field` as `places.0.limit`; `said` is the sentence without it. */
  faults: z.array(z.object({ field: z.string(), sentence: z.string(), said: z.string() })),
  /** What it would change, in words. */
  changes: z.array(z.string()),
  /** Comments of the farm file that would be gone. */
  lost: z.array(z.string()),
});

export const farmChanged = z.object({ version, changes: z.array(z.string()) });

export const farmChange = z.object({
  id: z.number().int(),
  t: time,
  who: z.string(),
  words: z.array(z.string()),
  /** The change it takes back, when it does. */
  undoes: z.number().int().nullable(),
  /** What the one who changed it gave as the reason, as what a trial found. */
  why: z.string().nullable(),
  /** Whether there is a description before it. */
  undoable: z.boolean(),
});
export const farmChangeParam = z.object({ id: z.coerce.number().int().min(1) });

export type FarmDescription = z.infer<typeof farmDescription>;
export type FarmPreview = z.infer<typeof farmPreview>;
export type FarmChanged = z.infer<typeof farmChanged>;
export type FarmChange = z.infer<typeof farmChange>;
