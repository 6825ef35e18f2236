import { z } from 'zod';
import { alarm, probe } from './facts.ts';
import { task } from './task.ts';
import { probeName, quantity, spot, time } from './terms.ts';

// What /api/events sends: `event:` is the key, `data:` the JSON below.

export const events = {
  /** The newest value of a quantity at a place. */
  reading: z.object({
    place: z.string(),
    spot,
    probe: probeName,
    quantity,
    t: time,
    value: z.number(),
  }),
  /** A probe that hangs nowhere yet has spoken: as /api/probes shows it. */
  probe,
  /** The farm's description is another now: who looks at it may ask for it again. */
  farm: z.object({ t: time }),
  task,
  alarm,
  /** Somebody saw an alarm, silenced or changed something: time to ask for /api/alarms again. */
  alarms: z.object({ t: time }),
  /** After each look at all places: time to ask for /api/today again. */
  looked: z.object({ evaluatedAt: time }),
  /** Every 10 seconds of a wall clock, so that silence means a lost link. */
  pulse: z.object({
    now: time,
    speed: z.number(),
    /** Why nothing can be kept now, in words; null while all is well. */
    store: z.string().nullable(),
  }),
};

export type EventName = keyof typeof events;
export type EventData = { [Name in EventName]: z.infer<(typeof events)[Name]> };
