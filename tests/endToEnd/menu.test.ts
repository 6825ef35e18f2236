import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import {
  fitsItsWidth,
  hasChromium,
  needsChromium,
  openBrowser,
  shutsOut,
  tabTo,
} from './browser.ts';
import { gardenFile } from './gardenFile.ts';
import { type HubProcess, startHub } from './hubProcess.ts';
import { tempFolder } from './processes.ts';

// The menu, with as many pages as it will ever have: four in reach, five behind "More".

const MORE = 'details.more';

describe.skipIf(!hasChromium)(`the menu, in Chromium${needsChromium}`, () => {
  let hub: HubProcess;
  beforeAll(async () => {
    const data = tempFolder();
    hub = await startHub({ data, farm: gardenFile(data), open: true });
  }, 60_000);
  afterAll(() => hub?.kill());

  const open = async (width: number) => {
    const browser = await openBrowser({ width });
    await browser.page.goto(hub.page);
    await browser.page.getByRole('heading', { level: 1, name: 'Today' }).waitFor();
    const nav = browser.page.getByRole('navigation', { name: 'Pages' });
    return { ...browser, nav };
  };
  /** Fills the menu with stand-ins, as wide as the words that other pages will bring. */
  const FILL = `
    const nav = document.querySelector('nav.menu');
    const more = document.querySelector('.more-pages');
    const near = nav.querySelector(':scope > a');
    const put = (into, word, before) => {
      const link = near.cloneNode();
      link.removeAttribute('aria-current');
      link.textContent = word;
      into.insertBefore(link, before);
    };
    const wanted = ['Today', 'Places', 'Batches', 'Cool room'];
    for (const link of [...nav.querySelectorAll('a')]) link.remove();
    const last = more ? nav.querySelector('details') : null;
    for (const word of wanted) put(nav, word, last);
    for (const word of ['Frost', 'Losses', 'Probes', 'Alarms']) put(more ?? nav, word, more ? more.firstChild : null);
    put(more ?? nav, 'Set-up', null);
  `;

  test.for([320, 360, 700, 704, 1280])(
    'at %d px nine pages fit, each with a place for a finger',
    { timeout: 60_000 },
    async (width) => {
      const { page, nav, complaints, close } = await open(width);
      await page.evaluate(FILL);
      const phone = width < 704;
      expect(await nav.locator(MORE).count()).toBe(phone ? 1 : 0);
      if (phone) await nav.locator('summary').click();
      await fitsItsWidth(page);
      const links = nav.locator('a:visible, summary:visible');
      expect(await links.count()).toBe(phone ? 10 : 9);
      for (const link of await links.all()) {
        const box = await link.boundingBox();
        expect.soft(box?.height, (await link.textContent()) ?? '').toBeGreaterThanOrEqual(44);
        expect.soft(box?.width, (await link.textContent()) ?? '').toBeGreaterThanOrEqual(24);
        expect.soft(box?.x).toBeGreaterThanOrEqual(0);
        expect.soft(box?.y).toBeGreaterThanOrEqual(0);
        expect.soft((box?.x ?? 0) + (box?.width ?? 0)).toBeLessThanOrEqual(width);
      }
      const cut = await page.evaluate<string[]>(
        "[...document.querySelectorAll('nav.menu a, nav.menu summary')].filter((one) => one.scrollWidth > one.clientWidth + 1).map((one) => one.textContent)",
      );
      expect(cut).toEqual([]);
      expect(await shutsOut(page)).toEqual([]);
      expect(complaints).toEqual([]);
      await close();
    },
  );

  test('"More" opens and shuts by keyboard, says whether it is open, and leads on', {
    timeout: 60_000,
  }, async () => {
    const { page, nav, complaints, close } = await open(360);
    const isOpen = () => page.evaluate<boolean>(`document.querySelector('${MORE}').open`);
    await tabTo(page, 'summary');
    await page.keyboard.press('Enter');
    expect(await isOpen()).toBe(true);
    await page.keyboard.press('Escape');
    expect(await isOpen()).toBe(false);
    expect(await page.evaluate("document.activeElement.matches('summary')")).toBe(true);
    await page.keyboard.press('Enter');
    await tabTo(page, 'a[href="/set-up"]');
    await page.keyboard.press('Enter');
    await page.getByRole('heading', { level: 1, name: 'Set-up' }).waitFor();
    expect(await isOpen()).toBe(false);
    expect(await nav.locator('summary').textContent()).toContain('(this page is among them)');
    await nav.locator('summary').click();
    expect(await nav.locator('[aria-current=page]').textContent()).toBe('Set-up');
    await page.getByRole('heading', { level: 1 }).click();
    await nav.getByRole('link', { name: 'Today' }).click();
    await page.getByRole('heading', { level: 1, name: 'Today' }).waitFor();
    expect(await isOpen()).toBe(false);
    expect(complaints).toEqual([]);
    await close();
  });

  test('a window that is made wider shows all pages in one row', { timeout: 60_000 }, async () => {
    const { page, nav, close } = await open(360);
    expect(await nav.getByRole('link', { name: 'Set-up' }).isVisible()).toBe(false);
    await page.setViewportSize({ width: 900, height: 700 });
    await nav.getByRole('link', { name: 'Set-up' }).waitFor();
    expect(await nav.locator(MORE).count()).toBe(0);
    await close();
  });
});
