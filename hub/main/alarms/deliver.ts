import type { Logger } from 'pino';
import {
  type Delivery,
  type KeptSettings,
  nextTry,
  type Sent,
  sendEmail,
  sendWebhook,
} from '../../alarms/index.ts';
import type { Clock } from '../../clock.ts';
import { type Composed, composeNews, type NewsParts } from './alarmNews.ts';

export const MAIL_PASSWORD = 'alarm-mail-password';
export const WEBHOOK_SECRET = 'alarm-webhook-secret';
/** Messages on their way at the same time. Ours. */
const AT_ONCE = 4;

export type DeliverParts = NewsParts & {
  readonly clock: Clock;
  readonly log: Logger;
  readonly onChange: () => void;
};

/** Sends what is due, keeps what became of it, and tries again. */
export function makeDeliver(parts: DeliverParts) {
  const { store, clock, log, kept, onChange } = parts;
  const underway = new Map<string, Promise<void>>();
  let over = false;

  const send = async (
    message: Delivery,
    settings: KeptSettings,
    composed: Composed,
  ): Promise<Sent> => {
    const person = settings.people.find(({ id }) => id === message.person);
    const to = message.channel === 'email' ? person?.email : person?.webhook;
    if (to == null) return { outcome: 'refused', words: 'no such address any more' };
    if (message.channel === 'webhook') return post(to, message.id, composed.json);
    const { mail } = settings;
    if (mail === null) return { outcome: 'later', words: 'no mail server is set' };
    const { subject, text, urgent, answers } = composed;
    const password = store.people.secret(MAIL_PASSWORD) ?? null;
    return sendEmail({ ...mail, password }, { id: message.id, to, subject, text, urgent, answers });
  };

  const post = (url: string, id: string, json: unknown) =>
    sendWebhook({
      url,
      id,
      body: JSON.stringify(json),
      secret: store.people.secret(WEBHOOK_SECRET) ?? null,
      sentAt: new Date(clock.now()).toISOString(),
    });

  const attempt = async (message: Delivery) => {
    const tries = message.tries + 1;
    const settings = kept.settings();
    const composed = composeNews(parts, message, clock.now());
    // Written down before it is sent: after a crash it is known that this may be the second copy.
    store.alarmsOut.changeMessage({ ...message, tries });
    const sent = await send(message, settings, composed);
    if (over) return; // the store is closed; at the next start it is sent again under the same name
    store.alarmsOut.changeMessage(after({ ...message, tries }, sent, clock.now()));
    if (sent.outcome !== 'delivered')
      log.warn(
        { message: message.id, tries, words: sent.words },
        'an alarm message did not go out',
      );
    onChange();
  };

  return {
    /** @returns whether anything was sent on its way. */
    due(now: number): boolean {
      let any = false;
      for (const message of store.alarmsOut.due(now) as Delivery[]) {
        if (underway.size >= AT_ONCE) break;
        if (underway.has(message.id)) continue;
        const going = attempt(message)
          .catch((error) => log.error(error, 'an alarm message failed'))
          .finally(() => underway.delete(message.id));
        underway.set(message.id, going);
        any = true;
      }
      return any;
    },
    /** One message now, outside the queue. */
    now: (message: Delivery) =>
      send(message, kept.settings(), composeNews(parts, message, clock.now())),
    post,
    /** Until all that is underway has its answer, but no longer than this. */
    async settled(patience: number) {
      let late: NodeJS.Timeout | undefined;
      const enough = new Promise<void>((resolve) => {
        late = setTimeout(resolve, patience);
      });
      await Promise.race([Promise.all(underway.values()), enough]);
      clearTimeout(late);
    },
    stop() {
      over = true;
    },
  };
}

function after(message: Delivery, { outcome, words }: Sent, now: number): Delivery {
  if (outcome === 'delivered') return { ...message, state: 'delivered', endedAt: now, words };
  const next = outcome === 'refused' ? null : nextTry(message.tries, message.madeAt, now);
  return next === null
    ? { ...message, state: 'refused', endedAt: now, words }
    : { ...message, nextAt: next, words };
}
