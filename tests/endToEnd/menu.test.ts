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

// The menu, with as many pages as it will ever have: four in reach, the others behind "More".

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
  test.for([320, 360, 700, 704, 768, 1280])(
    'at %d px every page fits, under its heading, each with a place for a finger',
    { timeout: 60_000 },
    async (width) => {
      const { page, nav, complaints, close } = await open(width);
      expect(await nav.locator('a:visible').count()).toBe(4);
      await nav.locator('summary').click();
      await fitsItsWidth(page);
      const groups = nav.locator('.more-group');
      expect(await groups.count()).toBe(3);
      for (const group of await groups.all())
        expect(await group.getByRole('link').count()).toBeGreaterThan(1);
      const links = nav.locator('a:visible, summary:visible');
      expect(await links.count()).toBe((await nav.locator('a').count()) + 1);
      for (const link of await links.all()) {
        const box = await link.boundingBox();
        const name = (await link.textContent()) ?? '';
        expect.soft(box?.height, name).toBeGreaterThanOrEqual(44);
        expect.soft(box?.width, name).toBeGreaterThanOrEqual(24);
        expect.soft(box?.x, name).toBeGreaterThanOrEqual(0);
        expect.soft(box?.y, name).toBeGreaterThanOrEqual(0);
        expect.soft((box?.x ?? 0) + (box?.width ?? 0), name).toBeLessThanOrEqual(width);
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

  test('on a low phone the last of its pages can still be reached', {
    timeout: 60_000,
  }, async () => {
    const { page, nav, close } = await open(320);
    await page.setViewportSize({ width: 320, height: 480 });
    await nav.locator('summary').click();
    await nav.getByRole('link', { name: 'Set-up' }).click();
    await page.getByRole('heading', { level: 1, name: 'Set-up' }).waitFor();
    await close();
  });

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

  test('light or dark is as the device says until it is chosen, and is kept before anything is drawn', {
    timeout: 60_000,
  }, async () => {
    const { page, complaints, close } = await openBrowser({ scheme: 'dark' });
    // What the page stood in when its body began, before any of it was drawn.
    await page.addInitScript(
      "new MutationObserver(() => { if (document.body && !window.begun) window.begun = document.documentElement.dataset.scheme ?? 'none'; }).observe(document, { childList: true, subtree: true })",
    );
    const ground = () => page.evaluate<string>('getComputedStyle(document.body).backgroundColor');
    const begun = () => page.evaluate<string>('window.begun');
    const [PAPER, NIGHT] = ['rgb(246, 241, 230)', 'rgb(25, 23, 19)'];
    await page.goto(hub.page);
    const choice = page.getByRole('group', { name: 'This page, on this device' });
    await choice.waitFor();
    expect(await choice.getByRole('radio', { checked: true }).count()).toBe(1);
    expect(await choice.getByLabel('As the device').isChecked()).toBe(true);
    expect([await begun(), await ground()]).toEqual(['dark', NIGHT]);
    await page.emulateMedia({ colorScheme: 'light' });
    await expect.poll(ground, { timeout: 20_000 }).toBe(PAPER);

    await choice.getByLabel('Dark').check();
    await expect.poll(ground, { timeout: 20_000 }).toBe(NIGHT);
    await page.reload();
    await choice.waitFor();
    expect([await begun(), await ground()]).toEqual(['dark', NIGHT]);
    expect(await choice.getByLabel('Dark').isChecked()).toBe(true);
    await page.emulateMedia({ media: 'print' });
    await expect.poll(ground, { timeout: 20_000 }).toBe('rgb(255, 255, 255)');
    await page.emulateMedia({ media: 'screen' });
    await choice.getByLabel('As the device').check();
    await expect.poll(ground, { timeout: 20_000 }).toBe(PAPER);
    expect(complaints).toEqual([]);
    await close();
  });

  test('with the colours of the device, more contrast or less movement the page follows', {
    timeout: 60_000,
  }, async () => {
    const { page, complaints, close } = await open(360);
    const style = (name: string) =>
      page.evaluate<string>(
        `getComputedStyle(document.documentElement).getPropertyValue('${name}').trim()`,
      );
    const behaviour = () =>
      page.evaluate<string>('getComputedStyle(document.documentElement).scrollBehavior');
    expect(await behaviour()).toBe('auto'); // less movement is what this browser asks for
    await page.emulateMedia({ reducedMotion: 'no-preference' });
    expect(await behaviour()).toBe('smooth');
    await page.emulateMedia({ contrast: 'more' });
    expect(await style('--ink')).toBe('#000');
    await page.emulateMedia({ contrast: 'no-preference', forcedColors: 'active' });
    expect([await style('--ink'), await style('--heat'), await style('--paper')]).toEqual([
      'CanvasText',
      'CanvasText',
      'Canvas',
    ]);
    await fitsItsWidth(page);
    expect(await shutsOut(page)).toEqual([]);
    expect(complaints).toEqual([]);
    await close();
  });
});
