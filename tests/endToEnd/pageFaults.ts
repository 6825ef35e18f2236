import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from 'playwright-core';

// What can be measured of a page as it stands: what runs inside it is given as text, because the
// tests' own types know no browser.

/** Texts that lie on one another, fingers' places that are too small, what is wider than the window. */
const LAYOUT = `(() => {
  const faults = [];
  const root = document.documentElement;
  if (root.scrollWidth > root.clientWidth)
    faults.push('is ' + root.scrollWidth + ' px wide in a window of ' + root.clientWidth);
  const short = (text) => text.trim().replace(/\\s+/g, ' ').slice(0, 40);
  const say = (one) => one.tagName.toLowerCase() + (one.className && one.className.baseVal === undefined ? '.' + one.className : '') + ' "' + short(one.textContent) + '"';

  // The menu of a phone and what a list scrolls away lie over or under other text on purpose.
  const APART = '.unseen, .skip, nav, [aria-hidden=true] [aria-hidden=true], option, .scrolled';
  const texts = [];
  const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  while (walker.nextNode()) {
    const node = walker.currentNode;
    const holder = node.parentElement;
    if (!node.data.trim() || holder.closest(APART) || !holder.checkVisibility({ visibilityProperty: true, opacityProperty: true })) continue;
    const range = document.createRange();
    range.selectNodeContents(node);
    for (const { left, right, top, bottom } of range.getClientRects()) {
      // Above and below its letters a line of text has air.
      const air = (bottom - top) * 0.25;
      if (right - left > 2) texts.push({ node, left: left + 1, right: right - 1, top: top + air, bottom: bottom - air });
    }
  }
  texts.sort((a, b) => a.top - b.top);
  for (let i = 0; i < texts.length; i++) {
    const a = texts[i];
    for (let j = i + 1; j < texts.length && texts[j].top < a.bottom; j++) {
      const b = texts[j];
      if (a.node !== b.node && a.left < b.right && b.left < a.right)
        faults.push('"' + short(a.node.data) + '" lies on "' + short(b.node.data) + '"');
    }
  }

  // Ours: 44 px high for what is no link within text; WCAG 2.2, 2.5.8 is what axe looks at.
  for (const one of document.querySelectorAll('button, summary, select, input, textarea, nav a')) {
    if (!one.checkVisibility({ visibilityProperty: true }) || one.closest('.unseen')) continue;
    const whole = one.matches('[type=checkbox], [type=radio], [type=file], .unseen') ? (one.closest('label') ?? one) : one;
    const { width, height } = whole.getBoundingClientRect();
    if (height < 43.5 || width < 24) faults.push(say(one) + ' is ' + Math.round(width) + ' by ' + Math.round(height) + ' px');
  }

  // Each picture has a name, and what it shows stands near it in words or in a table.
  for (const picture of document.querySelectorAll('svg, canvas, img, div[role=img]')) {
    // What is drawn inside a named picture is a part of it.
    if (picture.closest('[aria-hidden=true]') || picture.parentElement.closest('[role=img]') || !picture.checkVisibility()) continue;
    const role = picture.getAttribute('role');
    const name = picture.getAttribute('aria-label') || picture.getAttribute('aria-labelledby') || picture.getAttribute('alt') || picture.querySelector('title')?.textContent;
    if (picture.tagName !== 'IMG' && role !== 'img') faults.push('a picture is neither named nor hidden: ' + picture.outerHTML.slice(0, 80));
    else if (!name) faults.push('a picture has no name: ' + picture.outerHTML.slice(0, 80));
    let near = picture.parentElement;
    const tells = (box) => box.querySelector('table') || [...box.querySelectorAll('p, li, figcaption, dd')].some((one) => one.textContent.trim().length > 15);
    for (let up = 0; near && up < 4 && !tells(near); up++) near = near.parentElement;
    if (!near || !tells(near)) faults.push('a picture has no words near it: ' + name);
  }
  const first = document.querySelectorAll('h1').length;
  if (first !== 1) faults.push('has ' + first + ' first headings');
  return [...new Set(faults)];
})()`;

export const layoutFaults = (page: Page) => page.evaluate<string[]>(LAYOUT);

/** Everything axe finds, contrast of 7 to 1 by daylight (WCAG 2.2, 1.4.6) included. */
export async function axeFaults(page: Page, scheme: 'light' | 'dark'): Promise<string[]> {
  const { violations } = await new AxeBuilder({ page })
    .options({
      runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'],
      rules: { 'color-contrast-enhanced': { enabled: scheme === 'light' } },
      resultTypes: ['violations'],
    })
    .analyze();
  return violations.flatMap(({ id, nodes }) =>
    nodes
      .slice(0, 3)
      .map(({ target, any }) => `${id}: ${target.join(' ')} ${any[0]?.message ?? ''}`),
  );
}
