import { createServer } from 'node:http';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { FarmDescription, Health } from '../../hub/contract/index.ts';
import { fitsItsWidth, hasChromium, needsChromium, openBrowser, shutsOut } from './browser.ts';
import { type HubProcess, startHub } from './hubProcess.ts';
import { newcomerRun } from './newcomerRun.ts';
import { tempFolder, until } from './processes.ts';

// From an empty folder to the first task, and what two people may do to one farm at once.

const done = (step: string) => `${step} ✓ done`;
const PASSWORD = 'rain on glass';
/** Steps held against WCAG; the others are made of the same parts. */
const SEARCHED = ['position', 'crops', 'probes', 'alarms', 'overtaken', 'changes'];
const TEN_MINUTES = 600; // s

describe.skipIf(!hasChromium)(`a newcomer, in Chromium${needsChromium}`, () => {
  let hub: HubProcess;
  const told: string[] = [];
  const receiver = createServer((request, answer) => {
    request.setEncoding('utf8').on('data', (part: string) => told.push(part));
    request.on('end', () => answer.writeHead(204).end());
  });
  beforeAll(async () => {
    hub = await startHub({ data: tempFolder() });
    await new Promise<void>((resolve) => receiver.listen(0, '127.0.0.1', resolve));
  }, 60_000);
  afterAll(async () => {
    receiver.close();
    await hub?.kill();
  });

  test('an empty hub comes to its first task within ten estimated minutes of taps and keys', {
    timeout: 300_000,
  }, async () => {
    expect((await hub.get<Health>('/api/health')).status).toBe('no-farm');
    const { page, complaints, close } = await openBrowser({ width: 320 });
    const { port } = receiver.address() as { port: number };
    const looked = async (step: string) => {
      if (SEARCHED.includes(step)) expect.soft(await shutsOut(page), step).toEqual([]);
      await fitsItsWidth(page);
    };
    const { taps, keys, seconds, estimate, steps, title, probe } = await newcomerRun({
      ...{ page, looked, address: hub.page, name: 'Una', password: PASSWORD },
      code: await until(hub.claimCode, 'a code to claim the hub with'),
      mqttPort: hub.ports.mqtt,
      webhook: `http://127.0.0.1:${port}/told`,
    });
    console.log(
      `newcomer: ${steps} steps, ${taps} taps, ${keys} keys, ${seconds.toFixed(0)} s by the script, about ${estimate.toFixed(0)} s for a person (keystroke-level estimate); first task: ${title}`,
    );
    expect(estimate).toBeLessThan(TEN_MINUTES);
    expect(title).not.toBe('');
    expect(told.join('')).toMatch(/"what":"test"/);
    await probe.endAsync();
    await hub.signIn({ name: 'Una', password: PASSWORD });

    // Left, and come back to somewhere else: what there is lies in the hub.
    await page.goto(`${hub.page}/set-up`);
    await page.getByText('Describe the farm').waitFor();
    await expect
      .poll(() => page.locator('.set-up-steps li').allTextContents())
      .toEqual([
        ...['Name and money', 'Where it lies', 'Language and units', 'Places', 'Crops'].map(done),
        ...['Delivery days', 'Probes', 'Alarms', 'First look'].map(done),
      ]);

    // The point is moved by keys as well: a degree each, on the whole world.
    await page.goto(`${hub.page}/set-up/position`);
    await page.getByRole('application', { name: /^Where the farm lies/ }).focus();
    for (let i = 0; i < 3; i++) await page.keyboard.press('ArrowDown');
    const north = page.getByLabel('Degrees north (south is negative)');
    await expect.poll(() => north.inputValue()).toBe('48.9');
    await page.getByLabel('Degrees east (west is negative)').fill('83');
    await page.getByText(/km from Dublin: is a sign wrong, or the time zone\?$/).waitFor();

    // Somebody else is quicker: what was typed stays, and stands over what the farm is now.
    await page.route('**/api/events', (route) => route.abort()); // this page hears of nothing
    await page.goto(`${hub.page}/set-up/places`);
    await page.getByRole('button', { name: /^Change: Long House/ }).click();
    await page.getByLabel('Room for trays').fill('60');
    const now = () => hub.get<FarmDescription>('/api/farm/description');
    const { version, description } = await now();
    const places = (description?.places ?? []) as { id: string }[];
    const wider = places.map((one) => (one.id === 'cool-room' ? { ...one, volume: 12 } : one));
    await hub.post('/api/farm', { based: version, description: { ...description, places: wider } });
    await page.getByRole('button', { name: 'Store this' }).click();
    await page.getByText(/^Not stored: somebody changed the farm meanwhile/).waitFor();
    await page.getByText('Cool room: volume not told → 12').waitFor();
    expect(await page.getByLabel('Room for trays').inputValue()).toBe('60');
    await looked('overtaken');
    await page.getByRole('button', { name: 'Store this' }).click();
    await page.getByText('The hub has stored this.').waitFor();
    const kept = JSON.stringify((await now()).description);
    expect(kept).toMatch(/"capacity":60/);
    expect(kept).toMatch(/"volume":12/);

    await page.goto(`${hub.page}/set-up/changes`);
    await page.getByRole('button', { name: /^Undo: .*room for trays 48 → 60/ }).click();
    await page.getByText('The hub has put it back.').waitFor();
    await looked('changes');
    expect(JSON.stringify((await now()).description)).toMatch(/"capacity":48/);
    const known = /status of (401|409|503)|\/api\/events/;
    expect(complaints.filter((text) => !known.test(text))).toEqual([]);
    await close();
  });
});
