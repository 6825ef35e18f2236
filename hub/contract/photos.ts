import { z } from 'zod';

/** The name of a kept photo: the SHA-256 of its bytes, and what kind it is. */
export const photoName = z
  .string()
  .regex(/^[0-9a-f]{64}\.(?:jpg|png|webp)$/, 'expected the name of a photo that was sent');

export const photoKept = z.object({ photo: photoName, bytes: z.number().int() });

export type PhotoKept = z.infer<typeof photoKept>;
