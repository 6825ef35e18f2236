import { z } from 'zod';
import {
  alarmKind,
  calendarDay,
  placeKind,
  probeName,
  quantity,
  spot,
  taskKind,
  time,
} from './terms.ts';
import { ventsNow } from './vents.ts';

// What the hub says about places, nights, rooms and probes. null means unknown, never zero.

const known = z.number().nullable();

/** A local day of the farm's zone, from the canopy probe, else the air probe. */
export const day = z.object({
  day: calendarDay,
  min: known,
  max: known,
  mean: known,
  wetHours: known,
  unknownHours: z.number(),
  /** The longest the leaves had been wet at any moment of the day, counted from the spell's start. */
  longestSpellHours: known,
  /** Above the base of the place's crop (10 °C when none). */
  degreeDays: known,
  /** Fruit incidence of the longest spell, 0..1. */
  botrytisIndex: known,
});

export const nightForecast = z.object({
  place: z.string(),
  spot,
  /** The morning that ends the night. */
  night: calendarDay,
  issuedAt: time,
  low: z.object({ mean: z.number(), sd: z.number(), df: z.number() }),
  pBelow: z.object({ at: z.number(), p: z.number() }),
  crossesAt: time.nullable(),
  nightsLearned: z.number().int(),
  method: z.enum([
    'through-the-night',
    'evening',
    'afternoon',
    'recent-nights',
    'station',
    'wide-default',
  ]),
  /** Limits of what grows there. Missing in forecasts of old. */
  limits: z
    .array(
      z.object({
        what: z.enum(['damage', 'chill']),
        at: z.number(),
        p: z.number(),
        crossesAt: time.nullable(),
      }),
    )
    .optional(),
  /** Pushed forecasts of this night, and what their record at this spot has earned them. */
  sources: z
    .array(
      z.object({
        source: z.string(),
        issuedAt: time,
        /** The low it says, and that with the correction learned here. */
        said: known,
        corrected: known,
        nights: z.number().int(),
        /** Error of the corrected low, and of the forecast learned here, K. */
        error: known,
        ownError: z.number(),
        /** Its share in the forecast, 0..1. */
        weight: z.number(),
      }),
    )
    .optional(),
});

export const spotNow = z.object({
  spot,
  probe: probeName,
  temperature: known,
  humidity: known,
  dewPoint: known,
  /** g/m³ */
  absoluteHumidity: known,
  readAt: time.nullable(),
  /** Too old to decide on. */
  stale: z.boolean(),
});

export const placeNow = z.object({
  id: z.string(),
  name: z.string(),
  kind: placeKind,
  crop: z.string().nullable(),
  asOf: time,
  /** Readings of the spot that speaks for the place: canopy, else air, else what there is. */
  temperature: known,
  humidity: known,
  dewPoint: known,
  absoluteHumidity: known,
  readAt: time.nullable(),
  stale: z.boolean(),
  /** Whether leaves are wet now by the place's humidity rule; null when nobody can say. */
  wet: z.boolean().nullable(),
  wetSince: time.nullable(),
  opened: z.boolean().nullable(),
  /** How the vents stand and who says so; left out where there are none. */
  vents: ventsNow.optional(),
  covered: z.boolean().nullable(),
  spots: z.array(spotNow),
  /** Trays of batches that grow here, by crop, the most first; absent where nobody keeps batches. */
  stands: z
    .array(z.object({ crop: z.string(), name: z.string(), trays: z.number().int() }))
    .optional(),
  /** One sentence. */
  words: z.string(),
});

export const series = z.object({
  level: z.enum(['raw', 'hour', 'day']),
  /** Start of each point, ms since 1970. */
  t: z.array(z.number()),
  mean: z.array(known),
  min: z.array(known),
  max: z.array(known),
});

export const placement = z.object({
  place: z.string(),
  spot,
  from: time,
  to: time.nullable(),
});

/** Messages and readings refused or doubted, by reason. */
const refusedOnes = z.object({
  reason: z.string(),
  words: z.string(),
  count: z.number().int(),
  /** The newest: field, value and what was expected. */
  last: z.string(),
  lastAt: time,
});

/** Messages that no known probe sent, counted over the last 24 hours. */
export const refused = refusedOnes.extend({
  /** The probe's name or the topic, as it was sent. */
  source: z.string(),
});

export const probe = z.object({
  id: probeName,
  /** null while unclaimed. */
  place: z.string().nullable(),
  spot: spot.nullable(),
  everyMinutes: z.number(),
  heardAt: time.nullable(),
  latest: z.array(
    z.object({
      quantity,
      value: z.number(),
      unit: z.string(),
      readAt: time,
      flag: z.string().nullable(),
    }),
  ),
  battery: z.object({ value: z.number(), unit: z.enum(['%', 'V']) }).nullable(),
  offsets: z.partialRecord(quantity, z.number()),
  placements: z.array(placement),
  /** Where it seems to belong, for an unclaimed one, with the reason in words. */
  suggestion: z.object({ place: z.string(), spot, words: z.string() }).nullable(),
  /** Messages and readings refused or doubted in the last 24 hours, by reason. */
  refused: z.array(refusedOnes),
});

export const placeProbe = z.strictObject({
  place: z.string(),
  spot,
  from: time.optional(),
});

export const storeTroubles = z.enum(['full', 'read-only', 'damaged', 'gone', 'failing']);

export const health = z.object({
  /** degraded: it works, and somebody should see to it; failing: it does not work; no-farm: nobody has
   *  told yet what farm it is, or where it lies, so that it keeps readings and decides nothing. */
  status: z.enum(['ok', 'no-farm', 'no-readings', 'late', 'degraded', 'failing']),
  lastReadingAt: time.nullable(),
  evaluatedAt: time.nullable(),
  /** `jumped`: put forward or back; nothing is decided until it stands. */
  clock: z.enum(['ok', 'unset', 'jumped']),
  /** Messages that wait for a time because the clock was not to be believed when they came. */
  held: z.number().int(),
  store: z.object({
    bytes: z.number().nullable(),
    freeBytes: z.number().nullable(),
    /** Why nothing can be kept now; null while all is well. */
    trouble: storeTroubles.nullable(),
  }),
  /** When the newest good backup was made; null: none, or none wanted. */
  backupAt: time.nullable(),
  /** Whether messages about alarms reach people; `off` while nobody is to be told. */
  alarmsOut: z.enum(['ok', 'failing', 'off']),
});

export const alarm = z.object({
  alarm: z.enum(['raised', 'clear']),
  id: z.string(),
  place: z.string(),
  kind: alarmKind,
  since: time,
  words: z.string(),
});

export const alarmEvent = z.object({
  t: time,
  place: z.string(),
  kind: alarmKind,
  event: z.enum(['raised', 'cleared']),
});

export const taskEvent = z.object({
  t: time,
  id: z.string(),
  kind: taskKind,
  place: z.string(),
  event: z.enum(['opened', 'changed', 'lapsed', 'done', 'no', 'later']),
});

export type Day = z.infer<typeof day>;
export type NightForecast = z.infer<typeof nightForecast>;
export type SpotNow = z.infer<typeof spotNow>;
export type PlaceNow = z.infer<typeof placeNow>;
export type Series = z.infer<typeof series>;
export type Probe = z.infer<typeof probe>;
export type RefusedMessages = z.infer<typeof refused>;
export type PlaceProbe = z.infer<typeof placeProbe>;
export type Health = z.infer<typeof health>;
export type Alarm = z.infer<typeof alarm>;
export type AlarmEvent = z.infer<typeof alarmEvent>;
export type TaskEvent = z.infer<typeof taskEvent>;
