// From an empty folder to the first task, in the browser: steps, taps, keys and seconds of the scripted
// newcomer (tests/endToEnd/newcomerRun.ts) against the hub as it is installed, the bytes that the pages
// fetched meanwhile, and the seconds a person would take by the keystroke-level model. The estimate's
// operator times are from memory, and it knows nothing of reading or of looking for a spanner.

import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { accessSync, constants, mkdirSync } from 'node:fs';
import { createServer } from 'node:http';
import { delimiter, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { chromium, type Page } from 'playwright-core';
import { newcomerRun } from '../endToEnd/newcomerRun.ts';
import { folder } from './history.ts';
import { figure, remark } from './report.ts';

const GIVE_UP = 60_000; // ms
const ARGS = ['--no-sandbox', '--disable-gpu', '--disable-background-networking'];

function programOf(name: string): string | undefined {
  const files = (process.env.PATH ?? '').split(delimiter).map((path) => join(path, name));
  return files.find((file) => {
    try {
      accessSync(file, constants.X_OK);
      return true;
    } catch {
      return false;
    }
  });
}

/** A hub that nobody has claimed; said in its own first lines. */
async function emptyHub(data: string) {
  const entry = fileURLToPath(new URL('../../hub/dewpost.js', import.meta.url));
  const child: ChildProcess = spawn(
    process.execPath,
    [entry, 'start', '--data', data, '--http', '127.0.0.1:0', '--mqtt', '127.0.0.1:0'],
    { stdio: ['ignore', 'pipe', 'ignore'] },
  );
  let out = '';
  child.stdout?.setEncoding('utf8').on('data', (text: string) => {
    out += text;
  });
  const said = /Open (\S+) in a browser; probes speak to mqtt:\/\/[^:]+:(\d+)/;
  const code = /type this code, once: (\S+)/;
  const begin = performance.now();
  while (!said.test(out) || !code.test(out)) {
    if (child.exitCode !== null || performance.now() - begin > GIVE_UP)
      throw new Error(`Expected a hub that says where it is, got ${out}`);
    await new Promise((resolve) => setTimeout(resolve, 20));
  }
  const [, address = '', mqtt = ''] = said.exec(out) ?? [];
  return {
    ...{ address: address.replace(/\/$/, ''), mqttPort: Number(mqtt) },
    code: code.exec(out)?.[1] ?? '',
    async stop() {
      const ended = once(child, 'exit');
      child.kill('SIGTERM');
      await ended;
    },
  };
}

/** Bytes of all answers that the page has taken, headers too. */
async function counted(page: Page) {
  const wire = await page.context().newCDPSession(page);
  let bytes = 0;
  await wire.send('Network.enable');
  wire.on('Network.loadingFinished', ({ encodedDataLength }) => {
    bytes += encodedDataLength;
  });
  return () => bytes;
}

export async function newcomer() {
  const program = programOf('chromium');
  if (program === undefined) {
    remark('no chromium on this machine: nothing to try the pages with');
    return;
  }
  const data = join(folder, 'newcomer');
  mkdirSync(data);
  const receiver = createServer((request, answer) => {
    request.resume().on('end', () => answer.writeHead(204).end());
  }).listen(0, '127.0.0.1');
  await once(receiver, 'listening');
  const { port } = receiver.address() as { port: number };
  const { stop, ...hub } = await emptyHub(data);
  const browser = await chromium.launch({ executablePath: program, args: ARGS });
  try {
    const page = await browser.newPage({ viewport: { width: 360, height: 800 } });
    const bytes = await counted(page);
    const run = await newcomerRun({
      ...{ ...hub, page, name: 'Una', password: 'rain on glass' },
      webhook: `http://127.0.0.1:${port}/told`,
    });
    figure('newcomer-steps', run.steps, 'pages');
    figure('newcomer-taps', run.taps, 'taps');
    figure('newcomer-keys', run.keys, 'keys');
    figure('newcomer-script', run.seconds, 's');
    figure('newcomer-estimate', run.estimate, 's');
    figure('newcomer-bytes', bytes() / 1000, 'kB');
    await run.probe.endAsync();
  } finally {
    await browser.close();
    await stop();
    receiver.close();
  }
}
