import { eventSilentUntil, rankOfEvent } from './eventFacts.ts';
import { type AlarmEvent, eventsOf } from './eventsOf.ts';
import type { AlarmSettings, SeenAlarm, Silence } from './types.ts';

/** For a siren or lamp that understands no JSON: `on` or `off`, retained. */
export const SIREN = 'dewpost/siren';

/** Whether an event sounds: urgent, it stands, nobody has seen it, and it is not silent. */
export const eventSounds = (
  event: AlarmEvent,
  settings: Pick<AlarmSettings, 'ranks'>,
  silences: readonly Silence[],
  now: number,
): boolean =>
  event.standing &&
  event.head.seenAt === null &&
  rankOfEvent(event, settings) === 'urgent' &&
  eventSilentUntil(event, silences, now) === null;

/** Whether anything sounds. */
export const sounds = (
  alarms: readonly SeenAlarm[],
  settings: Pick<AlarmSettings, 'ranks'>,
  silences: readonly Silence[],
  now: number,
): boolean => eventsOf(alarms, now).some((event) => eventSounds(event, settings, silences, now));
