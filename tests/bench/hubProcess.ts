import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { readFileSync } from 'node:fs';
import { createServer } from 'node:net';
import { fileURLToPath } from 'node:url';

// The hub as people run it, `dewpost start` in a process of its own, and what the system knows of
// that process (Linux: /proc).

const GIVE_UP = 30_000; // ms

async function freePort(): Promise<number> {
  const server = createServer().listen(0, '127.0.0.1');
  await once(server, 'listening');
  const { port } = server.address() as { port: number };
  server.close();
  return port;
}

export type HubProcess = {
  readonly mqtt: string;
  /** From the start of the process to the first answer 200 of /api/health, ms. */
  readonly startMs: number;
  readonly rssMB: () => number;
  /** Bytes this process has caused to be written to the disk. */
  readonly written: () => number;
  readonly stop: () => Promise<void>;
};

/** @param now what the hub's clock says at its start. @throws Error when it does not come up. */
export async function startProcess(data: string, now: number): Promise<HubProcess> {
  const [http, mqtt] = [await freePort(), await freePort()];
  const entry = fileURLToPath(new URL('../../hub/dewpost.js', import.meta.url));
  const address = `http://127.0.0.1:${http}/api/health`;
  const begin = performance.now();
  const child: ChildProcess = spawn(
    process.execPath,
    [
      ...['--max-semi-space-size=2', entry], // as npm start does
      ...['start', '--open', '--data', data, '--gather', '0'],
      ...['--http', `127.0.0.1:${http}`, '--mqtt', `127.0.0.1:${mqtt}`],
      ...['--clock', `${new Date(now).toISOString()}/${Date.now()}/1`],
    ],
    { stdio: ['ignore', 'ignore', 'inherit'], env: { ...process.env, DEWPOST_LOG: 'error' } },
  );
  for (;;) {
    const status = await fetch(address).then(
      (answer) => answer.status,
      () => 0,
    );
    if (status === 200) break;
    if (child.exitCode !== null || performance.now() - begin > GIVE_UP)
      throw new Error(`Expected a hub at ${address}, got ${child.exitCode ?? 'no answer'}`);
    await new Promise((resolve) => setTimeout(resolve, 4));
  }
  const startMs = performance.now() - begin;
  const proc = (name: string, field: RegExp) =>
    Number(field.exec(readFileSync(`/proc/${child.pid}/${name}`, 'utf8'))?.[1] ?? Number.NaN);
  return {
    mqtt: `mqtt://127.0.0.1:${mqtt}`,
    startMs,
    rssMB: () => (proc('status', /VmRSS:\s+(\d+) kB/) * 1024) / 1e6,
    written: () => proc('io', /^write_bytes: (\d+)/m),
    stop: async () => {
      const ended = once(child, 'exit');
      child.kill('SIGTERM');
      await ended;
    },
  };
}
