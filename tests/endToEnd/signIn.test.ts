import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Who } from '../../hub/contract/index.ts';
import { hasChromium, needsChromium, openBrowser, shutsOut } from './browser.ts';
import { gardenFile } from './gardenFile.ts';
import { type HubProcess, startHub } from './hubProcess.ts';
import { tempFolder } from './processes.ts';

// A fresh hub, claimed in the browser with the code it printed.

const NAME = 'Una';
const PASSWORD = 'rain on glass';

describe.skipIf(!hasChromium)(`the way in, in Chromium${needsChromium}`, () => {
  let hub: HubProcess;
  const data = tempFolder();
  beforeAll(async () => {
    hub = await startHub({ data, farm: gardenFile(data) });
  }, 60_000);
  afterAll(() => hub?.kill());

  test('the printed code claims the hub once; then one signs out and in', {
    timeout: 90_000,
  }, async () => {
    const { page, complaints, close, context } = await openBrowser();
    await page.goto(`${hub.page}/probes`);
    await page.getByRole('heading', { level: 1, name: 'Claim this hub' }).waitFor();
    expect(await shutsOut(page)).toEqual([]);
    expect(await page.getByRole('navigation').count()).toBe(0);

    const claim = async (code: string) => {
      await page.getByLabel('One-time code').fill(code);
      await page.getByLabel('Your name').fill(NAME);
      await page.getByLabel('A new password').fill(PASSWORD);
      await page.getByRole('button', { name: 'Claim the hub' }).click();
    };
    await claim('aaaa-bbbb-cccc');
    await page.getByText(/^Not accepted: Expected the code the hub printed/).waitFor();
    expect(await hub.get<Who>('/api/who')).toMatchObject({ claimed: false });
    await claim(hub.claimCode().toUpperCase());
    await page.getByRole('heading', { level: 1, name: 'Probes' }).waitFor();
    await page.getByText(`Signed in as ${NAME}`).waitFor();
    const [cookie] = await context.cookies();
    expect(cookie).toMatchObject({ httpOnly: true, sameSite: 'Strict' });

    await page.getByRole('button', { name: 'Sign out' }).click();
    await page.getByRole('heading', { level: 1, name: 'Sign in' }).waitFor();
    expect(await shutsOut(page)).toEqual([]);
    // Nothing of the farm stays behind for the next one who opens this browser.
    expect.soft(await page.getByText('Test Garden').count()).toBe(0);
    expect(await page.evaluate('JSON.stringify(localStorage)')).not.toContain('Long House');
    expect(await page.evaluate("fetch('/api/today').then((answer) => answer.status)")).toBe(401);

    const signIn = async (password: string) => {
      await page.getByLabel('Your name').fill(NAME);
      await page.getByLabel('Password').fill(password);
      await page.getByRole('button', { name: 'Sign in' }).click();
    };
    await signIn('rain on grass');
    await page.getByText(/^Not accepted: Expected a name and its password/).waitFor();
    await signIn(PASSWORD);
    await page.getByText(`Signed in as ${NAME}`).waitFor();
    await page.reload();
    await page.getByText(`Signed in as ${NAME}`).waitFor();

    // The browser itself writes down each refusal that was asked for above; nothing else.
    const others = complaints.filter((text) => !/status of (401|403)/.test(text));
    expect(others).toEqual([]);
    await close();
  });

  test('the code is of no use to a second one', { timeout: 60_000 }, async () => {
    const command = { code: hub.claimCode(), name: 'Eve', password: 'long enough too' };
    expect((await hub.ask('/api/claim', command)).status).toBe(409);
    const { page, close } = await openBrowser({ scheme: 'dark', width: 1280 });
    await page.goto(hub.page);
    await page.getByRole('heading', { level: 1, name: 'Sign in' }).waitFor();
    expect(await page.getByLabel('One-time code').count()).toBe(0);
    expect(await shutsOut(page)).toEqual([]);
    await close();
  });

  test('a claimed hub prints no code when it starts again, and knows who was signed in', {
    timeout: 60_000,
  }, async () => {
    const { http, mqtt } = hub.ports;
    const { page, close } = await openBrowser();
    await page.goto(hub.page);
    await page.getByLabel('Your name').fill(NAME);
    await page.getByLabel('Password').fill(PASSWORD);
    await page.getByRole('button', { name: 'Sign in' }).click();
    await page.getByText(`Signed in as ${NAME}`).waitFor();
    await hub.stop();
    hub = await startHub({ data, http, mqtt });
    expect(hub.claimCode()).toBe('');
    await page.reload();
    await page.getByText(`Signed in as ${NAME}`).waitFor();
    await close();
  });
});
