import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { People } from '../../hub/contract/index.ts';
import { fitsItsWidth, hasChromium, needsChromium, openBrowser, shutsOut } from './browser.ts';
import { gardenFile } from './gardenFile.ts';
import { type HubProcess, startHub } from './hubProcess.ts';
import { tempFolder, until } from './processes.ts';

// A grower lets a helper in, in the browser; the helper sees and may do less; then the helper goes.

const PASSWORD = 'rain on glass';

describe.skipIf(!hasChromium)(`people, in Chromium${needsChromium}`, () => {
  let hub: HubProcess;
  beforeAll(async () => {
    const data = tempFolder();
    hub = await startHub({ data, farm: gardenFile(data) });
    const code = await until(hub.claimCode, 'a code to claim the hub with');
    await hub.signIn({ code, name: 'Una', password: PASSWORD });
  }, 60_000);
  afterAll(() => hub?.kill());

  test('a helper joins with a code, sees the pages, and is gone when removed', {
    timeout: 120_000,
  }, async () => {
    const grower = await openBrowser();
    const { page } = grower;
    await page.goto(hub.page);
    await page.getByLabel('Your name').fill('Una');
    await page.getByLabel('Password').fill(PASSWORD);
    await page.getByRole('button', { name: 'Sign in' }).click();
    await page.getByRole('heading', { level: 1, name: 'Today' }).waitFor();
    await page.getByRole('navigation', { name: 'Pages' }).getByText('More').click();
    await page.getByRole('link', { name: 'Set-up' }).click();
    await page.getByRole('heading', { level: 1, name: 'Set-up' }).waitFor();
    await page.getByText('Una', { exact: true }).waitFor();
    expect(await shutsOut(page)).toEqual([]);

    await page.getByLabel('Role').selectOption('helper');
    await page.getByRole('button', { name: 'Make a code' }).click();
    const code = (await page.locator('.code-itself').textContent()) ?? '';
    expect(code).toMatch(/^([a-z2-9]{4}-){3}[a-z2-9]{4}$/);
    expect(await shutsOut(page)).toEqual([]);
    await fitsItsWidth(page);

    const helper = await openBrowser({ width: 1280 });
    const other = helper.page;
    await other.goto(`${hub.page}/probes`);
    await other.getByRole('button', { name: 'I have a code' }).click();
    await other.getByRole('heading', { level: 1, name: 'Join with a code' }).waitFor();
    expect(await shutsOut(other)).toEqual([]);
    await other.getByLabel('One-time code').fill(code);
    await other.getByLabel('Your name').fill('Hal');
    await other.getByLabel('A new password').fill('dew on leaves');
    await other.getByRole('button', { name: 'Join' }).click();
    await other.getByText('Signed in as Hal').waitFor();
    await other.getByRole('heading', { level: 1, name: 'Probes' }).waitFor();
    expect(await other.getByRole('button', { name: /^Move/ }).count()).toBe(0);
    const menu = other.getByRole('navigation', { name: 'Pages' });
    await menu.getByText('More').click();
    await menu.getByRole('link', { name: 'Set-up' }).click();
    await other.getByText('You are signed in as Hal, helper.').waitFor();
    expect(await other.getByRole('heading', { name: 'People' }).count()).toBe(0);
    expect(await shutsOut(other)).toEqual([]);

    await other.getByLabel('Your password now').fill('dew on leaves');
    await other.getByLabel('A new password').fill('dew on petals');
    await other.getByRole('button', { name: 'Change your password' }).click();
    await other.getByText('The hub has changed your password.').waitFor();

    await page.reload();
    await page.getByRole('button', { name: 'Remove: Hal' }).click();
    await page.getByRole('button', { name: 'Remove Hal' }).click();
    await page.getByText('The hub has removed Hal.').waitFor();
    expect((await hub.get<People>('/api/people')).people.map(({ name }) => name)).toEqual(['Una']);
    // The open page of who was removed is let go at once, and asks for a sign-in by itself.
    await other.getByRole('heading', { level: 1, name: 'Sign in' }).waitFor();

    await page.getByRole('button', { name: 'Remove: Una' }).click();
    await page.getByRole('button', { name: 'Remove Una' }).click();
    await page.getByText('Expected another grower to stay, got Una, the last one').waitFor();
    const complaints = [...grower.complaints, ...helper.complaints].filter(
      (text) => !/status of (401|409)/.test(text),
    );
    expect(complaints).toEqual([]);
    await helper.close();
    await grower.close();
  });

  test('signing out everywhere asks for a sign-in in every browser', {
    timeout: 60_000,
  }, async () => {
    const first = await openBrowser();
    const second = await openBrowser();
    for (const { page } of [first, second]) {
      await page.goto(`${hub.page}/set-up`);
      await page.getByLabel('Your name').fill('Una');
      await page.getByLabel('Password').fill(PASSWORD);
      await page.getByRole('button', { name: 'Sign in' }).click();
      await page.getByText('You are signed in as Una, grower.').waitFor();
    }
    await first.page.getByRole('button', { name: 'Sign out everywhere' }).click();
    for (const { page } of [first, second])
      await page.getByRole('heading', { level: 1, name: 'Sign in' }).waitFor();
    await first.close();
    await second.close();
  });
});
