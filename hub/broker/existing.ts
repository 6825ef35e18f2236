import { connect } from 'mqtt';
import { type Broker, HEARTBEAT, OWN_TOPICS, type Receive } from './types.ts';

export type ExistingOptions = {
  /** `mqtt://[user:password@]host[:port]` or `mqtts://…` */
  readonly url: string;
  /** Topic filters to read. */
  readonly filters: readonly string[];
  /** Stays the same from start to start, so that the broker keeps what came while the hub was away. */
  readonly clientId: string;
  readonly receive: Receive;
  /** Certificate authority (PEM) for `mqtts://`, where the machine does not know it. */
  readonly ca?: string | Buffer;
  /** Name of a group of hubs: the broker gives each message to one hub of it. */
  readonly share?: string;
  /** At every connection, the first too: time to say again what stands retained. */
  readonly onConnect: () => void;
};

const REFUSED = 0x80; // MQTT 3.1.1, section 3.9.3: SUBACK return code for a failure

/** A hub that starts before its broker does not give up: it waits this long, then goes on trying. */
const FIRST_ANSWER_WITHIN = 5000; // ms, ours

/** A broker that is away is asked again after this long, then after twice as long, up to the last. */
const AGAIN_AFTER = 1000; // ms, ours
const AGAIN_AT_MOST = 30_000; // ms, ours
/** So that hubs of one group do not all come back in the same moment. */
const SCATTER = 0.2;

/** A broker the farm already has. When it is away, now or later, the hub keeps asking for it. */
export async function connectExisting(options: ExistingOptions): Promise<Broker> {
  const { url, filters, clientId, receive, onConnect, ca, share } = options;
  const client = connect(url, {
    clientId,
    clean: false, // messages sent while the hub was down are waiting
    reconnectPeriod: AGAIN_AFTER,
    ...(ca === undefined ? {} : { ca }),
    connectTimeout: 10_000,
    resubscribe: false, // done below, at every connection
    will: { topic: HEARTBEAT, payload: Buffer.from('{"gone":true}'), qos: 1, retain: true },
    manualConnect: true, // waiting messages come with the connection: first be ready for them
  });

  // mqtt.js sends PUBACK when the callback is called: after the commit, as with the broker inside.
  client.handleMessage = (packet, acknowledge) => {
    if (packet.topic.startsWith(OWN_TOPICS)) {
      acknowledge();
      return;
    }
    const payload =
      typeof packet.payload === 'string' ? Buffer.from(packet.payload) : packet.payload;
    receive({ topic: packet.topic, payload, again: packet.dup === true, from: null }, (error) => {
      acknowledge(error ?? undefined);
      // Not kept, so not acknowledged: a broker sends such a message again on the next connection.
      if (error) client.stream.destroy();
    });
  };
  client.on('error', () => {}); // it reconnects by itself; `connected` tells how it stands
  let pause = AGAIN_AFTER;
  // Before mqtt.js sets its timer for the next try, which it does when the link has closed.
  client.prependListener('close', () => {
    client.options.reconnectPeriod = Math.round(pause * (1 + SCATTER * Math.random()));
    pause = Math.min(2 * pause, AGAIN_AT_MOST);
  });
  let wanted = filters;
  // Shared subscriptions are of MQTT 5 (section 4.8.2); brokers give them to 3.1.1 clients, too.
  const shared = (filter: string) => (share === undefined ? filter : `$share/${share}/${filter}`);
  /** Why the broker does not let the hub read; null while it does. */
  let refused: string | null = null;
  const subscribe = (done: () => void = () => {}) =>
    client.subscribe(wanted.map(shared), { qos: 1 }, (error, granted) => {
      const denied = (granted ?? []).filter(({ qos }) => qos >= REFUSED).map(({ topic }) => topic);
      refused = error?.message ?? (denied.length > 0 ? denied.join(', ') : null);
      done();
    });
  const subscribed = new Promise<void>((resolve) => {
    client.on('connect', () => {
      pause = AGAIN_AFTER;
      subscribe(resolve);
      onConnect();
    });
  });
  client.connect();
  let timer: NodeJS.Timeout | undefined;
  const patience = new Promise<void>((resolve) => {
    timer = setTimeout(resolve, FIRST_ANSWER_WITHIN);
  });
  await Promise.race([subscribed, patience]);
  clearTimeout(timer);

  return {
    address: withoutPassword(url),
    connected: () => client.connected && refused === null,
    listen(next) {
      wanted = next;
      if (client.connected) subscribe();
    },
    publish: async (topic, payload, { retain = false } = {}) => {
      if (!client.connected) return; // said again at the next connection, not piled up until then
      await client.publishAsync(topic, payload, { qos: 1, retain });
    },
    close: async () => {
      // A will is sent only for those who vanish; who leaves says so.
      if (client.connected)
        await client.publishAsync(HEARTBEAT, '{"gone":true}', { qos: 1, retain: true });
      await client.endAsync(!client.connected);
    },
  };
}

function withoutPassword(url: string) {
  try {
    const parsed = new URL(url);
    parsed.password = '';
    parsed.username = '';
    return parsed.toString();
  } catch {
    return 'the address given';
  }
}
