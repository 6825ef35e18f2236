// A slow phone at the edge of the farm's radio: Chromium with its processor slowed down four times and
// the network of Lighthouse's "slow 4G" (150 ms a round trip, 1.6 Mbit/s down, 0.75 up; simulated
// throttling settings of Lighthouse's documentation, from memory). The demonstration farm, Today. It
// is usable once the first task can be read, its button answers, and nothing stands in its way.
// Cold: nothing kept. Warm: opened again with what the browser keeps. Medians of the rounds.

import { accessSync, constants } from 'node:fs';
import { delimiter, join } from 'node:path';
import { type BrowserContext, chromium, type Page } from 'playwright-core';
import { startDemo } from './demoProcess.ts';
import { figure, middle, remark } from './report.ts';

const SLOWER = 4;
const NETWORK = { latency: 150, downloadThroughput: 1.6e6 / 8, uploadThroughput: 0.75e6 / 8 };
const ROUNDS = 5;
const GIVE_UP = 60_000; // ms
const PATHS = ['/', '/places', '/cool-room', '/frost', '/batches', '/losses', '/week', '/alarms'];
const ARGS = ['--headless', '--no-sandbox', '--disable-gpu', '--disable-background-networking'];

/** Tells when the first task's button is drawn, and when a turn of the page's one thread after it was free. */
const WATCH = `(() => {
  if (window !== top) return;
  const look = () => {
    if (!document.querySelector('.task .answers button')) return requestAnimationFrame(look);
    requestAnimationFrame(() => {
      window.readable = performance.now();
      const channel = new MessageChannel();
      channel.port1.onmessage = () => { window.usable = performance.now(); };
      channel.port2.postMessage(0);
    });
  };
  requestAnimationFrame(look);
})()`;

const program = (process.env.PATH ?? '')
  .split(delimiter)
  .map((folder) => join(folder, 'chromium'))
  .find((file) => {
    try {
      accessSync(file, constants.X_OK);
      return true;
    } catch {
      return false;
    }
  });

export async function slowPhone() {
  if (program === undefined) {
    remark('no chromium on PATH: a slow phone is not measured');
    return;
  }
  const demo = await startDemo();
  const browser = await chromium.launch({ executablePath: program, args: ARGS });
  try {
    const cold: number[] = [];
    const again: number[] = [];
    for (let round = 0; round < ROUNDS; round++) {
      const context = await browser.newContext({ viewport: { width: 360, height: 740 } });
      cold.push(await open(context, demo.page));
      const first = context.pages()[0];
      await first?.evaluate('navigator.serviceWorker?.ready.then(() => 1)');
      await first?.waitForTimeout(2500); // while it keeps the files of the other pages
      await first?.close();
      again.push(await open(context, demo.page));
      await context.close();
    }
    figure('slow-phone-today-cold', middle(cold), 'ms');
    figure('slow-phone-today-warm', middle(again), 'ms');
    for (const path of PATHS) {
      const context = await browser.newContext({ viewport: { width: 360, height: 740 } });
      const name = path === '/' ? 'today' : path.slice(1);
      figure(`page-bytes-${name}`, (await bytes(context, demo.page + path)) / 1000, 'kB');
      await context.close();
    }
  } finally {
    await browser.close();
    await demo.stop();
  }
}

async function throttled(page: Page) {
  const devtools = await page.context().newCDPSession(page);
  await devtools.send('Network.enable');
  await devtools.send('Network.emulateNetworkConditions', { offline: false, ...NETWORK });
  await devtools.send('Emulation.setCPUThrottlingRate', { rate: SLOWER });
}

/** From the navigation to a first task that answers, ms. */
async function open(context: BrowserContext, address: string): Promise<number> {
  const page = await context.newPage();
  await page.addInitScript(WATCH);
  await throttled(page);
  await page.goto(address, { waitUntil: 'commit' });
  // Asked now and then: the pages' own rules forbid what waits inside them.
  const giveUp = performance.now() + GIVE_UP;
  for (;;) {
    const usable = await page.evaluate<number | null>('window.usable ?? null');
    if (usable !== null) return usable;
    if (performance.now() > giveUp)
      throw new Error(`Expected a task on ${address}, got none within ${GIVE_UP / 1000} s`);
    await page.waitForTimeout(100);
  }
}

/** What goes over the wire until a page stands still, on a first visit, without what is kept for later. */
async function bytes(context: BrowserContext, address: string): Promise<number> {
  const page = await context.newPage();
  await page.route('**/shell.js', (route) => route.abort());
  const devtools = await context.newCDPSession(page);
  await devtools.send('Network.enable');
  let sum = 0;
  devtools.on('Network.loadingFinished', ({ encodedDataLength }) => {
    sum += encodedDataLength;
  });
  await page.goto(address, { waitUntil: 'load' });
  await page.waitForTimeout(2500);
  return sum;
}
