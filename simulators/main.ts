import { startLiveProbes } from './liveProbes.ts';
import { readNumber, readOptions, runCommand } from './options.ts';
import { scenario } from './scenario.ts';
import { parseClock } from './simulatedClock.ts';

// node dist/simulators/main.js --mqtt mqtt://127.0.0.1:1883 --clock START_ISO/REAL_MS/SPEED [--seed N]
//   [--username U --password P]

await runCommand(() => {
  const names = ['mqtt', 'seed', 'clock', 'username', 'password'] as const;
  const given = readOptions(names, process.argv.slice(2));
  const broker = given.mqtt ?? 'mqtt://127.0.0.1:1883';
  const start = new Date(scenario.start).toISOString();
  const clock = parseClock(given.clock ?? `${start}/${Date.now()}/1`);
  if (clock.start < scenario.plan.epoch) {
    const epoch = new Date(scenario.plan.epoch).toISOString();
    throw new Error(`Expected --clock to start after ${epoch}, got ${given.clock}`);
  }
  const seed = given.seed ? readNumber('seed', given.seed, 0, 2 ** 32 - 1) : scenario.seed;
  const { username, password } = given;
  const complain = (sentence: string) => process.stderr.write(`${sentence}\n`);
  const live = startLiveProbes(scenario, { broker, seed, clock, username, password, complain });
  let stopping = false;
  const stop = () => {
    if (stopping) return;
    stopping = true;
    void live.stop();
  };
  process.on('SIGINT', stop);
  process.on('SIGTERM', stop);
});
