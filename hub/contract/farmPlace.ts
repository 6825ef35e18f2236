import { z } from 'zod';
import { id, placeKind } from './terms.ts';
import { airing } from './vents.ts';

// A place in the farm file.

export const temperature = z.number().min(-60).max(60);

/** A day of every year, `05-20`. 29 February is no day of every year. */
const dayOfYear = z
  .string()
  .regex(
    /^(?:(?:0[13578]|1[02])-(?:0[1-9]|[12]\d|3[01])|(?:0[469]|11)-(?:0[1-9]|[12]\d|30)|02-(?:0[1-9]|1\d|2[0-8]))$/,
    'expected a month and a day such as 05-20',
  );

const stretch = z
  .string()
  .regex(
    /^([01]\d|2[0-3]):[0-5]\d-(([01]\d|2[0-3]):[0-5]\d|24:00)$/,
    'expected hours such as 06:00-10:00',
  );

export const place = z.strictObject({
  id,
  name: z.string().min(1).max(60),
  kind: placeKind,
  vents: z.boolean().default(false),
  airing: airing.optional(),
  /** Trays it can hold. */
  capacity: z.number().int().min(0).optional(),
  crop: id.optional(),
  /** Trays standing there now. */
  trays: z.number().int().min(0).optional(),
  covers: z.enum(['cloches', 'fleece']).optional(),
  cover: z
    .strictObject({
      minutes: z.number().min(0),
      value: z.number().min(0),
      /** May be left out where the place's crop and stage have a limit of their own. */
      damage: temperature.optional(),
      effect: z.number().gt(0).max(1).default(0.8),
    })
    .optional(),
  /** How far the crop is (open-flower, green-fruit …): its frost limit, where `damage` is not told. */
  stage: id.optional(),
  /** When ripe produce hangs here, each year from and to, and what picking it takes and saves. */
  picking: z
    .strictObject({
      from: dayOfYear,
      to: dayOfYear,
      minutes: z.number().gt(0),
      value: z.number().min(0),
    })
    .optional(),
  /** Watered when its soil probe says less than so many %, and the minutes that takes. */
  water: z
    .strictObject({ below: z.number().min(0).max(100), minutes: z.number().min(0).optional() })
    .optional(),
  wet: z
    .strictObject({
      at: z.number().min(50).max(100),
      below: z.number().min(50).max(100),
      /** Wet leaves for so many hours ask for air; 4 where it is left out. */
      hours: z.number().min(1).max(48).optional(),
    })
    .refine(({ at, below }) => below <= at, { path: ['below'], message: 'expected at most `at`' })
    .optional(),
  setPoint: temperature.optional(),
  limit: temperature.optional(),
  /** m³ */
  volume: z.number().gt(0).optional(),
  /** Money's worth of produce usually inside a cool room. */
  value: z.number().min(0).optional(),
  /** Days after which its probes are to be checked in melting ice again; 90 where it tells none. */
  checkDays: z.number().int().min(7).max(1000).optional(),
  /** What feeds a cool room, when it is not on all day, and what it burns. */
  power: z
    .strictObject({
      /** Local times at which it runs, `06:00-10:00`; nothing told is always. */
      hours: z.array(stretch).min(1).optional(),
      litresPerHour: z.number().gt(0).max(1000).optional(),
      fuel: z.enum(['petrol', 'diesel']).default('petrol'),
      /** Money per litre. */
      litrePrice: z.number().min(0).optional(),
    })
    .optional(),
});
