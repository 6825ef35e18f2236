import { type ChildProcess, type SpawnOptions, spawn } from 'node:child_process';
import { accessSync, constants, mkdtempSync, rmSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { delimiter, join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { afterAll } from 'vitest';

// Real processes of these tests: each is ended by its own id, at the latest when its file is done.

const begun = new Set<ChildProcess>();
const folders = new Set<string>();

afterAll(async () => {
  for (const child of begun) await killed(child);
  for (const folder of folders) rmSync(folder, { recursive: true, force: true, maxRetries: 5 });
});
process.once('exit', () => {
  for (const child of begun) child.kill('SIGKILL'); // a test runner that gives up leaves nothing behind
});

/** A folder of our own, gone with the file's tests. */
export function tempFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'dewpost-end-'));
  folders.add(folder);
  return folder;
}

/** Debian keeps brokers in /usr/sbin, which is on the superuser's PATH only. */
const searched = [...(process.env.PATH ?? '').split(delimiter), '/usr/sbin', '/usr/local/sbin'];

/** Where an executable is, by PATH; undefined when it is not installed. */
export const executable = (name: string): string | undefined =>
  searched
    .map((folder) => join(folder, name))
    .find((file) => {
      try {
        accessSync(file, constants.X_OK);
        return true;
      } catch {
        return false;
      }
    });

export type Ended = { readonly code: number | null; readonly out: string; readonly err: string };
export type Begun = {
  readonly child: ChildProcess;
  readonly out: () => string;
  readonly err: () => string;
  readonly ended: Promise<Ended>;
};

/** Starts a process and gathers what it says. */
export function begin(command: string, args: readonly string[], options: SpawnOptions = {}): Begun {
  const child = spawn(command, [...args], { stdio: ['pipe', 'pipe', 'pipe'], ...options });
  begun.add(child);
  let out = '';
  let err = '';
  child.stdout?.setEncoding('utf8').on('data', (text: string) => {
    out += text;
  });
  child.stderr?.setEncoding('utf8').on('data', (text: string) => {
    err += text;
  });
  const ended = new Promise<Ended>((resolve, reject) => {
    child.once('error', reject);
    child.once('close', (code) => {
      begun.delete(child);
      resolve({ code, out, err });
    });
  });
  ended.catch(() => begun.delete(child));
  return { child, out: () => out, err: () => err, ended };
}

const isOver = ({ exitCode, signalCode }: ChildProcess) => exitCode !== null || signalCode !== null;

/** Ends it at once, as a power cut of the process would. */
export async function killed(child: ChildProcess, signal: NodeJS.Signals = 'SIGKILL') {
  if (isOver(child)) return;
  const gone = new Promise((resolve) => child.once('exit', resolve));
  child.kill(signal);
  await gone;
}

/** Asks again until it is so; the last fault is told when time is up. */
export async function until<Seen>(
  look: () => Seen | undefined | null | false | Promise<Seen | undefined | null | false>,
  what: string,
  within = 20_000,
): Promise<Seen> {
  const giveUp = Date.now() + within;
  let fault: unknown = 'it never was so';
  for (;;) {
    try {
      const seen = await look();
      if (seen !== undefined && seen !== null && seen !== false) return seen;
    } catch (error) {
      fault = error;
    }
    if (Date.now() > giveUp) throw new Error(`Expected ${what} within ${within} ms, got: ${fault}`);
    await pause(100);
  }
}

/** A port that is free now, for a process that cannot choose one itself. */
export const freePort = () =>
  new Promise<number>((resolve, reject) => {
    const server = createServer();
    server.once('error', reject);
    server.listen(0, '127.0.0.1', () => {
      const bound = server.address();
      const port = typeof bound === 'object' && bound ? bound.port : 0;
      server.close(() => resolve(port));
    });
  });
