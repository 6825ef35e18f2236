import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { screens } from '../../hub/words/index.ts';
import { hasChromium, needsChromium, type Opened, openBrowser } from './browser.ts';
import { type DemoHub, startDemoHub } from './demoHub.ts';
import { everyAddress } from './everyAddress.ts';
import { axeFaults, layoutFaults } from './pageFaults.ts';
import { until } from './processes.ts';

// Every page there is, with a season behind it: at every width, by day, in the dark and on paper. One
// hub and one browser for all of them.

const WIDTHS = [320, 360, 768, 1280] as const;
const OPEN_ALL = "document.querySelectorAll('main details').forEach((one) => (one.open = true))";
const SETTLED = `document.querySelector('h1') !== null && !document.querySelector('main').innerText.includes(${JSON.stringify(screens.state.asking)})`;

describe.skipIf(!hasChromium)(`every page in Chromium${needsChromium}`, () => {
  let demo: DemoHub;
  let opened: Opened;
  beforeAll(async () => {
    demo = await startDemoHub();
    opened = await openBrowser();
  }, 320_000);
  afterAll(async () => {
    await opened?.close();
    await demo?.kill();
  });

  test.for(everyAddress())(
    '%s shuts nobody out, at any width, by day and in the dark',
    {
      timeout: 240_000,
    },
    async (path) => {
      const { page, complaints } = opened;
      const had = complaints.length;
      const faults: string[] = [];
      const told = (where: string, found: readonly string[]) =>
        faults.push(...found.map((fault) => `${where}: ${fault}`));
      await page.emulateMedia({ media: 'screen', colorScheme: 'light' });
      await page.setViewportSize({ width: 360, height: 800 });
      await page.goto(demo.page + path, { waitUntil: 'load' });
      await until(() => page.evaluate<boolean>(SETTLED), `all of ${path}`, 90_000);
      // Pictures that are drawn when they come into view.
      await page.evaluate('window.scrollTo(0, document.body.scrollHeight)');
      await page.waitForTimeout(400);
      await page.evaluate('window.scrollTo(0, 0)');
      for (const width of WIDTHS) {
        await page.setViewportSize({ width, height: 800 });
        await page.waitForTimeout(100);
        told(`${width} px`, await layoutFaults(page));
      }
      told('1280 px, light', await axeFaults(page, 'light'));
      await page.setViewportSize({ width: 360, height: 800 });
      await page.evaluate(OPEN_ALL);
      await page.waitForTimeout(300);
      told('360 px, all open', await layoutFaults(page));
      told('360 px, light', await axeFaults(page, 'light'));
      await page.emulateMedia({ colorScheme: 'dark' });
      told('360 px, dark', await axeFaults(page, 'dark'));
      await page.emulateMedia({ colorScheme: 'light' });
      const paper = await page.pdf({ format: 'A4' });
      expect(paper.subarray(0, 5).toString()).toBe('%PDF-');
      expect(paper.length).toBeGreaterThan(3000);
      expect(faults).toEqual([]);
      expect(complaints.slice(had)).toEqual([]);
    },
  );

  test.for([
    { scheme: 'light', least: 7 },
    { scheme: 'dark', least: 4.5 },
  ] as const)('in $scheme every ink has $least to 1 on every paper', async ({ scheme, least }) => {
    const { page } = opened;
    await page.emulateMedia({ media: 'screen', colorScheme: scheme });
    await page.goto(demo.page);
    const colour = (name: string) =>
      page.evaluate<string>(
        `getComputedStyle(document.documentElement).getPropertyValue('--${name}').trim()`,
      );
    for (const ink of ['ink', 'soft', 'wet', 'heat', 'cold'])
      for (const paper of ['paper', 'sheet', 'night'])
        expect
          .soft(contrast(await colour(ink), await colour(paper)), `${ink} on ${paper}`)
          .toBeGreaterThanOrEqual(least);
  });
});

/** Relative luminance and contrast ratio as WCAG 2.2 defines them, of `#rrggbb`. */
function contrast(one: string, other: string): number {
  const [light = 0, dark = 0] = [one, other].map(luminance).sort((a, b) => b - a);
  return (light + 0.05) / (dark + 0.05);
}

function luminance(colour: string): number {
  const [red = 0, green = 0, blue = 0] = [1, 3, 5]
    .map((at) => Number.parseInt(colour.slice(at, at + 2), 16) / 255)
    .map((value) => (value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4));
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}
