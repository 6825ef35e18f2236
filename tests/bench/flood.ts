// What a flood costs the others: while one client floods the broker inside, a well-behaved probe
// sends a reading every so often, and the time to its acknowledgement is measured. The hub is a
// process of its own, as it is installed; its memory is read from the system.

import { connect as connectSocket, type Socket } from 'node:net';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { connectAsync, type MqttClient } from 'mqtt';
import { importFarm } from '../../hub/main/farm/farmKept.ts';
import { openStore } from '../../hub/store/index.ts';
import { benchFarm } from './benchFarm.ts';
import { folder } from './history.ts';
import { startProcess } from './hubProcess.ts';
import { figure, middle } from './report.ts';

const FOR_MS = 8000;
const EVERY = 100; // ms between the readings of the other probe

type Flood = (url: string) => Promise<() => Promise<void>>;
const quiet = (client: MqttClient) => client.on('error', () => {});

/** One client that sends as fast as it is let. */
const sender =
  (payload: Buffer, perSecond: number): Flood =>
  async (url) => {
    const client = quiet(await connectAsync(url, { clientId: 'flood' }));
    let on = true;
    const run = (async () => {
      for (let sent = 0, begun = performance.now(); on; sent++) {
        // No more than this in its own memory: what it measures is the hub's.
        const ahead = (sent * 1000) / perSecond - (performance.now() - begun);
        if (ahead > 5) await wait(ahead);
        if (client.stream.writableLength > 4 * 2 ** 20) await wait(5);
        else client.publish('garden/flood/light', payload, { qos: 0 });
      }
    })();
    return async () => {
      on = false;
      await run;
      await client.endAsync(true);
    };
  };

/** Sockets that connect and go no further than `words`. */
const sockets =
  (count: number, words: Buffer): Flood =>
  async (url) => {
    const open: Socket[] = [];
    for (let i = 0; i < count; i++) {
      const socket = connectSocket(Number(new URL(url).port), '127.0.0.1');
      socket.on('error', () => {});
      if (words.length > 0) socket.write(words);
      open.push(socket);
    }
    return async () => {
      for (const socket of open) socket.destroy();
    };
  };

const clients =
  (count: number): Flood =>
  async (url) => {
    const all = await Promise.allSettled(
      Array.from({ length: count }, (_, i) =>
        connectAsync(url, { clientId: `many-${i}`, reconnectPeriod: 0 }, false),
      ),
    );
    const open = all.flatMap((one) => (one.status === 'fulfilled' ? [quiet(one.value)] : []));
    const timer = setInterval(() => {
      for (const client of open)
        if (client.connected) client.publish(`garden/${client.options.clientId}/light`, '1');
    }, 1000);
    return async () => {
      clearInterval(timer);
      for (const client of open) await client.endAsync(true);
    };
  };

const nothing: Flood = async () => async () => {};
const floods: Readonly<Record<string, Flood>> = {
  nothing,
  '1000-a-second': sender(Buffer.from('21'), 1000),
  'as-fast-as-it-can': sender(Buffer.from('21'), 1e9),
  '1-MB-messages': sender(Buffer.alloc(2 ** 20, '1'), 1e9),
  '1000-silent-sockets': sockets(1000, Buffer.alloc(0)),
  '1000-half-connects': sockets(1000, Buffer.from([0x10, 0x20, 0x00, 0x04, 0x4d])),
  '1000-clients': clients(1000),
};

export async function flood() {
  for (const [name, begin] of Object.entries(floods)) {
    const data = join(folder, `flood-${name}`);
    const store = openStore(join(data, 'dewpost.db'));
    importFarm(store, benchFarm(1), 0);
    store.close();
    const hub = await startProcess(data, Date.UTC(2026, 4, 12, 10));
    const probe = quiet(await connectAsync(hub.mqtt, { clientId: 'probe' }));
    const before = hub.rssMB();
    let most = before;
    const end = await begin(hub.mqtt);
    const waits: number[] = [];
    for (const until = performance.now() + FOR_MS; performance.now() < until; await wait(EVERY)) {
      const sent = performance.now();
      await probe.publishAsync('garden/probe/temperature', '20', { qos: 1 });
      waits.push(performance.now() - sent);
      most = Math.max(most, hub.rssMB());
    }
    await end();
    await probe.endAsync(true);
    await hub.stop();
    figure(`flood-${name}-others-wait`, middle(waits), 'ms');
    figure(`flood-${name}-others-wait-longest`, Math.max(...waits), 'ms');
    figure(`flood-${name}-memory-grown`, most - before, 'MB');
  }
}
