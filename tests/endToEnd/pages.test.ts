import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import {
  fitsItsWidth,
  hasChromium,
  type Look,
  needsChromium,
  openBrowser,
  shutsOut,
} from './browser.ts';
import { type SeasonHub, startSeasonHub } from './seasonHub.ts';

// Every page, as somebody opens it on a phone or at a desk, by day or in the dark, and on paper.

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

const looks: readonly Required<Pick<Look, 'width' | 'scheme'>>[] = [
  { width: 360, scheme: 'light' },
  { width: 360, scheme: 'dark' },
  { width: 1280, scheme: 'light' },
  { width: 1280, scheme: 'dark' },
];

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

  test.for(looks)(
    'at $width px, $scheme, no page shuts anybody out or has to be scrolled sideways',
    { timeout: 90_000 },
    async (look) => {
      const { page, complaints, close } = await openBrowser(look);
      const faults: string[] = [];
      for (const one of pages) {
        await open(page, one);
        await fitsItsWidth(page);
        await page.evaluate(
          "document.querySelectorAll('details').forEach((one) => (one.open = true))",
        );
        await fitsItsWidth(page);
        for (const fault of await shutsOut(page)) faults.push(`${one.path}: ${fault}`);
      }
      expect(faults).toEqual([]);
      expect(complaints).toEqual([]);
      await close();
    },
  );

  test('at 320 px, and at twice the size of text, nothing has to be scrolled sideways', {
    timeout: 60_000,
  }, async () => {
    const { page, complaints, close } = await openBrowser({ width: 320 });
    for (const one of pages) {
      await open(page, one);
      await fitsItsWidth(page);
    }
    await page.setViewportSize({ width: 640, height: 900 });
    for (const one of pages) {
      await open(page, one);
      await page.evaluate("document.documentElement.style.fontSize = '200%'");
      await fitsItsWidth(page);
    }
    expect(complaints).toEqual([]);
    await close();
  });

  test('every page goes onto paper, without its buttons and menu', {
    timeout: 60_000,
  }, async () => {
    const { page, complaints, close } = await openBrowser({ width: 1280 });
    for (const one of pages) {
      await open(page, one);
      const paper = await page.pdf({ format: 'A4' });
      expect(paper.subarray(0, 5).toString()).toBe('%PDF-');
      expect(paper.length, one.path).toBeGreaterThan(3000);
      await page.emulateMedia({ media: 'print' });
      await page.setViewportSize({ width: 718, height: 1000 }); // A4 less its margins, at 96 px an inch
      await fitsItsWidth(page);
      for (const hidden of ['nav', 'button'])
        expect(await page.locator(`${hidden}:visible`).count(), `${hidden} of ${one.path}`).toBe(0);
      await page.emulateMedia({ media: 'screen' });
      await page.setViewportSize({ width: 1280, height: 800 });
    }
    expect(complaints).toEqual([]);
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
