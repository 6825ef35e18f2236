import { createServer, type Socket } from 'node:net';
import { Aedes, type AuthenticateError, type Client } from 'aedes';
import { type Broker, OWN_TOPICS, type Receive } from './types.ts';

export type EmbeddedOptions = {
  readonly host: string;
  readonly port: number;
  readonly receive: Receive;
  /** Whether this client may connect; `password` as sent. */
  readonly mayConnect: (
    user: string | undefined,
    password: Uint8Array | undefined,
  ) => Promise<boolean>;
  /** Whether this signed-in user may publish there. */
  readonly mayPublish: (user: string | null, topic: string) => boolean;
};

const BAD_USER_OR_PASSWORD = 4; // MQTT 3.1.1, table 3.1, connect return codes
const CONNECT_WITHIN = 10_000; // ms; ours: a slow radio takes a few seconds

/** The broker inside the hub. @throws Error when the address is taken. */
export async function startEmbedded(options: EmbeddedOptions): Promise<Broker> {
  const { host, port, receive, mayConnect, mayPublish } = options;
  const aedes = await Aedes.createBroker({ connectTimeout: CONNECT_WITHIN });
  const users = new WeakMap<Client, string>();

  aedes.authenticate = (client, user, password, done) => {
    mayConnect(user ?? undefined, password ?? undefined).then(
      (may) => {
        if (may && user) users.set(client, user);
        const refused = may
          ? null
          : Object.assign(new Error('Expected the name and password of a probe'), {
              returnCode: BAD_USER_OR_PASSWORD,
            });
        done(refused as AuthenticateError | null, may);
      },
      (error: Error) => done(error as AuthenticateError, false),
    );
  };

  // Only here is the acknowledgement of a QoS 1 message still in our hands: aedes sends PUBACK when
  // `done` is called. Everything is caught, because a throw in this hook would end the hub.
  aedes.authorizePublish = (client, packet, done) => {
    try {
      const user = client ? (users.get(client) ?? null) : null;
      if (packet.topic.startsWith('$') || packet.topic.startsWith(OWN_TOPICS)) {
        done(new Error(`Expected a topic of a probe, got ${packet.topic}`));
        return;
      }
      if (!mayPublish(user, packet.topic)) {
        done(new Error(`Expected a topic of ${user ?? 'this probe'}, got ${packet.topic}`));
        return;
      }
      const payload =
        typeof packet.payload === 'string' ? Buffer.from(packet.payload) : packet.payload;
      receive({ topic: packet.topic, payload, again: packet.dup === true }, (error) =>
        done(error ?? null),
      );
    } catch (error) {
      done(error instanceof Error ? error : new Error(String(error)));
    }
  };

  const sockets = new Set<Socket>();
  const server = createServer((socket) => {
    sockets.add(socket);
    socket.on('close', () => sockets.delete(socket));
    aedes.handle(socket);
  });
  await new Promise<void>((resolve, reject) => {
    server.once('error', reject);
    server.listen(port, host, () => resolve());
  });
  const bound = server.address();
  const boundPort = typeof bound === 'object' && bound ? bound.port : port;

  return {
    address: `mqtt://${host}:${boundPort}`,
    connected: () => server.listening,
    listen: () => {},
    publish: (topic, payload, { retain = false } = {}) =>
      new Promise((resolve, reject) => {
        aedes.publish(
          { cmd: 'publish', topic, payload: Buffer.from(payload), qos: 1, retain, dup: false },
          (error) => (error ? reject(error) : resolve()),
        );
      }),
    close: () =>
      new Promise((resolve) => {
        server.close();
        aedes.close(() => {
          for (const socket of sockets) socket.destroy();
          resolve();
        });
      }),
  };
}
