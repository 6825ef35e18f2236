import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, rmSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const GIVE_UP = 300_000; // ms; a season is made up and imported first

async function freePort(): Promise<number> {
  const server = createServer().listen(0, '127.0.0.1');
  await once(server, 'listening');
  const { port } = server.address() as { port: number };
  server.close();
  return port;
}

/** The demonstration as anybody starts it, in a folder of its own. @throws Error when it does not come up. */
export async function startDemo() {
  const folder = mkdtempSync(join(tmpdir(), 'dewpost-demo-'));
  const [http, mqtt] = [await freePort(), await freePort()];
  const page = `http://127.0.0.1:${http}`;
  const entry = fileURLToPath(new URL('../../simulators/demo.js', import.meta.url));
  const where = ['--http', `127.0.0.1:${http}`, '--mqtt', `127.0.0.1:${mqtt}`];
  const child = spawn(process.execPath, [entry, '--data', join(folder, 'demo'), ...where], {
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  const ended = once(child, 'exit');
  const stop = async () => {
    child.kill('SIGINT');
    await ended;
    rmSync(folder, { recursive: true, force: true });
  };
  let said = '';
  child.stdout.setEncoding('utf8').on('data', (text: string) => {
    said += text;
  });
  const begin = performance.now();
  while (!said.includes(`Open  ${page}/`)) {
    if (child.exitCode !== null || performance.now() - begin > GIVE_UP) {
      if (child.exitCode === null) await stop();
      throw new Error(`Expected a demonstration at ${page}, got ${child.exitCode ?? 'no answer'}`);
    }
    await new Promise((resolve) => setTimeout(resolve, 100));
  }
  return { page, stop };
}
