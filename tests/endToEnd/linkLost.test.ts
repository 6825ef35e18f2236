import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Today } from '../../hub/contract/index.ts';
import { hasChromium, needsChromium, type Opened, openBrowser, shutsOut } from './browser.ts';
import { until } from './processes.ts';
import { type SeasonHub, startSeasonHub } from './seasonHub.ts';

// The hub goes away under an open page, and comes back.

const LOST =
  /^No link to the hub since \d\d:\d\d\. What you see is .+ old\. Trying again by itself\.$/;

describe.skipIf(!hasChromium)(`a page without its hub, in Chromium${needsChromium}`, () => {
  let season: SeasonHub;
  let opened: Opened;
  beforeAll(async () => {
    season = await startSeasonHub();
    opened = await openBrowser();
  }, 120_000);
  afterAll(() => season?.kill());

  test('a lost hub is said at once and plainly, and the page stays readable', {
    timeout: 60_000,
  }, async () => {
    const { page } = opened;
    await page.goto(season.page);
    await page.getByRole('heading', { name: 'To do' }).waitFor();
    // The page keeps itself for such a time; wait until it has.
    await page.evaluate('navigator.serviceWorker.ready.then(() => true)');
    await page.reload();
    await page.getByRole('heading', { name: 'To do' }).waitFor();
    expect(await page.getByText(/No link to the hub/).count()).toBe(0);
    expect(opened.complaints).toEqual([]);

    await season.kill();
    await page.getByText(LOST).waitFor({ timeout: 10_000 });
    expect(await shutsOut(page)).toEqual([]);
    expect(await page.locator('article.task').count()).toBeGreaterThan(3);
  });

  test('an answer given meanwhile waits, is never said to be stored, and the task stays', {
    timeout: 60_000,
  }, async () => {
    const { page } = opened;
    const card = page.locator('article.task').first();
    const title = await card.getByRole('heading').textContent();
    await card.getByRole('button', { name: /^Done/ }).click();
    await card.getByText('Done: waits to be sent, not stored yet.').waitFor();
    await page.getByText('1 entry waits to be sent.').waitFor();
    expect(await shutsOut(page)).toEqual([]);
    expect(await card.getByRole('heading').textContent()).toBe(title);
    expect(await page.getByText(/The hub has stored/).count()).toBe(0);
  });

  test('reloading while the hub is away shows the last Today with its age', {
    timeout: 60_000,
  }, async () => {
    const { page } = opened;
    const sentence = await page.locator('.sentence').textContent();
    await page.reload();
    await page.getByText(LOST).waitFor();
    expect(await page.locator('.sentence').textContent()).toBe(sentence);
    expect(await page.getByText(/^As of 15:4\d|^As of 15:5\d/).textContent()).toMatch(
      /just now|minutes? ago/,
    );
    expect(await page.locator('article.task').count()).toBeGreaterThan(3);
    expect(await page.locator('svg').count()).toBeGreaterThan(3);
    await page.getByRole('navigation').getByRole('link', { name: 'Places' }).click();
    await page.getByRole('link', { name: 'Hollow House' }).waitFor();
    await page.getByRole('navigation').getByRole('link', { name: 'Today' }).click();
  });

  test('when the hub is back the banner goes by itself, and the page works again', {
    timeout: 90_000,
  }, async () => {
    const { page } = opened;
    await season.restart();
    await page.getByText(/No link to the hub/).waitFor({ state: 'detached', timeout: 45_000 });
    const { tasks } = await season.hub().get<Today>('/api/today');
    await page.locator('#waiting').waitFor({ state: 'hidden', timeout: 45_000 });
    const cards = page.locator('article.task');
    await until(async () => (await cards.count()) === tasks.length, 'a card for each task');
    const card = page.locator('article.task').last();
    const title = (await card.getByRole('heading').textContent()) ?? '';
    await card.getByRole('button', { name: /^Done/ }).click();
    await page.getByText(`The hub has stored: ${title}: Done.`).waitFor();
    // Only what the browser itself says of a hub that is away.
    const others = opened.complaints.filter((text) => !/ERR_CONNECTION|ERR_INCOMPLETE/.test(text));
    expect(others).toEqual([]);
    await opened.close();
  });
});
