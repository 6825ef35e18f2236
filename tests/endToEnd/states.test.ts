import type { Page, Route } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { screens } from '../../hub/words/index.ts';
import { hasChromium, needsChromium, type Opened, openBrowser } from './browser.ts';
import { everyAddress } from './everyAddress.ts';
import { gardenFile } from './gardenFile.ts';
import { type HubProcess, startHub } from './hubProcess.ts';
import { geometryFaults } from './pageFaults.ts';
import { tempFolder, until } from './processes.ts';
import { follow, settled } from './walkPage.ts';

// How each page is when there is nothing yet, while the hub takes its time, when it fails, and when it
// has come round. A farm that was described a moment ago and whose probes have said nothing.

/** Asked for by the frame, before any page; and what stays open. */
const FRAME = /\/api\/(first|events|alarms)$/;
const { state } = screens;
/** Pages that ask the hub for nothing of their own. */
const ASK_NOTHING = ['/set-up', '/sign-in'];
/** Says what the frame knows already; an answer that fails makes it old, not empty. */
const KNOW_TODAY = ['/', '/places'];

describe.skipIf(!hasChromium)(`states of the pages in Chromium${needsChromium}`, () => {
  let hub: HubProcess;
  let opened: Opened;
  const all = everyAddress();
  const main = (page: Page) => page.evaluate<string>("document.querySelector('main').innerText");
  beforeAll(async () => {
    const data = tempFolder();
    hub = await startHub({ data, farm: gardenFile(data), open: true });
    opened = await openBrowser({ width: 320 });
    await opened.page.goto(hub.page);
    await settled(opened.page);
  }, 120_000);
  afterAll(() => opened?.close());

  const intercepted = async (page: Page, how: (route: Route) => Promise<void>) => {
    await page.route('**/api/**', (route) =>
      FRAME.test(new URL(route.request().url()).pathname) ? route.continue() : how(route),
    );
  };

  test('with nothing measured yet each page says so in words, and nothing is wrong with it', {
    timeout: 120_000,
  }, async () => {
    const { page, complaints } = opened;
    const faults: string[] = [];
    for (const path of all) {
      await page.evaluate(follow(path));
      await settled(page);
      const said = await main(page);
      if (said.length < 40) faults.push(`${path} says no more than "${said}"`);
      if (/NaN|undefined|Infinity|\[object/.test(said)) faults.push(`${path} says "${said}"`);
      for (const fault of await geometryFaults(page)) faults.push(`${path} ${fault}`);
    }
    expect(faults).toEqual([]);
    expect(complaints).toEqual([]);
  });

  test('while the hub takes its time each page says that it asks, under its own heading', {
    timeout: 120_000,
  }, async () => {
    const { page, close } = await openBrowser({ width: 320 });
    await intercepted(page, () => new Promise(() => {})); // never
    const faults: string[] = [];
    await page.goto(hub.page);
    await page.locator('h1').waitFor();
    for (const path of all) {
      await page.evaluate(follow(path));
      const waits = async () => (await main(page)).includes(state.asking);
      const may = KNOW_TODAY.includes(path) || ASK_NOTHING.includes(path);
      if (!may) await until(waits, `${path} to say that it asks`, 20_000);
      if ((await page.locator('h1').count()) !== 1) faults.push(`${path} has no heading`);
      for (const fault of await geometryFaults(page)) faults.push(`${path} ${fault}`);
    }
    expect(faults).toEqual([]);
    await close();
  });

  test('when the hub fails each page says why and offers to try again, which brings it round', {
    timeout: 240_000,
  }, async () => {
    const { page, close } = await openBrowser({ width: 320 });
    const faults: string[] = [];
    let fails = true;
    await intercepted(page, (route) =>
      fails
        ? route.fulfill({ status: 500, json: { error: 'the card is being mended' } })
        : route.continue(),
    );
    for (const path of all.filter((one) => !ASK_NOTHING.includes(one))) {
      fails = true;
      if (page.url() === 'about:blank' || KNOW_TODAY.includes(path))
        await page.goto(hub.page + path);
      else await page.evaluate(follow(path));
      const failed = page.locator('main').getByText('the card is being mended').first();
      await failed
        .waitFor({ timeout: 20_000 })
        .catch(() => faults.push(`${path} says nothing of it`));
      const again = page.locator('main').getByRole('button', { name: state.tryAgain });
      if ((await again.count()) === 0) faults.push(`${path} has no way to try again`);
      for (const fault of await geometryFaults(page)) faults.push(`${path} ${fault}`);
      fails = false;
      for (let i = 0; i < 8 && (await again.count()) > 0; i++) {
        await again
          .first()
          .click({ timeout: 5_000 })
          .catch(() => {});
        await page.waitForTimeout(60);
      }
      await until(async () => (await failed.count()) === 0, `${path} to come round`, 20_000).catch(
        () => faults.push(`${path} does not come round`),
      );
    }
    expect(faults).toEqual([]);
    await close();
  });

  test('before anything is known a hub that fails is said on every page', {
    timeout: 60_000,
  }, async () => {
    const { page, close } = await openBrowser({ width: 320 });
    await page.route('**/api/**', (route) => route.fulfill({ status: 500, json: {} }));
    await page.goto(hub.page);
    await page.locator('.banner').getByText(screens.link.again, { exact: false }).waitFor();
    expect(await geometryFaults(page)).toEqual([]);
    await page.unrouteAll({ behavior: 'ignoreErrors' });
    await page.getByRole('button', { name: screens.link.now }).click();
    await page.getByRole('heading', { name: screens.today.tasks }).waitFor();
    await close();
  });
});
