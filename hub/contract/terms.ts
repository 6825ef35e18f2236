import { z } from 'zod';

// The names that probes, files and screens share. One list each, so that a schema, a menu and a
// message form can't disagree.

export const quantities = [
  'temperature',
  'humidity',
  'soil-moisture',
  'soil-temperature',
  'leaf-wetness',
  'light',
  'rain',
  'wind',
  'power',
  'energy',
  'door',
  'battery',
] as const;
export const quantity = z.enum(quantities);

export const placeKinds = ['tunnel', 'patch', 'outdoor', 'cool-room'] as const;
export const placeKind = z.enum(placeKinds);

export const spots = ['canopy', 'air', 'under-cover', 'product', 'grass', 'unit'] as const;
export const spot = z.enum(spots);

export const taskKinds = [
  'open-up',
  'close-up',
  'shade',
  'move-trays',
  'cover',
  'uncover',
  'pick-now',
  'cut-back',
  'water',
  'shut-door',
  'see-to-unit',
  'run-generator',
  'move-produce',
  'sell-first',
  'throw-out',
  'sow',
  'harvest',
  'see-to-probe',
] as const;
export const taskKind = z.enum(taskKinds);

export const alarmKinds = ['warm', 'door', 'unit', 'power', 'probe', 'frost', 'store'] as const;
export const alarmKind = z.enum(alarmKinds);

/** What food rules tell apart: whole produce, cut or bagged leaves, sprouts. */
export const lotClasses = ['whole', 'cut', 'sprouts'] as const;
export const lotClass = z.enum(lotClasses);

/** Short names in farm files and addresses: small letters, digits and hyphens. */
export const id = z
  .string()
  .regex(/^[a-z0-9](?:[a-z0-9-]{0,62}[a-z0-9])?$/, 'expected small letters, digits and hyphens');

/** What a probe calls itself on the wire (the name characters of RFC 8428, section 4.5.1, no `/`). */
export const probeName = z
  .string()
  .regex(
    /^[A-Za-z0-9][A-Za-z0-9\-:._]{0,127}$/,
    'expected letters, digits, - : . _ after a letter or digit',
  );

/** ISO 8601 with zone. */
export const time = z.iso.datetime({ offset: true });
/** A calendar day of the farm's zone. */
export const calendarDay = z.iso.date().refine(
  // Far from the ends of what a calendar can count to: the week before year 0 has no such name.
  (day) => day >= '1000-01-01' && day < '9000-01-01',
  'expected a day between 1000-01-01 and 8999-12-31',
);

/** The unit readings of a quantity are kept and shown in. A battery may tell its share or its voltage. */
export const keptUnit: Readonly<Record<Quantity | 'battery-voltage', string>> = {
  temperature: '°C',
  'soil-temperature': '°C',
  humidity: '%',
  'soil-moisture': '%',
  'leaf-wetness': '%',
  light: 'lx',
  rain: 'mm',
  wind: 'm/s',
  power: 'W',
  energy: 'kWh',
  door: '',
  battery: '%',
  'battery-voltage': 'V',
};

/** The `:id` of an address. */
export const idParam = z.object({ id: z.string().min(1).max(300) });

export type Quantity = z.infer<typeof quantity>;
export type PlaceKind = z.infer<typeof placeKind>;
export type Spot = z.infer<typeof spot>;
export type TaskKind = z.infer<typeof taskKind>;
export type AlarmKind = z.infer<typeof alarmKind>;
export type LotClass = z.infer<typeof lotClass>;
