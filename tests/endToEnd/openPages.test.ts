import { setTimeout as pause } from 'node:timers/promises';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Task } from '../../hub/contract/index.ts';
import { hasChromium, needsChromium, openBrowser } from './browser.ts';
import { until } from './processes.ts';
import { type SeasonHub, startSeasonHub } from './seasonHub.ts';

// What happens between two looks at a page: nothing of it may be missed, or taken from under a finger.

describe.skipIf(!hasChromium)(`pages that stay open, in Chromium${needsChromium}`, () => {
  let season: SeasonHub;
  beforeAll(async () => {
    season = await startSeasonHub({ speed: 60 });
  }, 120_000);
  afterAll(() => season?.kill());

  const firstTask = async () => {
    const [task] = await season.hub().get<Task[]>('/api/tasks');
    if (!task) throw new Error('Expected an open task, got none');
    return task;
  };

  test('an answer given elsewhere while a page is being opened is not missed', {
    timeout: 60_000,
  }, async () => {
    const task = await firstTask();
    const { page, close } = await openBrowser();
    // A slow link: what has ended is on its way while somebody else ends one more.
    let answered = false;
    await page.route('**/api/tasks?state=ended', async (route) => {
      const response = await route.fetch();
      if (!answered) {
        answered = true;
        await season.hub().post(`/api/tasks/${task.id}/answer`, { answer: 'no' });
        await pause(500);
      }
      await route.fulfill({ response });
    });
    await page.goto(season.page);
    const ended = page.locator('section.ended').getByText(task.title);
    await ended.waitFor({ timeout: 10_000 });
    expect(await page.locator('article.task').getByText(task.title, { exact: true }).count()).toBe(
      0,
    );
    await page.unrouteAll({ behavior: 'wait' });
    await close();
  });

  test('the times to put a task off to stay under the finger while the clock goes on', {
    timeout: 60_000,
  }, async () => {
    const task = (await season.hub().get<Task[]>('/api/tasks')).at(-1);
    const { page, close } = await openBrowser();
    await page.goto(season.page);
    await page.getByRole('button', { name: `Later: ${task?.title}` }).click();
    const first = page.getByRole('button', { name: /^In 1 hour/ });
    await until(
      () => page.evaluate<boolean>("document.activeElement.textContent.startsWith('In 1 hour')"),
      'the focus on the first time to choose',
      3_000,
    );
    const before = await first.textContent();
    await until(async () => (await first.textContent()) !== before, 'a later time', 10_000);
    const focused = await page.evaluate<string>('document.activeElement.textContent');
    expect(focused).toMatch(/^In 1 hour/);
    await close();
  });
});
