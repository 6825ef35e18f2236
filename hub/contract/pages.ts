import { z } from 'zod';
import { coolRoom } from './coolRoom.ts';
import { nightForecast, placeNow } from './facts.ts';
import { who } from './people.ts';
import { task } from './task.ts';
import { placeKind, spot, time } from './terms.ts';
import { units } from './units.ts';

// Answers made for a page: everything it shows, in one request.

export const farmFacts = z.object({
  name: z.string(),
  zone: z.string(),
  money: z.string(),
  lat: z.number(),
  lon: z.number(),
  /** False until a grower has told where the farm lies: nothing is decided before. */
  settled: z.boolean(),
  /** True for the invented demonstration farm. */
  invented: z.boolean(),
  /** How people read: a language by its code, and what the farm file tells of units. */
  language: z.string(),
  units,
  /** The hub's clock, and how many times faster than a wall clock it runs (1 but in a demonstration). */
  now: time,
  speed: z.number(),
});

export const today = z.object({
  asOf: time,
  sentence: z.string(),
  tasks: z.array(task),
  places: z.array(placeNow),
  frost: z.array(nightForecast),
  coolRooms: z.array(coolRoom),
});

/** What a page asks for as it opens, in one answer; of the farm nothing for somebody who is not signed in. */
export const first = z.object({
  who,
  farm: farmFacts.nullable(),
  today: today.nullable(),
});

const points = z.array(z.number().nullable());

/** One place on the shared time axis. Times in ms since 1970. */
export const strip = z.object({
  place: z.string(),
  name: z.string(),
  kind: placeKind,
  spot: spot.nullable(),
  /** Measured; a null is a gap and is drawn as one. */
  t: z.array(z.number()),
  temperature: points,
  humidity: points,
  wetSpells: z.array(z.object({ from: z.number(), to: z.number(), wetHours: z.number() })),
  /** Temperatures that matter here, to be drawn as lines. */
  limits: z.array(
    z.object({
      value: z.number(),
      what: z.enum(['damage', 'chill', 'heat', 'cool-room-limit', 'set-point']),
    }),
  ),
  fan: z.array(z.object({ t: z.number(), low: z.number(), middle: z.number(), high: z.number() })),
  pins: z.array(z.object({ task: z.string(), t: z.number(), title: z.string() })),
  /** The same facts as text. */
  words: z.string(),
});

export const strips = z.object({
  from: z.number(),
  to: z.number(),
  now: z.number(),
  nights: z.array(z.object({ from: z.number(), to: z.number() })),
  /** One temperature scale for all tunnels and patches, so that heights compare. */
  scale: z.object({ min: z.number(), max: z.number() }),
  strips: z.array(strip),
});

/** Every refusal: which field, what it held, what was expected, in one sentence. */
export const refusal = z.object({ error: z.string() });

export type FarmFacts = z.infer<typeof farmFacts>;
export type First = z.infer<typeof first>;
export type Today = z.infer<typeof today>;
export type Strip = z.infer<typeof strip>;
export type Strips = z.infer<typeof strips>;
