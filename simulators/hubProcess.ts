import { type ChildProcess, spawn } from 'node:child_process';
import { closeSync, openSync, readFileSync } from 'node:fs';
import { setTimeout as pause } from 'node:timers/promises';

// The demonstration uses the hub as anybody would: by its commands and its addresses.

const PATIENCE = 60_000; // ms until a hub that never answers counts as failed
const FAREWELL = 10_000; // ms for a hub to stop by itself

const ended = (child: ChildProcess) => child.exitCode !== null || child.signalCode !== null;

/** Runs a hub command to its end; what it says goes to our own error stream. */
export function runHub(hub: string, args: readonly string[], signal: AbortSignal): Promise<void> {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, [hub, ...args], {
      stdio: ['ignore', 'ignore', 'inherit'],
      signal,
    });
    child.once('error', reject);
    child.once('exit', (code) => {
      if (code === 0) resolve();
      else reject(new Error(`Could not run "dewpost ${args[0]}": it ended with code ${code}`));
    });
  });
}

const lastLineOf = (file: string) => readFileSync(file, 'utf8').trimEnd().split('\n').at(-1) ?? '';

/** Starts the hub and resolves when it answers; what it says goes to the file `log`. */
export async function startHub(
  hub: string,
  args: readonly string[],
  address: string,
  log: string,
  signal: AbortSignal,
) {
  const said = openSync(log, 'a');
  const child = spawn(process.execPath, [hub, ...args], { stdio: ['ignore', said, said] });
  closeSync(said); // the child has its own copy
  const gone = new Promise<number | null>((resolve) => child.once('exit', resolve));
  const stop = async () => {
    if (!ended(child)) child.kill('SIGTERM');
    const late = new AbortController();
    const force = pause(FAREWELL, undefined, { signal: late.signal }).then(
      () => child.kill('SIGKILL'),
      () => false,
    );
    await gone;
    late.abort();
    await force;
  };
  const giveUp = Date.now() + PATIENCE;
  while (!(await answers(`http://${address}/api/health`))) {
    if (ended(child)) throw new Error(`Could not start the hub: ${lastLineOf(log)}`);
    if (signal.aborted || Date.now() > giveUp) {
      await stop();
      throw new Error(`Could not start the hub: no answer from ${address} within a minute`);
    }
    await pause(150);
  }
  return { gone, stop };
}

async function answers(url: string): Promise<boolean> {
  try {
    return (await fetch(url)).ok;
  } catch {
    return false; // not listening yet
  }
}
