import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { fitsItsWidth, hasChromium, needsChromium, openBrowser } from './browser.ts';
import { type SeasonHub, startSeasonHub } from './seasonHub.ts';

// Pages at twice the size of text, addresses that lead nowhere, the menu. At every width, in the dark and on
// paper they are looked at where the demonstration runs.

const pages = [
  { path: '/', shows: 'To do' },
  { path: '/places', shows: 'Hollow House' },
  { path: '/places/long-house', shows: 'The last 30 days' },
  { path: '/places/cool-room', shows: 'The last 30 days' },
  { path: '/frost', shows: 'Covers now' },
  { path: '/cool-room', shows: 'The record of this week' },
  { path: '/cool-room/record', shows: 'Times without readings' },
  { path: '/batches', shows: 'What grows now' },
  { path: '/probes', shows: 'Not placed yet' },
] as const;

describe.skipIf(!hasChromium)(`pages in Chromium${needsChromium}`, () => {
  let season: SeasonHub;
  beforeAll(async () => {
    season = await startSeasonHub();
  }, 120_000);
  afterAll(() => season?.kill());

  const open = async (page: Page, { path, shows }: (typeof pages)[number]) => {
    await page.goto(season.page + path);
    await page.getByText(shows, { exact: true }).first().waitFor();
    // Pictures that are drawn when they come into view.
    await page.evaluate('window.scrollTo(0, document.body.scrollHeight)');
    await page.waitForTimeout(300);
    await page.evaluate('window.scrollTo(0, 0)');
  };

  test('at twice the size of text nothing has to be scrolled sideways', {
    timeout: 60_000,
  }, async () => {
    const { page, complaints, close } = await openBrowser({ width: 640, height: 900 });
    for (const one of pages) {
      await open(page, one);
      await page.evaluate("document.documentElement.style.fontSize = '200%'");
      await fitsItsWidth(page);
    }
    expect(complaints).toEqual([]);
    await close();
  });

  test('a phone that has nothing yet gets Today in one round: a browser asks for six files at a time', async () => {
    const { page, close } = await openBrowser({ width: 360, height: 740 });
    const asked: string[] = [];
    page.on('request', (request) => {
      const { pathname } = new URL(request.url());
      if (/[.](?:js|css)$/.test(pathname)) asked.push(pathname);
    });
    await page.goto(season.page);
    await page.getByText('To do', { exact: true }).first().waitFor();
    expect(asked.some((path) => path.startsWith('/assets/en-'))).toBe(true);
    expect(asked.length).toBeLessThan(6); // one is left for the first question
    expect(new Set(asked).size).toBe(asked.length);
    await close();
  });

  test.for([
    { path: '/places/attic', shows: 'No such place on this farm.' },
    { path: '/nowhere', shows: 'No such page' },
    { path: '/places/%zz', shows: 'No such page' },
  ])('$path says that it leads nowhere', { timeout: 60_000 }, async ({ path, shows }) => {
    const { page, complaints, close } = await openBrowser();
    await page.goto(season.page + path);
    await page.getByRole('heading', { level: 1, name: shows }).waitFor({ timeout: 5_000 });
    await page
      .getByRole('link', { name: path.startsWith('/places/a') ? 'All places' : 'Go to Today' })
      .click();
    await page.getByRole('heading', { level: 1, name: /Places|Today/ }).waitFor();
    expect(complaints).toEqual([]);
    await close();
  });

  test('the menu leads to every page without asking the hub for the page again', {
    timeout: 60_000,
  }, async () => {
    const { page, complaints, close } = await openBrowser();
    await page.goto(season.page);
    await page.getByRole('heading', { name: 'To do' }).waitFor();
    await page.evaluate("window.name = 'the same page'");
    const menu = page.getByRole('navigation', { name: 'Pages' });
    for (const name of ['Places', 'Cool room', 'Frost', 'Today']) {
      await menu.getByRole('link', { name }).click();
      await page.getByRole('heading', { level: 1, name }).waitFor();
      expect(await menu.locator('[aria-current=page]').textContent()).toBe(name);
      expect(await page.title()).toContain(name);
    }
    await page.goBack();
    await page.getByRole('heading', { level: 1, name: 'Frost' }).waitFor();
    expect(await page.evaluate('window.name')).toBe('the same page');
    expect(complaints).toEqual([]);
    await close();
  });
});
