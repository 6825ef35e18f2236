import { boundRate } from './boundRate.ts';
import { eventSilentUntil, rankOfEvent } from './eventFacts.ts';
import { type AlarmEvent, eventsOf } from './eventsOf.ts';
import { channelsOf, mayTell } from './hours.ts';
import { planTroubles } from './planTroubles.ts';
import type { AlarmSettings, Delivery, Matter, Person, SeenAlarm, Silence } from './types.ts';
import { wakeOrder } from './wakeOrder.ts';

const MINUTE = 60_000; // ms
/** An end is told when it has lasted: what comes and goes is not over. Ours. */
const OVER_AFTER = 5 * MINUTE;
/** "It is over" is no news to anybody after this. Ours. */
const OVER_WITHIN = 6 * 60 * MINUTE;

export type ToldState = {
  /** All that stand, all that nobody has seen, and those of the last two days. */
  readonly alarms: readonly SeenAlarm[];
  readonly settings: AlarmSettings;
  readonly silences: readonly Silence[];
  /** What was made for these alarms, and all that was made in the last day. */
  readonly deliveries: readonly Delivery[];
  /** Minute of the farm's day, 0 to 1439. */
  readonly minute: number;
};
export type DeliveryPlan = {
  readonly add: readonly Delivery[];
  readonly end: readonly {
    readonly id: string;
    readonly state: 'dropped' | 'summarised';
    readonly words: string;
  }[];
};

/** What is made for one event, person and channel has this name: made once, whatever is planned. */
export const deliveryId = (what: Matter, event: AlarmEvent, person: string, channel: string) =>
  [what, event.head.id, event.head.since.toString(36), person, channel].join('|');

/**
 * Whom to tell what, and what need not be told any more. Planning again after carrying it out gives
 * nothing. One person is woken, then the next, at the end everybody. Nobody is told outside their
 * hours, except of an urgent alarm that nobody in hours could be told of or answered.
 */
export function planDeliveries(state: ToldState, now: number): DeliveryPlan {
  const { alarms, settings, silences, deliveries, minute } = state;
  const events = eventsOf(alarms, now);
  const made = new Map(deliveries.map((one) => [one.id, one]));
  const wanted: Delivery[] = [];
  const end: DeliveryPlan['end'][number][] = [];
  const want = (what: 'raised' | 'over', event: AlarmEvent, person: Person) => {
    for (const channel of channelsOf(person)) {
      const id = deliveryId(what, event, person.id, channel);
      if (made.has(id)) continue;
      const { id: alarm, since } = event.head;
      const times = { madeAt: now, nextAt: now, tries: 0, endedAt: null };
      const about = { id, what, alarm, since, person: person.id, channel };
      wanted.push({ ...about, ...times, state: 'waiting', words: '' });
    }
  };

  for (const event of events) {
    const { head, standing, clearedAt } = event;
    const rank = rankOfEvent(event, settings);
    const mine = deliveries.filter(
      ({ what, alarm, since }) => what === 'raised' && alarm === head.id && since === head.since,
    );
    const seen = head.seenAt !== null;
    const silent = eventSilentUntil(event, silences, now) !== null;
    if (rank !== 'note' && standing && !seen && !silent) {
      const people =
        rank === 'urgent'
          ? wakeOrder(settings, mine, minute, now)
          : firstOf(settings, mine, minute);
      for (const person of people) want('raised', event, person);
    }
    for (const { id, state: is, tries } of mine) {
      if (is !== 'waiting') continue;
      if (seen) end.push({ id, state: 'dropped', words: `seen by ${head.seenBy ?? ''}` });
      else if (clearedAt !== null && (tries === 0 || now - clearedAt > OVER_WITHIN))
        end.push({ id, state: 'dropped', words: 'over' });
    }
    if (rank === 'urgent' && clearedAt !== null && endsNow(clearedAt, event, events, now))
      for (const person of settings.people)
        if (mine.some((one) => one.person === person.id && toldBefore(one, clearedAt)))
          want('over', event, person);
  }
  // What is dropped now fails no more: without it, planning again would find other ways.
  const ended = new Set(end.map(({ id }) => id));
  const going = deliveries.filter(({ id }) => !ended.has(id));
  const troubles = planTroubles(settings, going, minute, now);
  return boundRate(settings, deliveries, [...wanted, ...troubles], end, minute, now);
}

const toldBefore = ({ state, endedAt }: Delivery, clearedAt: number) =>
  state === 'delivered' && endedAt !== null && endedAt < clearedAt;

function endsNow(clearedAt: number, event: AlarmEvent, events: readonly AlarmEvent[], now: number) {
  const { place, kind } = event.head;
  const stands = events.some(
    ({ head, standing }) => standing && head.place === place && head.kind === kind,
  );
  return !stands && now - clearedAt >= OVER_AFTER && now - clearedAt <= OVER_WITHIN;
}

/** Told in waking hours, to one person, once: the first who can be reached. */
function firstOf(settings: AlarmSettings, mine: readonly Delivery[], minute: number): Person[] {
  const failed = (id: string) => {
    const told = mine.filter(({ person }) => person === id);
    return told.length > 0 && told.every(({ state }) => state === 'refused');
  };
  const told = mine.some(({ person }) => !failed(person));
  if (told) return [];
  const next = settings.people.find(
    (person) =>
      channelsOf(person).length > 0 &&
      !failed(person.id) &&
      mayTell(person, 'today', settings, minute),
  );
  return next ? [next] : [];
}
