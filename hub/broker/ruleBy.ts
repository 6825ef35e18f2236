import type { Aedes, Client } from 'aedes';
import { standsInFor } from './gate.ts';
import { OWN_TOPICS, type Receive, type Refuse } from './types.ts';

/** Who may say and hear what; `user` is null where nobody signs in. */
export type Rights = {
  readonly mayPublish: (user: string | null, topic: string) => boolean;
  /** A whole topic filter, with its wildcards. */
  readonly maySubscribe: (user: string | null, filter: string) => boolean;
};

export type Rules = {
  readonly rights: Pick<Rights, 'mayPublish'> & Partial<Rights>;
  readonly receive: Receive;
  readonly refuse: Refuse;
  /** Topic filters of one client. */
  readonly filters: number;
  readonly userOf: (client: Client) => string | null;
  /** For the record: a name, or else an address. */
  readonly who: (client: Client) => string;
};

const LONGEST_FILTER = 512; // characters, ours

/**
 * Puts publishing and reading on a broker under these rules; last wills are no exception.
 *
 * @returns the errors made here, which have been told already.
 */
export function ruleBy(aedes: Aedes, rules: Rules): WeakSet<Error> {
  const told = new WeakSet<Error>();
  const { rights, receive, refuse, filters, userOf, who } = rules;
  const { mayPublish, maySubscribe = () => true } = rights;
  const mayHear = (user: string | null, filter: string) =>
    !filter.startsWith('$') && maySubscribe(user, filter);

  // Only here is the acknowledgement of a QoS 1 message still in our hands: aedes sends PUBACK when
  // `done` is called. Everything is caught, because a throw in this hook would end the hub.
  aedes.authorizePublish = (client, packet, done) => {
    try {
      const { topic } = packet;
      const user = client ? userOf(client) : null;
      const source = client ? who(client) : 'somebody';
      const no = (expected: string) => {
        const sentence = `Expected ${expected}, got ${topic.slice(0, 200)}`;
        refuse(source, 'not-allowed', sentence);
        const error = new Error(sentence);
        told.add(error);
        done(error);
      };
      if (topic.startsWith('$') || topic.startsWith(OWN_TOPICS)) return no('a topic of a probe');
      if (!mayPublish(user, topic)) return no(`a topic of ${user ?? 'this probe'}`);
      // Nobody but the hub leaves anything behind: else invented topics would fill its memory.
      packet.retain = false;
      const payload =
        typeof packet.payload === 'string' ? Buffer.from(packet.payload) : packet.payload;
      const length = standsInFor(payload);
      if (length !== null) {
        packet.payload = Buffer.alloc(0);
        const probe = /^garden\/([^/]+)/.exec(topic)?.[1];
        const from = user ?? probe ?? topic.slice(0, 128);
        refuse(
          from,
          'too-long',
          `Expected a shorter message on ${topic.slice(0, 200)}, got ${length} bytes`,
        );
        return done(null);
      }
      receive({ topic, payload, again: packet.dup === true, from: user }, (error) =>
        done(error ?? null),
      );
    } catch (error) {
      done(error instanceof Error ? error : new Error(String(error)));
    }
  };

  aedes.authorizeSubscribe = (client, subscription, done) => {
    try {
      const { topic } = subscription;
      const user = client ? userOf(client) : null;
      const had = Object.keys((client as unknown as Subscribed | null)?.subscriptions ?? {}).length;
      if (topic.length <= LONGEST_FILTER && had < filters && mayHear(user, topic))
        return done(null, subscription);
      refuse(
        client ? who(client) : 'somebody',
        'not-allowed',
        `Expected up to ${filters} topics it may read, got ${topic.slice(0, 200)}`,
      );
      done(null, null); // 128 in the answer: a failure (MQTT 3.1.1, section 3.9.3)
    } catch {
      done(null, null);
    }
  };

  // A filter is looked at when it is asked for; this is the last look, at the topic itself.
  aedes.authorizeForward = (client, packet) =>
    mayHear(userOf(client), packet.topic) ? packet : null;
  return told;
}

/** What aedes knows of a client's filters; not in its types. */
type Subscribed = { readonly subscriptions: Readonly<Record<string, unknown>> };
