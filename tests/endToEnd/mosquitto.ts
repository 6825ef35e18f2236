import { chmodSync, mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { type Begun, begin, type Ended, executable, freePort, killed, until } from './processes.ts';

// Mosquitto's own programs: its clients as probes and listeners, its broker as one a farm has already.

const programs = {
  broker: executable('mosquitto'),
  publish: executable('mosquitto_pub'),
  subscribe: executable('mosquitto_sub'),
};
export const hasMosquitto = Object.values(programs).every((file) => file !== undefined);
export const needsMosquitto = hasMosquitto
  ? ''
  : ' (skipped: mosquitto, mosquitto_pub or mosquitto_sub is missing)';

export type Sending = {
  readonly port: number;
  readonly topic: string;
  readonly message: string;
  readonly user?: string | undefined;
  readonly password?: string | undefined;
};
const access = ({ user, password }: Pick<Sending, 'user' | 'password'>) => [
  ...(user === undefined ? [] : ['-u', user]),
  ...(password === undefined ? [] : ['-P', password]),
];

/** One message with QoS 1; it ends with code 0 when the broker has acknowledged it. */
export function publish({ port, topic, message, ...who }: Sending): Promise<Ended> {
  const where = ['-h', '127.0.0.1', '-p', String(port), ...access(who)];
  // From standard input, so that a message may begin with any sign.
  const { child, ended } = begin(programs.publish ?? '', [...where, '-q', '1', '-t', topic, '-s']);
  child.stdin?.end(message);
  const late = setTimeout(() => void killed(child), 10_000); // it asks again for ever when cut off
  return ended.finally(() => clearTimeout(late));
}

/** The first message on a topic, retained ones included; undefined when there is none in time. */
export async function heard(
  port: number,
  topic: string,
  who: Pick<Sending, 'user' | 'password'> = {},
): Promise<string | undefined> {
  const where = ['-h', '127.0.0.1', '-p', String(port), ...access(who)];
  const listening = begin(programs.subscribe ?? '', [...where, '-t', topic, '-C', '1', '-W', '3']);
  const { code, out } = await listening.ended;
  return code === 0 ? out.replace(/\n$/, '') : undefined;
}

/** A broker that the farm has already, set up as the README asks. It may be stopped and started again. */
export async function startMosquitto(folder: string) {
  const port = await freePort();
  const kept = join(folder, 'broker');
  mkdirSync(kept);
  chmodSync(kept, 0o777); // started by the superuser it becomes another user, who has to write here
  const config = join(folder, 'mosquitto.conf');
  const lines = [
    `listener ${port} 127.0.0.1`,
    'allow_anonymous true',
    'persistence true',
    `persistence_location ${kept}/`,
    'max_queued_messages 100000',
  ];
  writeFileSync(config, `${lines.join('\n')}\n`);
  chmodSync(folder, 0o755);
  let running: Begun;
  const start = async () => {
    running = begin(programs.broker ?? '', ['-c', config]);
    await until(() => /running/.test(running.err()), 'a broker that runs', 15_000);
  };
  await start();
  return {
    port,
    url: `mqtt://127.0.0.1:${port}`,
    start,
    /** As its service is stopped: it writes down what it holds. */
    stop: () => killed(running.child, 'SIGTERM'),
  };
}
