import { z } from 'zod';
import { probeName, time } from './terms.ts';

// What helps to describe a farm from nothing.

const figure = z.object({ value: z.number(), source: z.string() });

export const starterCrop = z.object({
  id: z.string(),
  base: figure,
  band: z.object({ value: z.tuple([z.number(), z.number()]), source: z.string() }),
  heatLimit: figure,
  chill: figure.optional(),
  /** From sowing to the cut, fewest and most. */
  days: z.object({ value: z.tuple([z.number(), z.number()]), source: z.string() }).optional(),
  /** min, as `minutes` of a crop in the farm file */
  minutes: z.object({ value: z.record(z.string(), z.number()), source: z.string() }).optional(),
  disease: z.array(z.string()),
});

/** Names that a farm file may use, for a page to choose from. */
export const farmChoices = z.object({
  diseases: z.array(z.string()),
  /** Stages with a frost limit of their own, by crop. */
  stages: z.record(z.string(), z.array(z.string())),
  /** Crops of the storage table. */
  keepsLike: z.array(z.string()),
});

export const sunAsked = z.object({
  lat: z.coerce.number().min(-90).max(90),
  lon: z.coerce.number().min(-180).max(180),
});
/** Today's, at a position; null where it does not rise or set. */
export const sunToday = z.object({ rise: time.nullable(), set: time.nullable() });

export const probeParam = z.object({ id: probeName });
/** Shown this once: the hub keeps only a hash. */
export const probeSecret = z.object({ user: z.string(), password: z.string() });

export type StarterCrop = z.infer<typeof starterCrop>;
export type FarmChoices = z.infer<typeof farmChoices>;
export type SunToday = z.infer<typeof sunToday>;
export type ProbeSecret = z.infer<typeof probeSecret>;
