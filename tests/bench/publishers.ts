// The other end of the wire, in a process of its own so that it does not slow the broker it
// measures: MQTT clients that send readings at QoS 1, each with so many not yet acknowledged.
// Told what to do and answering over the channel of node:child_process.

import { connectAsync, type MqttClient } from 'mqtt';

export type Errand = {
  readonly url: string;
  readonly publishers: number;
  readonly inFlight: number;
  readonly forMs: number;
  /** Time of each publisher's first reading; each one after it is a minute later. */
  readonly from: number;
};
export type Outcome = { readonly acknowledged: number; readonly ms: number };

const MINUTE = 60_000;
const connected = new Map<string, MqttClient[]>();
/** How many minutes each publisher has told at this address. */
const told = new Map<MqttClient, number>();

async function clientsAt(url: string, count: number) {
  const clients = connected.get(url) ?? [];
  connected.set(url, clients);
  while (clients.length < count)
    clients.push(await connectAsync(url, { clientId: `publisher-${clients.length}` }));
  return clients.slice(0, count);
}

async function run({ url, publishers, inFlight, forMs, from }: Errand): Promise<Outcome> {
  const clients = await clientsAt(url, publishers);
  const begin = performance.now();
  let acknowledged = 0;
  const sendOn = async (client: MqttClient, name: string) => {
    while (performance.now() - begin < forMs) {
      const minute = told.get(client) ?? 0;
      told.set(client, minute + 1);
      // A slow wave of 0.1 K steps: nothing for the checks on jumps or stuck values to hold back.
      const v = Math.round(150 + 40 * Math.sin(minute / 90)) / 10;
      const reading = `{"v":${v},"t":"${new Date(from + minute * MINUTE).toISOString()}"}`;
      await client.publishAsync(`garden/${name}/temperature`, reading, { qos: 1 });
      acknowledged++;
    }
  };
  await Promise.all(
    clients.flatMap((client, i) =>
      Array.from({ length: inFlight }, () => sendOn(client, `publisher-${i}`)),
    ),
  );
  return { acknowledged, ms: performance.now() - begin };
}

// Nothing is sent when this file is only read for its types.
if (process.send) {
  process.on('message', (errand: Errand) => {
    run(errand).then(
      (outcome) => process.send?.(outcome),
      (error) => {
        process.stderr.write(`${error}\n`);
        process.exit(1);
      },
    );
  });
  process.on('disconnect', () => process.exit(0));
}
