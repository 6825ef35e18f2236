import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from 'playwright-core';

// What can be measured of a page as it stands. What runs inside it is given as text.

const GEOMETRY = `(() => {
  const faults = [];
  const root = document.documentElement;
  if (root.scrollWidth > root.clientWidth)
    faults.push('is ' + root.scrollWidth + ' px wide in a window of ' + root.clientWidth);
  const short = (text) => text.trim().replace(/\\s+/g, ' ').slice(0, 40);
  const say = (one) => one.tagName.toLowerCase() + (one.getAttribute('class') ? '.' + one.getAttribute('class') : '') + ' "' + short(one.textContent) + '"';
  const seen = (one) => one.checkVisibility({ visibilityProperty: true, opacityProperty: true });

  // What stands fixed over the page lies over its text on purpose; what a table scrolls away is cut by its room.
  const APART = '.unseen, .skip, nav, .alarm-stack, .answered, option, .table-room';
  const texts = [];
  const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  while (walker.nextNode()) {
    const node = walker.currentNode;
    const holder = node.parentElement;
    if (!node.data.trim() || holder.closest(APART) || !seen(holder)) continue;
    const range = document.createRange();
    range.selectNodeContents(node);
    for (const { left, right, top, bottom } of range.getClientRects()) {
      // Above and below its letters a line of text has air.
      const air = (bottom - top) * 0.25;
      if (right - left > 2) texts.push({ node, left: left + 1, right: right - 1, top: top + air, bottom: bottom - air });
    }
  }
  // Kept for screen readers alone, as the head of a table that is no table on a phone.
  const unseen = ({ parentElement }) => {
    for (let at = parentElement; at; at = at.parentElement) if (getComputedStyle(at).clipPath !== 'none') return true;
    return false;
  };
  texts.sort((a, b) => a.top - b.top);
  for (let i = 0; i < texts.length; i++) {
    const a = texts[i];
    if ((a.left < -2 || a.right > root.clientWidth + 2) && !unseen(a.node)) faults.push('"' + short(a.node.data) + '" is cut by the window');
    for (let j = i + 1; j < texts.length && texts[j].top < a.bottom; j++) {
      const b = texts[j];
      if (a.node !== b.node && a.left < b.right && b.left < a.right && !unseen(a.node) && !unseen(b.node))
        faults.push('"' + short(a.node.data) + '" lies on "' + short(b.node.data) + '"');
    }
  }

  // Ours: 44 px for what is no link within text; of those, axe holds the spacing of WCAG 2.2, 2.5.8.
  for (const one of document.querySelectorAll('button, summary, select, input, textarea, nav a')) {
    if (!seen(one) || one.closest('.unseen')) continue;
    const whole = one.matches('[type=checkbox], [type=radio], [type=file], .unseen') ? (one.closest('label') ?? one) : one;
    const { width, height } = whole.getBoundingClientRect();
    if (height < 43.5 || width < 43.5) faults.push(say(one) + ' is ' + Math.round(width) + ' by ' + Math.round(height) + ' px');
    if (one.matches('button, nav a') && one.scrollWidth > one.clientWidth + 1) faults.push(say(one) + ' is cut');
  }

  // Each picture has a name, and what it shows stands near it in words or in a table.
  for (const picture of document.querySelectorAll('svg, canvas, img, div[role=img]')) {
    // What is drawn inside a named picture is a part of it.
    if (picture.closest('[aria-hidden=true]') || picture.parentElement.closest('[role=img]') || !picture.checkVisibility()) continue;
    const name = picture.getAttribute('aria-label') || picture.getAttribute('aria-labelledby') || picture.getAttribute('alt') || picture.querySelector('title')?.textContent;
    if (picture.tagName !== 'IMG' && picture.getAttribute('role') !== 'img') faults.push('a picture is neither named nor hidden: ' + picture.outerHTML.slice(0, 80));
    else if (!name) faults.push('a picture has no name: ' + picture.outerHTML.slice(0, 80));
    let near = picture.parentElement;
    const tells = (box) => box.querySelector('table') || [...box.querySelectorAll('p, li, figcaption, dd')].some((one) => one.textContent.trim().length > 15);
    for (let up = 0; near && up < 4 && !tells(near); up++) near = near.parentElement;
    if (!near || !tells(near)) faults.push('a picture has no words near it: ' + name);
  }

  const levels = [...document.querySelectorAll('h1, h2, h3, h4, h5, h6')].filter((one) => one.checkVisibility()).map((one) => Number(one.tagName[1]));
  const first = levels.filter((level) => level === 1).length;
  if (first !== 1) faults.push('has ' + first + ' first headings');
  levels.forEach((level, at) => { if (at > 0 && level > levels[at - 1] + 1) faults.push('goes from a heading of level ' + levels[at - 1] + ' to one of ' + level); });
  return [...new Set(faults)];
})()`;

/** Scrolling sideways, texts on one another or cut, targets, names of pictures, headings. */
export const geometryFaults = (page: Page) => page.evaluate<string[]>(GEOMETRY);

/** What axe finds; contrast is measured by `contrastFaults`, which knows what ours has to be. */
export async function axeFaults(page: Page): Promise<string[]> {
  const { violations } = await new AxeBuilder({ page })
    .setLegacyMode() // no frames here, and no second page for them
    .options({
      runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'],
      rules: { 'color-contrast': { enabled: false } },
      resultTypes: ['violations'],
    })
    .analyze();
  return violations.flatMap(({ id, nodes }) =>
    nodes
      .slice(0, 3)
      .map(({ target, any }) => `${id}: ${target.join(' ')} ${any[0]?.message ?? ''}`),
  );
}

/** On paper: words and no controls. */
export const paperFaults = (page: Page) =>
  page.evaluate<string[]>(`(() => {
    const faults = [];
    const words = document.querySelector('#page').innerText.trim();
    const root = document.documentElement;
    if (root.scrollWidth > root.clientWidth) faults.push('paper is ' + root.clientWidth + ' px wide, what is on it ' + root.scrollWidth);
    if (words.length < 30) faults.push('paper is blank: "' + words + '"');
    for (const one of document.querySelectorAll('button:not(.pin), input, select, textarea, nav, details:not([open]) > summary'))
      if (one.checkVisibility({ visibilityProperty: true }) && one.getBoundingClientRect().width > 1)
        faults.push('on paper: ' + one.outerHTML.slice(0, 70));
    const ground = getComputedStyle(document.body).backgroundColor;
    if (ground !== 'rgb(255, 255, 255)') faults.push('paper is ' + ground);
    return [...new Set(faults)];
  })()`);
