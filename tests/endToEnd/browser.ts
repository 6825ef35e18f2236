import { AxeBuilder } from '@axe-core/playwright';
import { type Browser, type BrowserContext, chromium, type Page } from 'playwright-core';
import { afterAll, expect } from 'vitest';
import { executable } from './processes.ts';

// The pages in a real browser, with everything it complains of written down.

const program = executable('chromium');
export const hasChromium = program !== undefined;
export const needsChromium = hasChromium ? '' : ' (skipped: chromium is missing)';

const ARGS = [
  '--headless',
  '--no-sandbox',
  '--disable-gpu',
  '--disable-background-networking',
  '--disable-quic',
  '--no-first-run',
  '--disable-sync',
  '--disable-component-update',
];

let browser: Promise<Browser> | undefined;
afterAll(async () => {
  await (await browser)?.close();
});

export type Look = {
  readonly width?: number;
  readonly height?: number;
  readonly scheme?: 'light' | 'dark';
  readonly touch?: boolean;
};
export type Opened = {
  readonly page: Page;
  readonly context: BrowserContext;
  /** Errors on the console, exceptions and refusals of the content security policy. */
  readonly complaints: readonly string[];
  readonly close: () => Promise<void>;
};

/** A browser of its own for one person: nothing kept from before. */
export async function openBrowser({
  width = 360,
  height = 800,
  scheme = 'light',
  touch = false,
}: Look = {}) {
  browser ??= chromium.launch({ executablePath: program ?? '', args: ARGS });
  const context = await (await browser).newContext({
    viewport: { width, height },
    colorScheme: scheme,
    hasTouch: touch,
    reducedMotion: 'reduce',
    timezoneId: 'America/Los_Angeles', // the farm's own time is shown, wherever the browser is
  });
  const complaints: string[] = [];
  const page = await context.newPage();
  page.setDefaultTimeout(20_000);
  page.on('console', (message) => {
    if (message.type() === 'error' || /content security policy/i.test(message.text()))
      complaints.push(`${message.text()} ${message.location().url}`);
  });
  page.on('pageerror', (error) => complaints.push(`thrown: ${error.message}`));
  return { page, context, complaints, close: () => context.close() } satisfies Opened;
}

/** What axe finds that shuts somebody out, each with the first part of the page it concerns. */
export async function shutsOut(page: Page): Promise<string[]> {
  const { violations } = await new AxeBuilder({ page })
    .withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'])
    .analyze();
  return violations
    .filter(({ impact }) => impact === 'serious' || impact === 'critical')
    .map(({ id, help, nodes }) => `${id}: ${help}: ${nodes[0]?.target.join(' ')}`);
}

// What runs inside the page is given as text: the tests' own types know no browser.

/** Nothing has to be scrolled sideways to be read. */
export async function fitsItsWidth(page: Page) {
  const root = 'document.documentElement';
  const wide = await page.evaluate<number>(`${root}.scrollWidth`);
  const view = await page.evaluate<number>(`${root}.clientWidth`);
  expect
    .soft(wide, `${page.url()} is ${wide} px wide in a window of ${view}`)
    .toBeLessThanOrEqual(view);
}

/** Presses Tab until an element has the focus; one that a keyboard cannot reach is a fault. */
export async function tabTo(page: Page, selector: string, most = 120) {
  const there = `document.activeElement?.matches(${JSON.stringify(selector)}) ?? false`;
  for (let i = 0; i < most; i++) {
    await page.keyboard.press('Tab');
    if (await page.evaluate<boolean>(there)) return;
  }
  throw new Error(`Expected Tab to reach ${selector} within ${most} presses, got nowhere`);
}
