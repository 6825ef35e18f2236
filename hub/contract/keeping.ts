import { z } from 'zod';
import { time } from './terms.ts';

/** How what is kept is looked after: room, age, backups, repairs. */
export const keeping = z.object({
  bytes: z.number(),
  freeBytes: z.number(),
  /** Days that single readings are kept. */
  rawDays: z.number(),
  /** Single readings before this have been let go of; null: none yet. */
  rawFrom: time.nullable(),
  backup: z.object({
    /** Whether a folder was given. */
    wanted: z.boolean(),
    /** When the newest good copy was made. */
    at: time.nullable(),
    /** Why the last attempt failed, in a sentence; null when it did not. */
    fault: z.string().nullable(),
    /** The folder is not there. */
    absent: z.boolean(),
    /** It is on the same card as the store. */
    sameCard: z.boolean(),
    /** The share of a copy that is written now, 0 to 1; what is left then is looking it over. null: none is made. */
    running: z.number().min(0).max(1).nullable(),
  }),
  /** The last repair of a damaged store, in the last 30 days. */
  mended: z
    .object({
      at: time,
      aside: z.string(),
      readings: z.number(),
      /** Tables of which something could not be read. */
      damaged: z.array(z.string()),
      backup: z.string().nullable(),
    })
    .nullable(),
});
export type Keeping = z.infer<typeof keeping>;
