import { z } from 'zod';
import { time } from './terms.ts';

// Vents of a place: how they stand, what somebody says of them, and what is usual.

/** How a place's vents stand: as somebody said within a day, or as is usual by the farm file. */
export const ventsNow = z.object({
  state: z.enum(['open', 'shut']).nullable(),
  by: z.enum(['said', 'usual']).nullable(),
  since: time.nullable(),
  /** Somebody said that they stay open tonight. */
  staysOpen: z.boolean(),
  /** The newest entry can be taken back. */
  mayUndo: z.boolean(),
});

/** "I opened it", "I closed it"; `at` up to a day back, now where it is left out. */
export const tellVents = z.strictObject({ state: z.enum(['open', 'shut']), at: time.optional() });

const clockTime = z
  .string()
  .regex(/^([01]\d|2[0-3]):[0-5]\d$/, 'expected a time of day such as 08:30');

/** When somebody usually opens the vents and shuts them, each day; an hour before sunset where left out. */
export const airing = z
  .strictObject({ opens: clockTime, shuts: clockTime.optional() })
  .refine(({ opens, shuts }) => shuts === undefined || opens < shuts, {
    path: ['shuts'],
    message: 'expected a time after `opens`',
  });
