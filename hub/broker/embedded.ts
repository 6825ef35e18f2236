import { createServer, type Server, type Socket } from 'node:net';
import { createServer as createTlsServer } from 'node:tls';
import { Aedes, type AuthenticateError, type Client } from 'aedes';
import { Gate } from './gate.ts';
import { LIMITS, type Limits } from './limits.ts';
import { type Guest, makeLobby } from './lobby.ts';
import { type Rights, ruleBy } from './ruleBy.ts';
import type { Broker, Receive, Refuse } from './types.ts';

/** `later`: too many tries or too many at once; the same may be right in a while. */
export type Verdict = boolean | 'later';
export type Place = { readonly host: string; readonly port: number };
/** Certificate and key, PEM. */
export type Tls = { readonly cert: string | Buffer; readonly key: string | Buffer };

export type EmbeddedOptions = Place & {
  readonly receive: Receive;
  /** Whether this client may connect; `password` as sent, `address` of its machine. */
  readonly mayConnect: (
    user: string | undefined,
    password: Uint8Array | undefined,
    address: string,
  ) => Promise<Verdict>;
  readonly refuse?: Refuse;
  readonly limits?: Partial<Limits>;
  /** Where it listens with TLS, beside the plain one. */
  readonly secure?: Place & Tls;
} & Pick<Rights, 'mayPublish'> &
  Partial<Rights>;

// MQTT 3.1.1, table 3.1, connect return codes
const IDENTIFIER_REJECTED = 2;
const UNAVAILABLE = 3;
const BAD_USER_OR_PASSWORD = 4;

/** Somebody who does not read is let go before the others have to wait for it. Ours. */
const DRAIN_WITHIN = 2000; // ms
/** QoS 2 messages of one client between its two halves. Ours: probes send one at a time. */
const HALF_DONE = 20;
/** A probe that never pings and lost its power is found out by the network itself. Ours. */
const STILL_THERE = 60_000; // ms

/** Had to make room for somebody else. */
class Left extends Error {}

/** The broker inside the hub. @throws Error when an address is taken, or a certificate is none. */
export async function startEmbedded(options: EmbeddedOptions): Promise<Broker> {
  const { mayConnect, refuse = () => {}, secure } = options;
  const limits = { ...LIMITS, ...options.limits };
  const aedes = await Aedes.createBroker({
    connectTimeout: limits.connectWithin,
    drainTimeout: DRAIN_WITHIN,
    maxInflightInbound: HALF_DONE,
  });
  const users = new WeakMap<Client, string>();
  const guests = new WeakMap<Client, Guest & { readonly gate: Gate }>();
  const lobby = makeLobby(limits);
  /** Who uses a client id: nobody takes it from somebody of another name. */
  const ids = new Map<string, { readonly user: string | null; readonly clients: Set<Client> }>();
  const who = (client: Client) => users.get(client) ?? guests.get(client)?.address ?? 'somebody';

  const claimId = (client: Client, user: string | null): boolean => {
    const claim = ids.get(client.id) ?? { user, clients: new Set() };
    if (claim.user !== user) return false;
    claim.clients.add(client);
    ids.set(client.id, claim);
    return true;
  };

  // Nothing is kept for those who are away: what stands is retained, and a probe has to read
  // nothing. So what a client left behind cannot pile up over the years.
  aedes.preConnect = (client, packet, done) => {
    packet.clean = true;
    const guest = guests.get(client);
    if (guest) lobby.known(guest);
    done(null, true);
  };

  aedes.authenticate = (client, user, password, done) => {
    const guest = guests.get(client);
    const address = guest?.address ?? '';
    const no = (returnCode: number, sentence: string) => {
      refuse(user ?? address, 'sign-in', sentence);
      const error = Object.assign(new Error(sentence), { returnCode });
      told.add(error);
      done(error as AuthenticateError, false);
    };
    mayConnect(user ?? undefined, password ?? undefined, address).then(
      (verdict) => {
        if (client.closed) return;
        if (verdict === 'later')
          return no(UNAVAILABLE, `Expected fewer tries to sign in from ${address}, got another`);
        if (!verdict)
          return no(BAD_USER_OR_PASSWORD, 'Expected the name and password of a probe, got others');
        if (!claimId(client, user ?? null))
          return no(IDENTIFIER_REJECTED, `Expected a client id of its own, got one in use`);
        if (guest && !lobby.entered(guest, user ?? null))
          return no(UNAVAILABLE, `Expected at most ${limits.clients} clients, got another`);
        if (user) users.set(client, user);
        done(null, true);
        guest?.gate.letIn();
      },
      (error: Error) => done(error as AuthenticateError, false),
    );
  };
  const told = ruleBy(aedes, {
    rights: options,
    receive: options.receive,
    refuse,
    filters: limits.filters,
    userOf: (client) => users.get(client) ?? null,
    who,
  });

  const broken = (client: Client, error: Error) => {
    if ('code' in error || error instanceof Left || told.has(error)) return; // a link that was cut
    if (/^(keep alive|drain) timeout$/.test(error.message)) return;
    const { message } = error;
    const sentence = message.startsWith('Expected ') ? message : `Expected MQTT, got: ${message}`;
    refuse(who(client), 'bad-packet', sentence);
  };
  aedes.on('clientError', broken);
  aedes.on('connectionError', broken);

  const sockets = new Set<Socket>();
  const greet = (socket: Socket) => {
    const address = socket.remoteAddress ?? '';
    sockets.add(socket);
    socket.setKeepAlive(true, STILL_THERE);
    const gate = new Gate(socket, limits);
    const guest = { address, gate, leave: () => gate.destroy(new Left('Expected room')) };
    lobby.arrived(guest);
    socket.on('close', () => {
      sockets.delete(socket);
      lobby.left(guest);
    });
    const client = aedes.handle(gate);
    guests.set(client, guest);
    gate.on('close', () => {
      const claim = ids.get(client.id);
      if (claim?.clients.delete(client) && claim.clients.size === 0) ids.delete(client.id);
    });
  };
  const servers: Server[] = [];
  const listen = async (server: Server, { host, port }: Place) => {
    servers.push(server);
    await new Promise<void>((resolve, reject) => {
      server.once('error', reject);
      server.listen(port, host, () => resolve());
    });
    const bound = server.address();
    const name = host.includes(':') ? `[${host}]` : host;
    return `${name}:${typeof bound === 'object' && bound ? bound.port : port}`;
  };
  const close = () =>
    new Promise<void>((resolve) => {
      for (const server of servers) server.close();
      aedes.close(() => {
        for (const socket of sockets) socket.destroy();
        resolve();
      });
    });

  let address: string;
  try {
    address = `mqtt://${await listen(createServer(greet), options)}`;
    if (secure) {
      const server = createTlsServer(
        { cert: secure.cert, key: secure.key, handshakeTimeout: limits.connectWithin },
        greet,
      );
      server.maxConnections = limits.clients + limits.waiting;
      address += ` and mqtts://${await listen(server, secure)}`;
    }
  } catch (error) {
    await close();
    throw error;
  }

  return {
    address,
    connected: () => servers.every(({ listening }) => listening),
    listen: () => {},
    publish: (topic, payload, { retain = false } = {}) =>
      new Promise((resolve, reject) => {
        aedes.publish(
          { cmd: 'publish', topic, payload: Buffer.from(payload), qos: 1, retain, dup: false },
          (error) => (error ? reject(error) : resolve()),
        );
      }),
    close,
  };
}
