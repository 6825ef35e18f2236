import { z } from 'zod';
import { place, temperature } from './farmPlace.ts';
import { id, lotClass, probeName, quantity, spot } from './terms.ts';
import { units } from './units.ts';

// The farm file: one YAML document (see the README). Unknown fields are refused, so that a
// misspelt one is not silently without effect.

const farmFacts = z.strictObject({
  name: z.string().min(1).max(80),
  zone: z.string().min(1),
  lat: z.number().min(-90).max(90),
  lon: z.number().min(-180).max(180),
  altitude: z.number().min(-430).max(6000).default(0),
  money: z.string().regex(/^[A-Z]{3}$/, 'expected a three-letter currency code (ISO 4217)'),
  /** Money per hour of work. */
  wage: z.number().min(0),
  /** The language it speaks, by its code (BCP 47): `en` where nobody told. */
  language: z.string().min(2).max(20).optional(),
  /** What people read and type; °C, kg, 24 and monday where nobody told. All else stays in °C and kg. */
  units: units.optional(),
});

const every = z.string().regex(/^[1-9]\d{0,4}(s|m|h)$/, 'expected a time such as 30s, 5m or 1h');

const probe = z.strictObject({
  id: probeName,
  place: id,
  spot,
  every: every.default('5m'),
  /** A bare bead among the leaves, without a roof: it cools as they do. */
  bare: z.boolean().default(false),
  offset: z.partialRecord(quantity, z.number()).default({}),
});

const produceTemperature = z.number().min(0).max(35);
const keptDays = z.number().gt(0).max(3650);
/** How a crop keeps once it is harvested; what is left out comes from the storage table. */
const keeps = z.strictObject({
  /** A crop of the storage table that it keeps like. */
  like: id.optional(),
  /** Days it keeps, or the least and the most, at the temperature `at`. */
  days: z.union([keptDays, z.tuple([keptDays, keptDays])]).optional(),
  at: produceTemperature.default(0),
  /** How many times faster it ages 10 °C warmer. */
  q10: z.number().min(1).max(10).optional(),
  freezes: temperature.optional(),
  /** Hurt by cold below this while it is stored. */
  chill: temperature.optional(),
  class: lotClass.optional(),
});

const growingDays = z.number().int().min(1).max(400);
const workMinutes = z.number().min(0).max(1000);

const crop = z.strictObject({
  id,
  name: z.string().min(1).max(60).optional(),
  /** °C from which heat units count; 10 where neither the grower nor the table of bases tells. */
  base: temperature.optional(),
  band: z.tuple([temperature, temperature]).optional(),
  heatLimit: temperature.optional(),
  chill: temperature.optional(),
  disease: z.array(id).default([]),
  /** Money per kg. */
  price: z.number().min(0).optional(),
  /** kg */
  perTray: z.number().min(0).optional(),
  keeps: keeps.optional(),
  /** Days from sowing to the cut, or the least and the most, as the grower knows them: until its own
   *  batches tell. */
  days: z.union([growingDays, z.tuple([growingDays, growingDays])]).optional(),
  /** Seed for a tray, money. */
  seed: z.number().min(0).optional(),
  /** Medium, wear of the tray and packing for a tray, money. */
  other: z.number().min(0).optional(),
  /** Work, where nobody writes it down batch by batch. */
  minutes: z
    .strictObject({
      /** Sowing a tray. */
      sow: workMinutes.optional(),
      /** Watering and looking after a tray for a week. */
      tend: workMinutes.optional(),
      /** Cutting a tray. */
      cut: workMinutes.optional(),
      /** Washing and packing a kilogram. */
      pack: workMinutes.optional(),
      /** Carrying a tray to another place. */
      move: workMinutes.optional(),
    })
    .optional(),
  /** Cut young instead. */
  young: z
    .strictObject({
      days: z.union([growingDays, z.tuple([growingDays, growingDays])]).optional(),
      /** kg */
      perTray: z.number().min(0).optional(),
      /** Money per kg. */
      price: z.number().min(0).optional(),
    })
    .optional(),
  /** Grows again after a cut. */
  regrows: z.boolean().default(false),
});

/** A mix that is sold as one: shares by weight, which make one whole. */
const mix = z
  .strictObject({
    id,
    name: z.string().min(1).max(60).optional(),
    /** Money per kg. */
    price: z.number().min(0).optional(),
    parts: z.array(z.strictObject({ crop: id, share: z.number().gt(0).max(1) })).min(1),
  })
  .refine(({ parts }) => Math.abs(parts.reduce((sum, { share }) => sum + share, 0) - 1) <= 0.02, {
    path: ['parts'],
    message: 'expected shares that make one whole',
  });

const pointer = z.string().regex(/^(?:\/(?:[^~/]|~[01])*)*$/, 'expected a JSON pointer (RFC 6901)');

/** Readings in JSON of any shape: where in the message each field stands. */
const mapping = z.strictObject({
  /** Topic filter; `+probe` stands for the level that names the probe. */
  topic: z.string().min(1),
  /** Pointer to the probe's name, where the topic does not hold it. */
  probe: pointer.optional(),
  /** Who may publish there for the probes named, such as a gateway's own name; else each for itself. */
  sender: z.string().min(1).optional(),
  /** Pointer to the time: ISO 8601 text, or seconds or milliseconds since 1970. */
  time: pointer.optional(),
  fields: z.array(z.strictObject({ quantity, pointer, unit: z.string().optional() })).min(1),
});

const weekday = z.enum([
  'monday',
  'tuesday',
  'wednesday',
  'thursday',
  'friday',
  'saturday',
  'sunday',
]);

export const farmFile = z.strictObject({
  farm: farmFacts,
  /** None yet is a farm that is being described. */
  places: z.array(place),
  probes: z.array(probe).default([]),
  crops: z.array(crop).default([]),
  mixes: z.array(mix).default([]),
  deliveries: z
    .array(
      z.strictObject({
        day: weekday,
        /** Weights wanted on that day of every week, of a crop or a mix. */
        wants: z.array(z.strictObject({ of: id, kg: z.number().gt(0).max(100_000) })).default([]),
      }),
    )
    .default([]),
  mappings: z.array(mapping).default([]),
});

/** A farm that is being described: it has a name, and may not know yet where it lies. */
export const farmBegun = farmFile.extend({
  farm: farmFacts.partial({ zone: true, lat: true, lon: true }),
});

export type FarmFile = z.infer<typeof farmFile>;
export type FarmBegun = z.infer<typeof farmBegun>;
export type FarmPlace = z.infer<typeof place>;
export type FarmProbe = z.infer<typeof probe>;
export type FarmCrop = z.infer<typeof crop>;
export type FarmMix = z.infer<typeof mix>;
export type Mapping = z.infer<typeof mapping>;
