import { z } from 'zod';
import { alarmKind, time } from './terms.ts';

// Alarms on their way to people: what stands, who is told, what is silent, what became of it.

export const alarmRank = z.enum(['urgent', 'today', 'note']);
export const alarmChannel = z.enum(['email', 'webhook']);
export const alarmWas = z.enum(['right', 'false']);
/** What is shown of a silence's or a log line's kind; `test` is an alarm that somebody or the clock made. */
export const shownKind = z.union([alarmKind, z.literal('test')]);

/** Tellings of one alarm: to whom, by what, when, and what became of it. */
export const alarmMessage = z.object({
  person: z.string(),
  channel: alarmChannel,
  what: z.enum(['raised', 'over', 'summary', 'trouble', 'test']),
  state: z.enum(['waiting', 'held', 'delivered', 'refused', 'dropped', 'summarised']),
  madeAt: time,
  endedAt: time.nullable(),
  tries: z.number().int(),
  /** What the other side said last. */
  words: z.string(),
});

export const shownAlarm = z.object({
  id: z.string(),
  place: z.string(),
  placeName: z.string(),
  kind: shownKind,
  rank: alarmRank,
  /** As in ISA-18.2: one that cleared before anybody saw it stays until somebody does. */
  state: z.enum(['active-unacknowledged', 'active-acknowledged', 'cleared-unacknowledged', 'over']),
  words: z.string(),
  since: time,
  clearedAt: time.nullable(),
  /** How often it came. */
  count: z.number().int(),
  /** What was folded into it. */
  folded: z.array(z.object({ id: z.string(), kind: alarmKind, words: z.string() })),
  seenBy: z.string().nullable(),
  seenAt: time.nullable(),
  was: alarmWas.nullable(),
  silentUntil: time.nullable(),
  /** To be heard on an open page now. */
  sounds: z.boolean(),
  told: z.array(alarmMessage),
});

export const shownSilence = z.object({
  id: z.string(),
  place: z.string().nullable(),
  placeName: z.string().nullable(),
  kind: alarmKind.nullable(),
  reason: z.string(),
  work: z.boolean(),
  who: z.string(),
  from: time,
  until: time,
});

/** A way to a person that does not work. */
export const alarmTrouble = z.object({
  person: z.string(),
  channel: z.union([alarmChannel, z.literal('alive')]),
  since: time,
  words: z.string(),
});

export const alarmsNow = z.object({
  asOf: time,
  alarms: z.array(shownAlarm),
  silences: z.array(shownSilence),
  troubles: z.array(alarmTrouble),
  /** False while nobody is to be told on any channel. */
  anybody: z.boolean(),
});

export const seeAlarm = z.strictObject({ was: alarmWas.optional() });

export const makeSilence = z.strictObject({
  place: z.string().max(64).nullable().default(null),
  kind: alarmKind.nullable().default(null),
  minutes: z.number().int().min(1).max(720),
  reason: z.string().trim().min(3).max(200),
  /** Planned work: produce over its limit and frost are still told. */
  work: z.boolean().default(false),
});

const clockTime = z.string().regex(/^([01]\d|2[0-3]):[0-5]\d$/, 'expected a time such as 06:30');
/** From one time of the farm's day to another; the same twice is all day. null: never. */
export const dayHours = z.strictObject({ from: clockTime, to: clockTime }).nullable();
const hours = z.strictObject({ urgent: dayHours, today: dayHours });
const webAddress = z.url({ protocol: /^https?$/ }).max(500);
const weekdays = [
  'sunday',
  'monday',
  'tuesday',
  'wednesday',
  'thursday',
  'friday',
  'saturday',
] as const;
export const weekday = z.enum(weekdays);

const waits = z.strictObject({
  second: z.number().int().min(1).max(120),
  third: z.number().int().min(1).max(240),
  everybody: z.number().int().min(1).max(480),
});
const mail = z.strictObject({
  host: z.string().regex(/^[A-Za-z0-9.:-]{1,253}$/, 'expected the name of a mail server'),
  port: z.number().int().min(1).max(65535),
  security: z.enum(['tls', 'starttls', 'none']),
  user: z.string().min(1).max(200).nullable(),
  from: z.email(),
  certificate: z
    .string()
    .max(20_000)
    .regex(/^\s*-----BEGIN CERTIFICATE-----/, 'expected a certificate in PEM')
    .nullable(),
});
const general = {
  waits,
  ranks: z.partialRecord(alarmKind, alarmRank),
  quiet: dayHours,
  most: z.number().int().min(2).max(60),
  weeklyTest: z.strictObject({ weekday, at: clockTime }).nullable(),
  /** Where the pages are, for links in messages. */
  address: webAddress.nullable(),
};
const everyMinutes = z.number().int().min(1).max(1440);

/** What is set. Passwords and addresses of webhooks are taken and never given back whole. */
export const alarmSettings = z.object({
  ...general,
  people: z.array(
    z.object({
      id: z.string(),
      name: z.string(),
      email: z.string().nullable(),
      /** Its server only. */
      webhook: z.string().nullable(),
      hours,
    }),
  ),
  mail: mail.extend({ hasPassword: z.boolean() }).nullable(),
  hasWebhookSecret: z.boolean(),
  alive: z.object({ server: z.string(), everyMinutes }).nullable(),
});

/** What is to be set. What is left out stays as it is; null takes it away. */
export const changeAlarmSettings = z
  .strictObject({
    ...general,
    people: z
      .array(
        z.strictObject({
          /** Of one who is there; left out for a new one. */
          id: z.string().max(40).optional(),
          name: z.string().trim().min(1).max(60),
          email: z.email().max(200).nullable(),
          webhook: webAddress.nullable().optional(),
          hours,
        }),
      )
      .max(20),
    mail: mail.extend({ password: z.string().max(500).nullable().optional() }).nullable(),
    webhookSecret: z.string().min(16).max(200).nullable(),
    alive: z.strictObject({ url: webAddress.optional(), everyMinutes }).nullable(),
  })
  .partial();

export const testChannel = z.strictObject({ person: z.string().max(40), channel: alarmChannel });
export const tested = z.object({
  outcome: z.enum(['delivered', 'later', 'refused']),
  words: z.string(),
});

export const alarmCount = z.object({
  month: z.string(),
  kind: alarmKind,
  raised: z.number().int(),
  seen: z.number().int(),
  minutesToSeen: z.number().nullable(),
  answered: z.number().int(),
  falseOnes: z.number().int(),
  falseShare: z.object({ share: z.number(), low: z.number(), high: z.number() }).nullable(),
});

export const alarmLog = z.object({
  entries: z.array(shownAlarm),
  counts: z.array(alarmCount),
});

export type AlarmRank = z.infer<typeof alarmRank>;
export type AlarmChannel = z.infer<typeof alarmChannel>;
export type AlarmMessage = z.infer<typeof alarmMessage>;
export type ShownAlarm = z.infer<typeof shownAlarm>;
export type ShownSilence = z.infer<typeof shownSilence>;
export type AlarmTrouble = z.infer<typeof alarmTrouble>;
export type AlarmsNow = z.infer<typeof alarmsNow>;
export type MakeSilence = z.input<typeof makeSilence>;
export type DayHours = z.infer<typeof dayHours>;
export type ShownAlarmSettings = z.infer<typeof alarmSettings>;
export type ChangeAlarmSettings = z.infer<typeof changeAlarmSettings>;
export type Tested = z.infer<typeof tested>;
export type AlarmCount = z.infer<typeof alarmCount>;
export type AlarmLog = z.infer<typeof alarmLog>;
