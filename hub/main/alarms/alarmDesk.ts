import {
  channelsOf,
  type Delivery,
  fails,
  type SeenAlarm,
  type Sent,
  type Silence,
} from '../../alarms/index.ts';
import type { AlarmDesk, AlarmSecrets, Trouble } from '../../api/index.ts';
import { newSecret } from '../../passwords.ts';
import type { MessageRow } from '../../store/index.ts';
import type { AlarmsKept } from './alarmsKept.ts';
import type { AlarmsOutParts } from './alarmsOut.ts';
import { MAIL_PASSWORD, type makeDeliver, WEBHOOK_SECRET } from './deliver.ts';

const DAY = 86_400_000; // ms

export type DeskParts = AlarmsOutParts & {
  readonly kept: AlarmsKept;
  readonly deliver: ReturnType<typeof makeDeliver>;
  readonly alive: { readonly trouble: () => Trouble | null };
  readonly changed: () => void;
  readonly work: () => void;
};
/** Somebody waits before the page, which waits 20 s. Ours. */
const TEST_WITHIN = 18_000; // ms
const SECRETS = { mailPassword: MAIL_PASSWORD, webhookSecret: WEBHOOK_SECRET } as const;

/** What people do about alarms: seen, silent, settings, tests. Each is in the journal with who. */
export function makeAlarmDesk(parts: DeskParts): AlarmDesk {
  const { store, clock, kept, deliver, alive, changed, work } = parts;
  const people = () => store.people; // another one after mending
  const out = () => store.alarmsOut;
  const note = (who: string, what: string, body: unknown, place: string | null = null) =>
    store.journal.add({ t: clock.now(), who, what, place, subject: null, body });
  const done = () => {
    changed();
    work();
  };
  const message = (id: string, person: string, channel: Delivery['channel']): Delivery => {
    const now = clock.now();
    const times = { madeAt: now, nextAt: now, tries: 0, endedAt: null };
    const about = { id, what: 'test', alarm: null, since: null, person, channel } as const;
    return { ...about, ...times, state: 'waiting', words: '' };
  };

  const see: AlarmDesk['see'] = (id, was, who) => {
    const now = clock.now();
    if (out().test(id)) {
      out().seeTest(id, who, now);
      note(who, 'alarm-test', { id, event: 'seen' });
      done();
      return true;
    }
    const alarm: SeenAlarm | undefined = out().newest(id);
    if (!alarm) return false;
    const isIt = (one: SeenAlarm) => one.id === id && one.since === alarm.since;
    const event = kept
      .state(now)
      .events.find(({ head, folded }) => isIt(head) || folded.some(isIt));
    store.transaction(() => {
      // Whoever saw one of an event is awake to all of it; what it was is said of this one only.
      const all = event ? [event.head, ...event.folded] : [alarm];
      for (const one of all) out().putSeen(one.id, one.since, who, now, isIt(one) ? was : null);
      note(who, 'alarm', { id, event: 'seen', ...(was === null ? {} : { was }) }, alarm.place);
    });
    done();
    return true;
  };

  return {
    now: () => kept.state(clock.now()),
    between: (from, to) => kept.between(from, to, clock.now()),
    settings: kept.settings,
    hasSecret: (name) => people().secret(SECRETS[name]) !== undefined,
    see,
    change(settings, secrets: AlarmSecrets, who) {
      store.transaction(() => {
        kept.putSettings(settings);
        for (const name of ['mailPassword', 'webhookSecret'] as const) {
          const secret = secrets[name];
          if (secret === null) people().dropSecret(SECRETS[name]);
          else if (secret !== undefined) people().putSecret(SECRETS[name], secret);
        }
        // Who may be woken is written down; addresses and secrets are nobody else's business.
        const names = settings.people.map(({ name }) => name);
        note(who, 'alarm-settings', { people: names });
        out().hurry(clock.now());
      });
      done();
    },
    silence(asked) {
      const silence: Silence = { ...asked, id: newSecret(2), from: clock.now() };
      store.transaction(() => {
        kept.putSilence(silence);
        note(silence.who, 'silence', { ...silence, event: 'begun' }, silence.place);
      });
      done();
      return silence;
    },
    endSilence(id, who) {
      const now = clock.now();
      const silence = kept.silences(now).find((one) => one.id === id);
      if (!silence) return false;
      store.transaction(() => {
        kept.putSilence({ ...silence, until: now });
        note(who, 'silence', { id, event: 'ended' }, silence.place);
      });
      done();
      return true;
    },
    async test(person, channel, who) {
      const to = kept.settings().people.find(({ id }) => id === person);
      if (!to || !channelsOf(to).includes(channel)) return undefined;
      const id = `test|${person}|${channel}|${newSecret(2)}`;
      const test = message(id, person, channel);
      const sent = await withinTime(deliver.now(test));
      const state = sent.outcome === 'delivered' ? 'delivered' : 'refused';
      const endedAt = clock.now();
      out().addMessage({ ...test, state, endedAt, tries: 1, words: sent.words } as MessageRow);
      note(who, 'alarm-test', { to: to.name, channel, outcome: sent.outcome });
      changed();
      return sent;
    },
    rehearse(who) {
      const id = `test~${newSecret(2)}`;
      store.transaction(() => {
        out().addTest(id, clock.now(), who);
        for (const person of kept.settings().people)
          for (const channel of channelsOf(person))
            out().addMessage(message(`${id}|${person.id}|${channel}`, person.id, channel));
        note(who, 'alarm-test', { id, event: 'made' });
      });
      changed();
      if (who !== 'hub') work();
    },
    troubles() {
      const now = clock.now();
      const { settings, messages } = kept.state(now);
      const newest = new Map<string, Trouble | null>();
      for (const one of [...messages].sort((a, b) => a.madeAt - b.madeAt)) {
        const way = `${one.person}|${one.channel}`;
        const person = settings.people.find(({ id }) => id === one.person);
        if (!person || !channelsOf(person).includes(one.channel)) continue;
        if (one.state === 'delivered') newest.set(way, null);
        else if (
          now - one.madeAt < DAY &&
          (fails(one) || (one.words !== '' && one.state === 'waiting'))
        )
          newest.set(way, {
            person: person.name,
            channel: one.channel,
            since: newest.get(way)?.since ?? one.madeAt,
            words: one.words,
          });
      }
      const own = alive.trouble();
      return [...[...newest.values()].filter((one) => one !== null), ...(own ? [own] : [])];
    },
  };
}

async function withinTime(sending: Promise<Sent>): Promise<Sent> {
  let late: NodeJS.Timeout | undefined;
  const tooLong = new Promise<Sent>((resolve) => {
    const words = `no end within ${TEST_WITHIN / 1000} s`;
    late = setTimeout(() => resolve({ outcome: 'later', words }), TEST_WITHIN);
  });
  return Promise.race([sending, tooLong]).finally(() => clearTimeout(late));
}
