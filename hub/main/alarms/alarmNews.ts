import { type AlarmEvent, type Delivery, eventsOf, rankOfEvent, told } from '../../alarms/index.ts';
import type { Calendar } from '../../clock.ts';
import type { Farm } from '../../farm/index.ts';
import type { Store } from '../../store/index.ts';
import type { Tasks } from '../../tasks/index.ts';
import { type AlarmNews, alarmMessage, alarmTroubleWords, taskWords } from '../../words/index.ts';
import type { AlarmsKept } from './alarmsKept.ts';

const DAY = 86_400_000; // ms

export type NewsParts = {
  readonly store: Store;
  readonly kept: AlarmsKept;
  readonly tasks: Tasks;
  readonly farm: () => Farm;
  readonly calendar: () => Calendar;
};

/** One message as it is sent: in words, and as JSON for a webhook. */
export type Composed = {
  readonly subject: string;
  readonly text: string;
  readonly urgent: boolean;
  readonly json: Readonly<Record<string, unknown>>;
  /** The message that this one ends. */
  readonly answers: string | null;
};

/** Puts a message into words at the moment it is sent, so that times left and ends are true. */
export function composeNews(parts: NewsParts, message: Delivery, now: number): Composed {
  const { store, kept, tasks, farm } = parts;
  const state = kept.state(now);
  const { settings } = state;
  const nameOf = (id: string) => settings.people.find((one) => one.id === id)?.name ?? id;
  const eventFor = (events: readonly AlarmEvent[]) =>
    events.find(({ head }) => head.id === message.alarm && head.since === message.since);
  const since = message.since ?? now;
  const event =
    message.alarm === null
      ? undefined
      : (eventFor(state.events) ??
        eventFor(eventsOf(store.alarmsOut.between(since, now + 1), now)));
  const head = event?.head;
  const task = head ? tasks.get(head.id) : undefined;
  const place = head ? (farm().place(head.place)?.name ?? head.place) : '';
  const clearedAt = event?.clearedAt ?? null;
  const what = message.what === 'raised' && clearedAt !== null ? 'over' : message.what;
  const urgent = event ? rankOfEvent(event, settings) === 'urgent' : false;
  const others = new Map<string, number>();
  for (const one of state.messages)
    if (head && one.alarm === head.id && one.since === head.since && one.state === 'delivered')
      if (one.person !== message.person && one.what === 'raised')
        others.set(one.person, Math.min(others.get(one.person) ?? now, one.endedAt ?? now));
  const held =
    what === 'summary'
      ? store.alarmsOut
          .summed(message.person, message.channel, message.madeAt)
          .map(({ alarm }) => (alarm === null ? '' : (store.alarmsOut.newest(alarm)?.words ?? '')))
          .filter((words) => words !== '')
      : [];
  const news: AlarmNews = {
    what,
    urgent,
    farm: farm().file.farm.name,
    zone: parts.calendar().zone,
    now,
    words: what === 'trouble' ? troubleWords() : (head?.words ?? ''),
    place,
    since: head?.since ?? null,
    clearedAt,
    seenBy: head?.seenBy ?? null,
    putOffUntil: task?.until ?? null,
    count: event?.count ?? 1,
    folded: (event?.folded ?? []).filter((one) => one.id !== head?.id).map(({ words }) => words),
    doBy: task?.doBy ?? null,
    minutes: task?.minutes ?? null,
    caution: task ? taskWords(task, place).caution : null,
    others: [...others].map(([id, at]) => ({ name: nameOf(id), at })),
    held,
    link: settings.address === null ? null : `${settings.address.replace(/\/+$/, '')}/alarms`,
  };
  const { subject, text } = alarmMessage(news);
  const raised = message.id.replace(/^over\|/, 'raised|');
  return {
    subject,
    text,
    urgent: urgent && what === 'raised',
    json: {
      schema: 'dewpost-alarm/1',
      message: message.id,
      what,
      farm: news.farm,
      to: nameOf(message.person),
      subject,
      text,
      rank: event ? rankOfEvent(event, settings) : null,
      alarm: head ? { ...told({ ...head, clearedAt }), placeName: place } : null,
      doBy: task?.doBy == null ? null : new Date(task.doBy).toISOString(),
      alsoTold: news.others.map(({ name, at }) => ({ name, at: new Date(at).toISOString() })),
      link: news.link,
    },
    answers: raised === message.id ? null : raised,
  };

  /** Which way does not work, by the name of the message: `trouble|PERSON|CHANNEL|DAY`. */
  function troubleWords(): string {
    const [, person = '', channel = ''] = message.id.split('|');
    const last = store.alarmsOut
      .messages(now - DAY)
      .filter((one) => one.person === person && one.channel === channel && one.words !== '')
      .at(-1);
    return alarmTroubleWords(nameOf(person), channel, last?.words ?? '');
  }
}
