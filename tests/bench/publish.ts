// What "acknowledged only when it is on the disk" costs. The same readings go to the hub (embedded
// broker, intake, one commit before the acknowledgement, a real file, synchronous FULL) and to a
// bare aedes broker that keeps nothing; the two take turns within each round. The publishers run in
// one other process: where they are the limit, the ratio is kinder than the truth.

import { fork } from 'node:child_process';
import { once } from 'node:events';
import { createServer } from 'node:net';
import { join } from 'node:path';
import { Aedes } from 'aedes';
import { startEmbedded } from '../../hub/broker/index.ts';
import { wallClock } from '../../hub/clock.ts';
import { joinCore } from '../../hub/main/core.ts';
import { importFarm } from '../../hub/main/farm/farmKept.ts';
import { openStore } from '../../hub/store/index.ts';
import { benchFarm } from './benchFarm.ts';
import { folder, quiet } from './history.ts';
import type { Errand, Outcome } from './publishers.ts';
import { figure, middle } from './report.ts';

const ROUNDS = 5;
const FOR_MS = 500;
const PUBLISHERS = [1, 10, 50];
const IN_FLIGHT = [1, 20];
const LONG_AGO = 360 * 86_400_000; // ms: sent minutes never reach the present

async function bareBroker() {
  const aedes = await Aedes.createBroker();
  const server = createServer(aedes.handle);
  server.listen(0, '127.0.0.1');
  await once(server, 'listening');
  const { port } = server.address() as { port: number };
  const close = () => {
    server.close();
    aedes.close();
  };
  return { url: `mqtt://127.0.0.1:${port}`, close };
}

async function hubBroker() {
  const store = openStore(join(folder, 'publish.db'));
  importFarm(store, benchFarm(1), 0);
  const core = joinCore({ store, clock: wallClock, log: quiet });
  const broker = await startEmbedded({
    host: '127.0.0.1',
    port: 0,
    receive: (message, acknowledge) =>
      core.intake.receive({ ...message, receivedAt: wallClock.now() }, acknowledge),
    mayConnect: async () => true,
    mayPublish: () => true,
    limits: { perSecond: 1e6, atOnce: 1e6 }, // what a client may take is not the question here
  });
  const kept = () =>
    store.probes
      .all()
      .map(({ id }) => store.readings.between(id, 'temperature', 0, wallClock.now()).length)
      .reduce((sum, count) => sum + count, 0);
  const close = async () => {
    await broker.close();
    core.close();
  };
  return { url: broker.address, kept, close };
}

export async function publish() {
  const [bare, hub] = [await bareBroker(), await hubBroker()];
  const child = fork(new URL('./publishers.js', import.meta.url));
  const from = wallClock.now() - LONG_AGO;
  const ended = once(child, 'exit').then(() => {
    throw new Error('Expected publishers that go on, got an end');
  });
  const send = async (url: string, publishers: number, inFlight: number): Promise<Outcome> => {
    const errand: Errand = { url, publishers, inFlight, forMs: FOR_MS, from };
    child.send(errand);
    const [outcome] = (await Promise.race([once(child, 'message'), ended])) as [Outcome];
    return outcome;
  };
  // Connects all of them, and lets the compiler see both ways once.
  await send(bare.url, 50, 1);
  let { acknowledged } = await send(hub.url, 50, 1);
  for (const publishers of PUBLISHERS)
    for (const inFlight of IN_FLIGHT) {
      const ratios: number[] = [];
      const rates = { bare: [] as number[], hub: [] as number[] };
      for (let round = 0; round < ROUNDS; round++) {
        const rate = { bare: 0, hub: 0 };
        for (const who of round % 2 === 0
          ? (['bare', 'hub'] as const)
          : (['hub', 'bare'] as const)) {
          const outcome = await send(who === 'hub' ? hub.url : bare.url, publishers, inFlight);
          if (who === 'hub') acknowledged += outcome.acknowledged;
          rate[who] = (1000 * outcome.acknowledged) / outcome.ms;
          rates[who].push(rate[who]);
        }
        ratios.push(rate.hub / rate.bare);
      }
      const name = `publish-${publishers}-by-${inFlight}`;
      figure(name, middle(ratios), 'x');
      figure(`${name}-hub`, middle(rates.hub), 'messages/s');
      figure(`${name}-bare`, middle(rates.bare), 'messages/s');
    }
  const kept = hub.kept();
  if (kept !== acknowledged)
    throw new Error(`Expected ${acknowledged} readings kept, as acknowledged, got ${kept}`);
  ended.catch(() => {}); // from here on it may end
  child.disconnect();
  bare.close();
  await hub.close();
}
