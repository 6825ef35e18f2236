import type { Hours, KeptSettings, Weekday } from '../alarms/index.ts';
import {
  type ChangeAlarmSettings,
  type DayHours,
  type ShownAlarmSettings,
  weekday,
} from '../contract/index.ts';
import { newSecret } from '../passwords.ts';

// Settings of alarms between what is kept (minutes of the day, whole addresses) and what is shown.

const HOUR = 60; // min
const two = (n: number) => String(n).padStart(2, '0');
const clockOf = (minute: number) => `${two(Math.floor(minute / HOUR))}:${two(minute % HOUR)}`;
const minuteOf = (text: string) => Number(text.slice(0, 2)) * HOUR + Number(text.slice(3));
const hoursShown = (hours: Hours | null): DayHours =>
  hours && { from: clockOf(hours.from), to: clockOf(hours.to) };
const hoursKept = (hours: DayHours): Hours | null =>
  hours && { from: minuteOf(hours.from), to: minuteOf(hours.to) };

/** What follows the server in an address may be a secret: it is never shown. */
const serverOf = (url: string) => new URL(url).origin;

export function shownSettings(
  kept: KeptSettings,
  has: { readonly mailPassword: boolean; readonly webhookSecret: boolean },
): ShownAlarmSettings {
  const { people, waits, ranks, quiet, most, weeklyTest, address, mail, alive } = kept;
  return {
    waits,
    ranks,
    quiet: hoursShown(quiet),
    most,
    weeklyTest: weeklyTest && {
      weekday: weekday.options[weeklyTest.weekday] ?? 'sunday',
      at: clockOf(weeklyTest.at),
    },
    address,
    people: people.map(({ id, name, email, webhook, hours }) => ({
      id,
      name,
      email,
      webhook: webhook === null ? null : serverOf(webhook),
      hours: { urgent: hoursShown(hours.urgent), today: hoursShown(hours.today) },
    })),
    mail: mail && { ...mail, hasPassword: has.mailPassword },
    hasWebhookSecret: has.webhookSecret,
    alive: alive && { server: serverOf(alive.url), everyMinutes: alive.everyMinutes },
  };
}

/**
 * What is kept after a change. What is left out stays as it was.
 * @throws RangeError in one sentence when what is asked does not go together
 */
export function keptSettings(before: KeptSettings, change: ChangeAlarmSettings): KeptSettings {
  const { people, quiet, weeklyTest, mail, alive, webhookSecret: _, ...plain } = change;
  const waits = plain.waits ?? before.waits;
  if (!(waits.second <= waits.third && waits.third <= waits.everybody))
    throw new RangeError(
      `Expected waits that grow in waits, got ${waits.second}, ${waits.third}, ${waits.everybody}`,
    );
  const next: KeptSettings = {
    ...before,
    ...Object.fromEntries(Object.entries(plain).filter(([, value]) => value !== undefined)),
    ranks: { ...before.ranks, ...plain.ranks },
  };
  return {
    ...next,
    ...(quiet === undefined ? {} : { quiet: hoursKept(quiet) }),
    ...(weeklyTest === undefined
      ? {}
      : {
          weeklyTest: weeklyTest && {
            weekday: weekday.options.indexOf(weeklyTest.weekday) as Weekday,
            at: minuteOf(weeklyTest.at),
          },
        }),
    ...(people === undefined ? {} : { people: keptPeople(before, people) }),
    ...(mail === undefined ? {} : { mail: mail && mailOf(mail) }),
    ...(alive === undefined ? {} : { alive: alive && aliveOf(before, alive) }),
  };
}

function keptPeople(before: KeptSettings, people: NonNullable<ChangeAlarmSettings['people']>) {
  return people.map(({ id, name, email, webhook, hours }) => {
    const known = before.people.find((one) => one.id === id);
    if (id !== undefined && !known)
      throw new RangeError(`Expected the id of somebody who is there in people, got "${id}"`);
    return {
      id: id ?? newSecret(2),
      name,
      email,
      webhook: webhook === undefined ? (known?.webhook ?? null) : webhook,
      hours: { urgent: hoursKept(hours.urgent), today: hoursKept(hours.today) },
    };
  });
}

function mailOf(mail: NonNullable<ChangeAlarmSettings['mail']>) {
  const { password: _, ...kept } = mail;
  return kept;
}

function aliveOf(before: KeptSettings, alive: NonNullable<ChangeAlarmSettings['alive']>) {
  const url = alive.url ?? before.alive?.url;
  if (url === undefined) throw new RangeError('Expected an address in alive.url, got nothing');
  return { url, everyMinutes: alive.everyMinutes };
}
