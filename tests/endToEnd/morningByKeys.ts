import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import type { Batch, Lot, Task } from '../../hub/contract/index.ts';
import { until } from './processes.ts';
import { settled } from './walkPage.ts';

type Get = <Shape>(path: string) => Promise<Shape>;

/** Where the focus is, and what keeps an eye from seeing it there; '' when nothing does. */
const FOCUS = `(() => {
  const one = document.activeElement;
  const at = one.tagName.toLowerCase() + ' "' + (one.getAttribute('aria-label') ?? one.textContent ?? '').trim().slice(0, 40) + '"';
  if (one === document.body) return { at, fault: '' };
  const { left, right, top, bottom } = one.getBoundingClientRect();
  const style = getComputedStyle(one);
  const drawn = style.outlineStyle !== 'none' && parseFloat(style.outlineWidth) >= 2;
  const x = Math.min(Math.max((left + right) / 2, 1), innerWidth - 1);
  // Some of it has to be seen (WCAG 2.2, 2.4.11): looked for at its head, its middle and its foot.
  const free = [top + 3, (top + bottom) / 2, bottom - 3].some((y) => {
    const there = document.elementFromPoint(x, y);
    return there !== null && (one.contains(there) || there.contains(one));
  });
  return { at, fault: !drawn ? 'has no outline' : !free ? 'lies outside the window or beneath something' : '' };
})()`;
const MOST = 160; // presses of Tab to anywhere; ours

/**
 * The morning's job without a pointer: open, skip to the page, read, answer the first task; go to the
 * batches by the menu, move one and take it back; put a lot away. Wherever Tab stops it has to be seen.
 */
export async function morningByKeys(page: Page, address: string, get: Get) {
  const press = (key: string) => page.keyboard.press(key);
  const isAt = (selector: string) =>
    page.evaluate<boolean>(`document.activeElement.matches(${JSON.stringify(selector)})`);
  const tabTo = async (selector: string, key = 'Tab') => {
    for (let i = 0; i < MOST; i++) {
      await press(key);
      const { at, fault } = await page.evaluate<{ at: string; fault: string }>(FOCUS);
      expect(fault === '' ? '' : `${at} ${fault} on ${page.url()}`).toBe('');
      if (await isAt(selector)) return;
    }
    throw new Error(`Expected Tab to reach ${selector} on ${page.url()}, got nowhere`);
  };
  const shown = (selector: string) => page.locator(selector).first().waitFor({ timeout: 60_000 });

  await page.goto(address);
  await settled(page);
  await shown('.task .answers button');
  await press('Tab');
  expect(await isAt('a.skip')).toBe(true);
  await press('Enter');
  expect(await isAt('#main')).toBe(true);

  const ended = async () => (await get<Task[]>('/api/tasks?state=ended')).length;
  const before = await ended();
  await tabTo('.task details summary');
  await press('Enter');
  await shown('.task details[open] .evidence');
  await tabTo('.task .answers button.main');
  await press('Enter');
  await shown('.answered:not(:empty)');
  expect(await isAt('#to-do')).toBe(true);
  expect(await ended()).toBeGreaterThan(before);

  // Backwards to the menu, which opens, is left by Escape, and leads on.
  await tabTo('.more > summary', 'Shift+Tab');
  await press('Enter');
  await press('Escape');
  expect(await isAt('.more > summary')).toBe(true);
  await press('Enter');
  await tabTo('a[href="/batches"]');
  await press('Enter');
  await shown('.batch-buttons button');
  await settled(page);
  const movable = '.batch-buttons button:first-child';
  await tabTo(movable);
  const batches = async () => JSON.stringify(await placesOf(get));
  const stood = await batches();
  await press('Enter');
  await shown('.batch-places button');
  await tabTo('.batch-places button');
  await press('Enter');
  await shown('.batch-said button, .batch-form button[type=submit].main');
  if ((await page.locator('.batch-said button').count()) === 0) {
    await tabTo('.batch-form button[type=submit].main'); // warned, and done all the same
    await press('Enter');
  }
  await shown('.batch-said button');
  await until(async () => (await batches()) !== stood, 'a batch that stands elsewhere');
  await tabTo('.batch-said button', 'Shift+Tab');
  await press('Enter');
  await until(async () => (await batches()) === stood, 'the batch back where it stood');

  await page.evaluate('document.body.focus()');
  await tabTo('nav a[href="/cool-room"]', 'Shift+Tab');
  await press('Enter');
  await shown('.quick-crops button');
  await settled(page);
  await tabTo('.quick-crops button');
  await press('Enter');
  await shown('.quick input');
  if (!(await isAt('.quick input'))) await tabTo('.quick input');
  await page.keyboard.type('2.5');
  const lots = async () => (await get<Lot[]>('/api/lots')).length;
  const had = await lots();
  await press('Enter');
  await until(async () => (await lots()) === had + 1, 'the lot in the cool room');
  await shown('.lot-said button');
  await tabTo('.lot-said button');
}

async function placesOf(get: Get) {
  const batches = await get<Batch[]>('/api/batches');
  return batches.map(({ id, stays }) => [id, stays.at(-1)?.place]).sort();
}
