import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { screens } from '../../hub/words/index.ts';
import { contrastFaults } from './contrastFaults.ts';
import { axeFaults, geometryFaults, paperFaults } from './pageFaults.ts';
import { until } from './processes.ts';

const WIDTHS = [320, 360, 768, 1280] as const;
const HEIGHT = 740;
/** Outdoors, on paper, each text has 7 to 1 (WCAG 2.2, 1.4.6); in the dark 4.5 to 1 (1.4.3). */
const LEAST = { light: 7, dark: 4.5 } as const;
const SETTLED = `document.querySelector('h1') !== null && !document.querySelector('main').innerText.includes(${JSON.stringify(screens.state.asking)})`;
/** To be evaluated in the page: the way a link leads, without asking the hub for the page again. */
export const follow = (path: string) =>
  `(() => { const link = document.createElement('a'); link.href = ${JSON.stringify(path)}; document.body.append(link); link.click(); link.remove(); scrollTo(0, 0); })()`;
const OPEN_ALL = "document.querySelectorAll('main details').forEach((one) => (one.open = true))";

export const settled = (page: Page) =>
  until(() => page.evaluate<boolean>(SETTLED), `all of ${page.url()}`, 60_000);

/**
 * One page as somebody comes to it, by a link: at every width; on paper; then with everything opened, at
 * every width, light and dark; axe at the narrowest in light and the widest in dark, because what it
 * looks at (names, roles, order) changes with the layout only, and it takes longer than all the rest.
 * @returns sentences, none when all is well.
 */
export async function walkPage(page: Page, path: string): Promise<string[]> {
  const faults = new Set<string>();
  const tell = (where: string, found: readonly string[]) =>
    found.forEach((fault) => {
      faults.add(`${where}: ${fault}`);
    });
  await page.emulateMedia({ media: 'screen', colorScheme: 'light' });
  await page.setViewportSize({ width: 320, height: HEIGHT });
  await page.evaluate(follow(path));
  await settled(page);
  for (const width of WIDTHS) {
    await page.setViewportSize({ width, height: HEIGHT });
    tell(`${width} px`, await geometryFaults(page));
  }
  // Somebody prints in the dark: paper is white all the same.
  await page.emulateMedia({ colorScheme: 'dark' });
  const paper = await page.pdf({ format: 'A4' });
  expect(paper.subarray(0, 5).toString()).toBe('%PDF-');
  await page.emulateMedia({ media: 'print' });
  await page.setViewportSize({ width: 718, height: 1000 }); // A4 less its margins, at 96 px an inch
  tell('paper', await paperFaults(page));
  tell('paper', await contrastFaults(page, LEAST.light));
  await page.emulateMedia({ media: 'screen' });
  await page.evaluate(OPEN_ALL);
  await settled(page);
  for (const colorScheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme });
    // The page hears of it in a turn of its own.
    const worn = `document.documentElement.dataset.scheme === '${colorScheme}'`;
    await until(() => page.evaluate<boolean>(worn), `a page in the ${colorScheme}`);
    for (const width of WIDTHS) {
      await page.setViewportSize({ width, height: HEIGHT });
      tell(`${width} px, all open, ${colorScheme}`, await geometryFaults(page));
      if (width === 320 || width === 1280)
        tell(`${width} px, ${colorScheme}`, await contrastFaults(page, LEAST[colorScheme]));
      if (width === (colorScheme === 'light' ? 320 : 1280))
        tell(`${width} px, ${colorScheme}`, await axeFaults(page));
    }
  }
  return [...faults];
}
