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
  disease: z.array(z.string()),
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
export type SunToday = z.infer<typeof sunToday>;
export type ProbeSecret = z.infer<typeof probeSecret>;
