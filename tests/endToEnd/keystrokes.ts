import type { Page } from 'playwright-core';

// Keystroke-level model, Card, Moran & Newell 1980, CACM 23:396 (operator times from memory): an
// estimate of an unhurried person who knows what to type, not a measurement of anybody.
const SECONDS = {
  /** One key; an average typist. */
  K: 0.28,
  /** Pointing at something. */
  P: 1.1,
  /** Making up one's mind; once for every field and every button. Ours: once each. */
  M: 1.35,
  /** A hand from the keys to the pointer, or back. */
  H: 0.4,
};

/** A person at a page: taps and keys are counted while they are made. */
export function keystrokes(page: Page) {
  let taps = 0;
  let keys = 0;
  const begun = Date.now();
  return {
    async tap(name: string | RegExp, role: 'button' | 'link' = 'button') {
      await page
        .getByRole(role, { name, exact: typeof name === 'string' })
        .first()
        .click();
      taps++;
    },
    async type(label: string, text: string) {
      await page.getByLabel(label, { exact: true }).fill(text);
      taps++;
      keys += text.length;
    },
    /** Opening a list and taking one of it are two taps. */
    async choose(label: string, option: string) {
      // A label round its list: its text goes on with that of the options.
      const round = page.locator('label', { hasText: new RegExp(`^${label}`) }).locator('select');
      await page.getByLabel(label, { exact: true }).or(round).first().selectOption(option);
      taps += 2;
    },
    /** Opens what is folded away. */
    async fold(name: string) {
      await page.locator('summary', { hasText: name }).click();
      taps++;
    },
    /** A tap into a picture, at a share of its width and height. */
    async point(selector: string, across: number, down: number) {
      const box = await page.locator(selector).boundingBox();
      if (!box) throw new Error(`Expected ${selector} on the page, got nothing`);
      await page.mouse.click(box.x + box.width * across, box.y + box.height * down);
      taps++;
    },
    counts: () => ({
      taps,
      keys,
      seconds: (Date.now() - begun) / 1000,
      estimate: taps * (SECONDS.M + SECONDS.P + SECONDS.K + SECONDS.H) + keys * SECONDS.K,
    }),
  };
}
