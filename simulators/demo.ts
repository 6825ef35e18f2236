import { existsSync, writeFileSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { demoBatches } from './demoBatches.ts';
import { freshDemoFolder } from './demoFolder.ts';
import { demoLosses, enterDemoLosses } from './demoLosses.ts';
import { enterDemoLots } from './demoLots.ts';
import { enterDemoPicks } from './demoPicks.ts';
import { type Address, addressText, freePort, readAddress } from './freePort.ts';
import { runHub, startHub } from './hubProcess.ts';
import { startLiveProbes } from './liveProbes.ts';
import { readNumber, readOptions, runCommand } from './options.ts';
import { scenario } from './scenario.ts';
import { clockText, createSimulatedClock } from './simulatedClock.ts';
import { fruitCounts, madeUpStation, writeStation } from './stationHistory.ts';
import { createWorld } from './world.ts';
import { writeHistory } from './writeHistory.ts';

// npm run demo [-- --speed 60 --http 127.0.0.1:8470 --mqtt 127.0.0.1:1893 --days N --data DIR]

const MINUTE = 60_000;
const DAY = 24 * 60 * MINUTE;
const say = (sentence: string) => process.stdout.write(`${sentence}\n`);

/** From simulators/ in the source or dist/simulators/ when built, up to package.json. */
function packageRoot(): string {
  let folder = dirname(fileURLToPath(import.meta.url));
  while (!existsSync(join(folder, 'package.json')) && folder !== dirname(folder)) {
    folder = dirname(folder);
  }
  return folder;
}

async function choosePort(name: string, wanted: Address, taken: readonly number[] = []) {
  const address = await freePort(wanted, taken);
  if (address.port !== wanted.port) {
    say(`${name} port ${wanted.port} is busy; using ${address.port} instead.`);
  }
  return address;
}

/** Thirty years of a made-up weather station nearby, what the made-up grower counted, and a year of batches. */
async function importRecords(
  hub: string,
  folder: string,
  taken: readonly string[],
  signal: AbortSignal,
): Promise<void> {
  say('Making up thirty years of a weather station nearby …');
  const { name, lat, lon, altitude } = madeUpStation;
  const station = join(folder, 'station.csv');
  writeStation(scenario, { years: 30, to: scenario.start }, station);
  const about = [`--lat=${lat}`, `--lon=${lon}`, `--altitude=${altitude}`, '--station', name];
  await runHub(hub, ['import', ...taken, ...about, station], signal);
  const fruit = join(folder, 'fruit.csv');
  writeFileSync(fruit, fruitCounts);
  await runHub(hub, ['import', ...taken, fruit], signal);
  const trays = join(folder, 'batches.csv');
  writeFileSync(trays, demoBatches(scenario));
  await runHub(hub, ['import', ...taken, trays], signal);
}

async function demo(abort: AbortController): Promise<void> {
  const names = ['speed', 'http', 'mqtt', 'days', 'data'] as const;
  const given = readOptions(names, process.argv.slice(2));
  const speed = readNumber('speed', given.speed ?? '1', 1, 600);
  const wantedHttp = readAddress('http', given.http ?? '127.0.0.1:8470');
  const wantedMqtt = readAddress('mqtt', given.mqtt ?? '127.0.0.1:1893');
  const { start, historyFrom, seed } = scenario;
  const most = Math.floor((start - historyFrom) / DAY);
  const from = given.days ? start - readNumber('days', given.days, 1, most) * DAY : historyFrom;
  const folder = resolve(given.data ?? '.demo');
  const root = packageRoot();
  const hub = join(root, 'dist', 'hub', 'dewpost.js');
  const farm = join(root, 'simulators', 'farm.yaml');
  const missing = [hub, farm].find((file) => !existsSync(file));
  if (missing) throw new Error(`Expected a built hub, got no ${missing}: run npm run build first`);

  const http = await choosePort('HTTP', wantedHttp);
  const mqtt = await choosePort('MQTT', wantedMqtt, [http.port]);
  freshDemoFolder(folder);
  say('Making up a season of readings for the demonstration farm …');
  const file = join(folder, 'history.ndjson');
  const lines = writeHistory(scenario, { from, to: start, seed }, file);
  say(`Importing ${lines.toLocaleString('en')} readings …`);
  const then = clockText({ start, real: Date.now(), speed: 1 });
  const taken = ['--data', folder, '--farm', farm, '--clock', then];
  await runHub(hub, ['import', ...taken, file], abort.signal);
  await importRecords(hub, folder, taken, abort.signal);

  // Made before the clock starts: at 600 times, a second of stepping is ten minutes of silence.
  const world = createWorld(scenario.plan, seed);
  const logged = demoLosses(scenario, world);
  world.advanceTo(start - MINUTE);
  const clock = createSimulatedClock(start, Date.now(), speed);
  const where = ['--data', folder, '--http', addressText(http), '--mqtt', addressText(mqtt)];
  const args = ['start', '--open', ...where, '--clock', clockText(clock)];
  const log = join(folder, 'hub.log');
  const running = await startHub(hub, args, addressText(http), log, abort.signal);
  await enterDemoLots(`http://${addressText(http)}`, start);
  await enterDemoPicks(`http://${addressText(http)}`);
  await enterDemoLosses(`http://${addressText(http)}`, logged);
  const broker = `mqtt://${addressText(mqtt)}`;
  // Ctrl-C reaches the hub as well: that it hangs up then is no news.
  const complain = (sentence: string) => {
    if (!abort.signal.aborted) process.stderr.write(`${sentence}\n`);
  };
  const live = startLiveProbes(scenario, { broker, seed, clock, world, complain });

  say('');
  say(`Open  http://${addressText(http)}/`);
  say('The farm and all its readings are invented; nothing to sign in to, on this machine only.');
  say(
    `Its clock stood at 23 April 2026, 15:40 when this began, and runs at ${speed} times a wall clock.`,
  );
  say('Stop with Ctrl-C.');

  const asked = new Promise<'asked'>((done) => {
    if (abort.signal.aborted) done('asked');
    abort.signal.addEventListener('abort', () => done('asked'));
  });
  const reason = await Promise.race([asked, running.gone]);
  await live.stop();
  await running.stop();
  if (reason === 'asked') say('Stopped.');
  else throw new Error(`The hub ended by itself with ${reason}; its log is ${log}`);
}

const abort = new AbortController();
for (const signal of ['SIGINT', 'SIGTERM'] as const) process.on(signal, () => abort.abort());
await runCommand(async () => {
  try {
    await demo(abort);
  } catch (error) {
    if (!abort.signal.aborted) throw error;
    say('Stopped.');
  }
});
