import { z } from 'zod';
import { calendarDay, probeName, time } from './terms.ts';

// The temperature record of a cool room: what was measured, what was not, and what people did about it.

const known = z.number().nullable();
const person = z.string().trim().min(1).max(60);
const temperature = z.number().min(-60).max(80);
const sentence = z.string().trim().min(1).max(500);

export const logRange = z.object({ from: calendarDay.optional(), to: calendarDay.optional() });

export const logDay = z.object({
  day: calendarDay,
  /** These three add up to the hours of the day, or of what has passed of it. */
  aboveHours: z.number(),
  belowHours: z.number(),
  unknownHours: z.number(),
  highest: known,
  lowest: known,
  /** Mean kinetic temperature, °C; null under 90 % known. */
  meanKinetic: known,
  /** Share of the day that is known, 0..1. */
  knownShare: z.number(),
  /** Stretches without readings. */
  gaps: z.array(z.object({ from: time, to: time })),
});

export const correctiveAction = z.object({
  entry: z.number().int(),
  at: time,
  saw: z.string(),
  did: z.string(),
  by: z.string(),
  /** A reading taken in the middle of the produce, °C. */
  core: known,
  /** The entry this one corrects; that one stays in the record. */
  corrects: z.number().int().nullable(),
  /** A later entry corrects this one. */
  corrected: z.boolean(),
  enteredAt: time,
});
export const enterAction = z.strictObject({
  at: time.optional(),
  saw: sentence,
  did: sentence,
  by: person.optional(),
  core: temperature.nullable().optional(),
  corrects: z.number().int().min(1).optional(),
});

export const probeCheck = z.object({
  entry: z.number().int(),
  probe: probeName,
  at: time,
  by: z.string(),
  /** What the probe said, and what was true. */
  points: z.array(z.object({ reading: z.number(), reference: z.number() })),
  /** What it was off by at the first point, °C: reading less reference. */
  offset: z.number(),
  applied: z.boolean(),
  /** What speaks against a two-point check. */
  doubts: z.array(z.enum(['too-near', 'slope'])),
  ageDays: z.number(),
  words: z.string(),
});
const point = z.strictObject({ reading: temperature, reference: temperature.default(0) });
export const enterCheck = z.strictObject({
  at: time.optional(),
  /** One point is melting ice, at 0 °C; a second must be known by another thermometer. */
  points: z.array(point).min(1).max(2),
  by: person.optional(),
  /** Corrects what the probe sends from then on. What is stored stays as it is. */
  apply: z.boolean(),
});

/** One probe of a room and how it stands with its checks. */
export const checkedProbe = z.object({
  probe: probeName,
  spot: z.string(),
  /** What the hub has of it now, with its correction in it. */
  reading: known,
  last: probeCheck.nullable(),
  /** Longer ago than the room's `checkDays` (90 where it tells none), or never. */
  due: z.boolean(),
  words: z.string(),
});

export const coolRoomLog = z.object({
  room: z.string(),
  name: z.string(),
  farm: z.string(),
  from: calendarDay,
  to: calendarDay,
  /** °C */
  limit: z.number(),
  setPoint: z.number(),
  days: z.array(logDay),
  actions: z.array(correctiveAction),
  probes: z.array(checkedProbe),
  checks: z.array(probeCheck),
  /** How a probe is checked. */
  checkHow: z.string(),
  /** What has to be said with it. */
  words: z.array(z.string()),
});

const line = z.object({ t: z.array(z.number()), value: z.array(known) });
const spans = z.array(z.object({ from: z.number(), to: z.number() }));
/** The last day of a room, to be drawn. Times in ms since 1970; a null is a gap. */
export const coolRoomDay = z.object({
  from: z.number(),
  to: z.number(),
  air: line,
  /** null where no probe sits in a crate. */
  product: line.nullable(),
  setPoint: z.number(),
  limit: z.number(),
  /** null where no contact is fitted. */
  doorOpen: spans.nullable(),
  /** null where nobody measures the power. */
  running: spans.nullable(),
  noPower: spans.nullable(),
  /** Each hour's lowest and highest of the air. */
  hours: z.array(z.object({ t: z.number(), low: known, high: known })),
  /** The same facts as text. */
  words: z.string(),
});

export type LogDay = z.infer<typeof logDay>;
export type CoolRoomLog = z.infer<typeof coolRoomLog>;
export type CoolRoomDay = z.infer<typeof coolRoomDay>;
export type CorrectiveAction = z.infer<typeof correctiveAction>;
export type EnterAction = z.infer<typeof enterAction>;
export type ProbeCheck = z.infer<typeof probeCheck>;
export type CheckedProbe = z.infer<typeof checkedProbe>;
export type EnterCheck = z.infer<typeof enterCheck>;
