import { connectAsync } from 'mqtt';
import type { Page } from 'playwright-core';
import { keystrokes } from './keystrokes.ts';

// Somebody unpacks a hub and describes a farm in the browser, from an empty folder to the first task.
// Every tap and key is made by the pages of the hub; only the probe and the receiver are elsewhere.

export type Newcomer = {
  readonly page: Page;
  /** Where the pages are. */
  readonly address: string;
  readonly code: string;
  readonly name: string;
  readonly password: string;
  readonly mqttPort: number;
  /** Takes test messages. */
  readonly webhook: string;
  /** Called on every step as it stands filled in. */
  readonly looked?: (step: string) => Promise<void>;
};

const MINUTES = 300_000; // ms between two readings
const PLACES = ['Outside', 'Cool room'] as const;

/** @returns what it took, and the probe that goes on speaking. */
export async function newcomerRun(run: Newcomer) {
  const { page, looked = async () => {} } = run;
  const me = keystrokes(page);
  let steps = 0;
  const at = async (title: string) => {
    await page.getByRole('heading', { level: 1, name: title, exact: true }).waitFor();
    steps++;
  };
  const next = (name: string) => me.tap(`Next: ${name}`, 'link');

  await page.goto(run.address);
  await me.type('One-time code', run.code);
  await me.type('Your name', run.name);
  await me.type('A new password', run.password);
  await looked('claim');
  await me.tap(/claim/i);
  steps++;

  await at('Name and money');
  await me.type('Name of the farm', 'New garden (invented)');
  await me.type('Money, three letters', 'eur');
  await me.type('What an hour of work costs', '16,5');
  await page.getByText('Farm: wage per hour not told → 16.5').waitFor();
  await looked('name');
  await me.tap('Store this, and go on');

  await at('Where it lies');
  await me.choose('Time zone', 'Europe/Dublin');
  await me.tap('Start at Dublin');
  await me.point('.globe svg', 0.46, 0.2); // somewhere near, by a finger
  await me.type('Degrees north (south is negative)', '51,9');
  await me.type('Degrees east (west is negative)', '-8,3');
  await page.getByText(/^Today the sun rises at \d\d:\d\d and sets at \d\d:\d\d there/).waitFor();
  await looked('position');
  await me.tap('Store this, and go on');
  await at('Language and units');
  await next('Places');

  await at('Places');
  await me.type('Its name', 'Long House');
  await me.type('Room for trays', '48');
  await looked('places');
  await me.tap('Add this');
  await page.getByRole('button', { name: 'Change: Long House' }).waitFor();
  for (const name of PLACES) {
    await page.getByText(new RegExp(`^${name} is added`)).waitFor(); // offered, with usual figures
    await me.tap('Add this');
    await page.getByRole('button', { name: `Change: ${name}` }).waitFor();
  }
  await next('Crops');

  await at('Crops');
  await me.choose('Crop', 'basil');
  await me.fold('Figures to begin with, and who says so');
  await page.getByText(/Lange & Cameron 1994/).waitFor();
  await me.type('Your price for a kg', '30');
  await me.type('kg from a tray', '0,35');
  await looked('crops');
  await me.tap('Add this');
  await page.getByText(/^Basil, 30 EUR a kg/).waitFor();
  await next('Delivery days');

  await at('Delivery days');
  await me.choose('Day of every week', 'thursday');
  await me.choose('Wanted', 'basil');
  await me.type('kg', '4');
  await looked('deliveries');
  await me.tap('Add this');
  await page.getByText('Thursday, 4.0 kg Basil').waitFor();
  await next('Probes');

  await at('Probes');
  await me.tap('Make a password');
  const password = (await page.locator('.code-itself').textContent()) ?? '';
  const probe = await connectAsync(`mqtt://127.0.0.1:${run.mqttPort}`, {
    username: 'p1',
    password,
  });
  // It logged the last three hours, with times of its own: far too warm for a cool room.
  for (let i = 36; i >= 0; i--) {
    const t = new Date(Date.now() - i * MINUTES).toISOString();
    const v = Math.min(14.2, 4 + (36 - i) * 0.6);
    await probe.publishAsync('garden/p1/temperature', JSON.stringify({ v, t }), { qos: 1 });
  }
  await page
    .getByRole('heading', { name: /^A probe named p1 speaks: 14\.2.*Where is it\?$/ })
    .waitFor();
  await me.choose('Place', 'cool-room');
  await looked('probes');
  await me.tap('Place it here');
  await page.getByRole('heading', { name: 'p1 Cool room, air' }).waitFor();
  await next('Alarms');

  await at('Alarms');
  await me.tap('Sound it once');
  await me.tap('Add somebody');
  await me.type('Name', run.name);
  await me.type('Webhook address', run.webhook);
  await me.tap('Save');
  await me.tap(`Test webhook to ${run.name}`);
  await page.getByText(/Taken by the other side/).waitFor();
  await looked('alarms');
  await next('First look');

  await at('First look');
  await page.getByText('Everything that a first look needs is there.').waitFor();
  await looked('first');
  await me.tap('Go to Today', 'link');
  const first = page.locator('article.task h3');
  await first.first().waitFor({ timeout: 60_000 });
  const title = (await first.first().textContent()) ?? '';
  return { ...me.counts(), steps, title, probe };
}
