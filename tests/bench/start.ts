// How soon the hub answers after a power cut, what memory it takes on a small computer, and how
// much it writes to the card. The real process on a store of five years. Then an hour of messages
// of 60 probes, each a SenML pack of temperature and humidity a minute: 15 minutes of it one message
// after another, as probes send that know nothing of each other, then 45 minutes with all 60 at once.
// Thirty of the probes have the history, thirty are hung newly; written bytes are those of the
// process (not of the file system's journal, nor inside the card).

import { copyFileSync, mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { connectAsync } from 'mqtt';
import { importFarm } from '../../hub/main/farm/farmKept.ts';
import { openStore } from '../../hub/store/index.ts';
import { benchFarm, probeId, QUANTITIES, valueAt } from './benchFarm.ts';
import { END, folder, historyFile } from './history.ts';
import { startProcess } from './hubProcess.ts';
import { figure, middle } from './report.ts';

const PROBES = 60;
const MINUTE = 60_000;
const ONE_BY_ONE = 15; // minutes
const STARTS = 5;

const pack = (probe: number, t: number) =>
  JSON.stringify([
    { bt: t / 1000, n: 'temperature', u: 'Cel', v: valueAt(probe, 'temperature', t) },
    { n: 'humidity', u: '%RH', v: valueAt(probe, 'humidity', t) },
  ]);

export async function start() {
  const data = join(folder, 'start');
  mkdirSync(data);
  copyFileSync(historyFile('5-years'), join(data, 'dewpost.db'));
  const store = openStore(join(data, 'dewpost.db'));
  importFarm(store, benchFarm(PROBES, '1m'), END);
  store.close();
  const now = END + 60 * MINUTE; // the hour that is sent has just passed

  const first = await startProcess(data, now);
  figure('start-5-years-first', first.startMs, 'ms');
  await first.stop();
  const times: number[] = [];
  for (let i = 1; i < STARTS; i++) {
    const hub = await startProcess(data, now);
    times.push(hub.startMs);
    await hub.stop();
  }
  const hub = await startProcess(data, now);
  times.push(hub.startMs);
  figure('start-5-years', middle(times), 'ms');
  await new Promise((resolve) => setTimeout(resolve, 1000));
  figure('memory-after-start', hub.rssMB(), 'MB');

  const clients = await Promise.all(
    Array.from({ length: PROBES }, (_, i) => connectAsync(hub.mqtt, { clientId: probeId(i) })),
  );
  const send = (probe: number, t: number) =>
    clients[probe]?.publishAsync(`garden/${probeId(probe)}`, pack(probe, t), { qos: 1 });
  const perReading = (bytes: number, minutes: number) =>
    bytes / (minutes * PROBES * QUANTITIES.length);

  let before = hub.written();
  for (let minute = 0; minute < ONE_BY_ONE; minute++)
    for (let probe = 0; probe < PROBES; probe++)
      await send(probe, END + minute * MINUTE + probe * 1000);
  figure(
    'bytes-written-one-by-one',
    perReading(hub.written() - before, ONE_BY_ONE),
    'bytes/reading',
  );
  before = hub.written();
  for (let minute = ONE_BY_ONE; minute < 60; minute++)
    await Promise.all(clients.map((_, probe) => send(probe, END + minute * MINUTE + probe * 1000)));
  figure(
    'bytes-written-together',
    perReading(hub.written() - before, 60 - ONE_BY_ONE),
    'bytes/reading',
  );
  figure('memory-after-an-hour', hub.rssMB(), 'MB');
  await Promise.all(clients.map((client) => client.endAsync(true)));
  await hub.stop();
}
