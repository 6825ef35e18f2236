import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Batch } from '../../hub/contract/index.ts';
import { startBatchesHub } from './batchesHub.ts';
import { fitsItsWidth, hasChromium, needsChromium, openBrowser, shutsOut } from './browser.ts';
import type { HubProcess } from './hubProcess.ts';

// The page of batches as a whole: files, narrow and wide windows, and a hub that is away.

describe.skipIf(!hasChromium)(`the whole page of batches in Chromium${needsChromium}`, () => {
  let hub: HubProcess;
  beforeAll(async () => {
    hub = await startBatchesHub();
  }, 120_000);
  afterAll(() => hub?.kill());

  const list = () => hub.get<Batch[]>('/api/batches');
  const open = async (page: Page, path = '/batches') => {
    await page.goto(hub.page + path);
    await page.locator('.batch').first().waitFor();
  };

  test('a file is looked at before it is entered, and entered once', {
    timeout: 120_000,
  }, async () => {
    const { page, complaints, close } = await openBrowser();
    await open(page);
    const csv = 'crop,trays,sown,place\nbasil,3,2026-04-20,outside\nkale,3,2026-04-20,outside\n';
    const file = { name: 'trays.csv', mimeType: 'text/csv', buffer: Buffer.from(csv) };
    const before = (await list()).length;
    const choose = () => page.getByLabel('Take in a file (CSV)').setInputFiles(file);
    await choose();
    await page.getByText('It would enter 1 entry for 1 batch.').waitFor();
    await page.getByText(/^line 3: Expected one of basil, .+ in crop, got "kale"$/).waitFor();
    expect(await list()).toHaveLength(before);
    await page.getByRole('button', { name: 'Enter it' }).click();
    await page.getByText('The hub has stored 1 entry for 1 batch.').waitFor();
    expect(await list()).toHaveLength(before + 1);
    await page.reload();
    await page.locator('.batch').first().waitFor();
    await choose();
    await page.getByText('The file has nothing new for the hub.').waitFor();
    expect(complaints).toEqual([]);
    await close();
  });

  test.for([
    { width: 320, scheme: 'light' },
    { width: 360, scheme: 'dark' },
    { width: 1280, scheme: 'light' },
  ] as const)(
    'at $width px, $scheme, with every form open nobody is shut out',
    { timeout: 120_000 },
    async ({ width, scheme }) => {
      const { page, complaints, close } = await openBrowser({ width, scheme });
      await open(page);
      await page.getByRole('form', { name: 'Sow a batch' }).getByRole('button').first().click();
      for (const [i, name] of ['Move', 'Cut', 'Note', 'Throw out', 'More'].entries())
        await page
          .locator('.batch')
          .nth(i)
          .getByRole('button', { name: new RegExp(`^${name}`) })
          .first()
          .click();
      await page.evaluate(
        "document.querySelectorAll('details').forEach((one) => (one.open = true))",
      );
      await page.locator('.batch-past li').first().waitFor();
      await fitsItsWidth(page);
      expect(await shutsOut(page)).toEqual([]);
      await open(page, '/batches?show=ended');
      await page.getByRole('heading', { level: 1, name: 'Batches that have ended' }).waitFor();
      await fitsItsWidth(page);
      await page.goto(`${hub.page}/places/long-house`);
      await page.getByRole('heading', { name: 'What stands here' }).waitFor();
      await fitsItsWidth(page);
      expect(complaints).toEqual([]);
      await close();
    },
  );

  test('when the hub is away the page says so, and what was typed waits', {
    timeout: 120_000,
  }, async () => {
    const { page, close } = await openBrowser();
    await open(page);
    await page.route('**/api/batches/*', (route) => route.abort());
    const mine = page.locator('.batch').first();
    await mine.getByRole('button', { name: /^Cut/ }).click();
    await mine.getByLabel('Weight in kg').fill('2');
    await mine.getByRole('button', { name: 'Store it' }).click();
    await page.getByText('1 entry waits to be sent.').waitFor();
    expect(await page.getByText(/The hub has stored/).count()).toBe(0);
    await page.unrouteAll({ behavior: 'wait' });
    await page.locator('#waiting').waitFor({ state: 'hidden', timeout: 45_000 });
    await page.route('**/api/batches**', (route) => route.abort());
    await page.reload();
    await page
      .getByText(/^The hub did not answer for all of this page\. What you see is up to .+ old\.$/)
      .waitFor();
    await page.locator('.batch').first().waitFor();
    await page.unrouteAll({ behavior: 'wait' });
    await page.getByRole('button', { name: 'Try now' }).click();
    await page.getByText(/^The hub did not answer/).waitFor({ state: 'detached' });
    await close();
  });
});
