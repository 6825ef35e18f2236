import {
  type AlarmEvent,
  type Delivery,
  eventSilentUntil,
  eventSounds,
  rankOfEvent,
  type Silence,
} from '../alarms/index.ts';
import type { AlarmKind, AlarmMessage, ShownAlarm, ShownSilence } from '../contract/index.ts';
import type { AlarmTestRow } from '../store/index.ts';
import { screens } from '../words/index.ts';
import type { AlarmState } from './alarmDesk.ts';
import type { ApiParts } from './parts.ts';
import { iso, isoOrNull, nameOf } from './present.ts';

// From what the hub keeps of alarms (ms, ids of people) to what the contract says (ISO 8601, names).

const shownMessage = (one: Delivery, { settings }: AlarmState): AlarmMessage => ({
  person: settings.people.find(({ id }) => id === one.person)?.name ?? one.person,
  channel: one.channel,
  what: one.what,
  state: one.state,
  madeAt: iso(one.madeAt),
  endedAt: isoOrNull(one.endedAt),
  tries: one.tries,
  words: one.words,
});

const stateOf = ({ standing, head }: AlarmEvent): ShownAlarm['state'] =>
  standing
    ? head.seenAt === null
      ? 'active-unacknowledged'
      : 'active-acknowledged'
    : head.seenAt === null
      ? 'cleared-unacknowledged'
      : 'over';

export function shownAlarm(
  parts: ApiParts,
  event: AlarmEvent,
  state: AlarmState,
  now: number,
): ShownAlarm {
  const { head, folded, clearedAt, count } = event;
  const silent = eventSilentUntil(event, state.silences, now);
  return {
    id: head.id,
    place: head.place,
    placeName: nameOf(parts, head.place),
    kind: head.kind as AlarmKind,
    rank: rankOfEvent(event, state.settings),
    state: stateOf(event),
    words: head.words,
    since: iso(head.since),
    clearedAt: isoOrNull(clearedAt),
    count,
    folded: folded
      .filter(({ kind, id }) => kind !== head.kind && id !== head.id)
      .map(({ id, kind, words }) => ({ id, kind: kind as AlarmKind, words })),
    seenBy: head.seenBy,
    seenAt: isoOrNull(head.seenAt),
    was: head.was,
    silentUntil: isoOrNull(silent),
    sounds: eventSounds(event, state.settings, state.silences, now),
    told: state.messages
      .filter(({ alarm, since }) => alarm === head.id && since === head.since)
      .map((one) => shownMessage(one, state)),
  };
}

/** How long a test sounds and waits for its answer. Ours. */
const TEST_FOR = 3_600_000; // ms

export function shownTest(test: AlarmTestRow, state: AlarmState, now: number): ShownAlarm {
  const { id, at, seenBy, seenAt } = test;
  const waits = seenAt === null && now - at < TEST_FOR;
  return {
    id,
    place: '',
    placeName: '',
    kind: 'test',
    rank: 'urgent',
    state: waits ? 'active-unacknowledged' : seenAt === null ? 'cleared-unacknowledged' : 'over',
    words: screens.alarms.testWords,
    since: iso(at),
    clearedAt: waits ? null : iso(seenAt ?? at + TEST_FOR),
    count: 1,
    folded: [],
    seenBy,
    seenAt: isoOrNull(seenAt),
    was: null,
    silentUntil: null,
    sounds: waits,
    told: state.messages
      .filter((one) => one.id.startsWith(`${id}|`))
      .map((one) => shownMessage(one, state)),
  };
}

export const shownSilence = (parts: ApiParts, silence: Silence): ShownSilence => ({
  ...silence,
  placeName: silence.place === null ? null : nameOf(parts, silence.place),
  kind: silence.kind as AlarmKind | null,
  from: iso(silence.from),
  until: iso(silence.until),
});
