import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Task } from '../../hub/contract/index.ts';
import { fitsItsWidth, hasChromium, needsChromium, openBrowser, shutsOut } from './browser.ts';
import { type SeasonHub, startSeasonHub } from './seasonHub.ts';

// From a task's reasons to how each of them came about.

describe.skipIf(!hasChromium)(`how it is worked out, in Chromium${needsChromium}`, () => {
  let season: SeasonHub;
  beforeAll(async () => {
    season = await startSeasonHub();
  }, 120_000);
  afterAll(() => season?.kill());

  const addressOf = (task: Task, line: number) => {
    const method = task.because[line]?.method ?? 'measured';
    return `${season.page}/how/${method}?${new URLSearchParams({ task: task.id, line: `${line}` })}`;
  };

  test('a tap on a reason leads to the formula, the numbers put in and the source, and back', {
    timeout: 60_000,
  }, async () => {
    const tasks = await season.hub().get<Task[]>('/api/tasks');
    const task = tasks.find(({ because }) => because.some(({ method }) => method === 'ventGain'));
    if (!task) throw new Error('Expected a task to open up for drier air outside, got none');
    const gain = task.because.find(({ method }) => method === 'ventGain');
    const { page, complaints, close } = await openBrowser();
    await page.goto(season.page);
    const card = page.locator('article.task').filter({ hasText: task.title }).first();
    await card.getByText('Why', { exact: true }).click();
    await card.locator('a[href^="/how/ventGain"]').first().click();
    await page.getByRole('heading', { name: 'How it is worked out' }).waitFor();
    expect(await page.title()).toMatch(/How it is worked out/);
    await page.getByText('How much drier the place gets by opening').waitFor();
    const text = await page.locator('main').textContent();
    for (const input of gain?.inputs ?? [])
      if (typeof input.value === 'number') expect(text).toContain(String(Math.abs(input.value)));
    for (const heading of ['In words', 'Numbers put in', 'Result', 'Limits', 'Source'])
      await page.getByRole('heading', { name: heading, exact: true }).waitFor();
    await page.getByText('Back to the task').click();
    await page.getByRole('heading', { name: task.title }).waitFor();
    expect(complaints).toEqual([]);
    await close();
  });

  test.for([
    { width: 320, scheme: 'light' },
    { width: 1280, scheme: 'dark' },
  ] as const)(
    'at $width px, $scheme, every reason of every task has its page, which shuts nobody out',
    { timeout: 180_000 },
    async (look) => {
      const tasks = await season.hub().get<Task[]>('/api/tasks');
      const { page, complaints, close } = await openBrowser(look);
      const seen = new Set<string>();
      for (const task of tasks)
        for (const [line, { method, what }] of task.because.entries()) {
          if (seen.has(`${method ?? what}`)) continue;
          seen.add(`${method ?? what}`);
          await page.goto(addressOf(task, line));
          await page.getByRole('heading', { name: 'Source' }).waitFor();
          if (method == null) await page.getByText('Nothing was worked out.').waitFor();
          else await page.getByText('In the code: rules/').waitFor();
          await fitsItsWidth(page);
          // One page draws them all: wide and dark, a few of them stand for the rest.
          if (look.width === 320 || seen.size <= 3)
            expect(await shutsOut(page), `${method} of ${what}`).toEqual([]);
        }
      expect(seen.size).toBeGreaterThan(5);
      expect(complaints).toEqual([]);
      await close();
    },
  );

  test('a formula opened without a task says so, and one nobody knows is refused in words', {
    timeout: 60_000,
  }, async () => {
    const { page, close } = await openBrowser();
    await page.goto(`${season.page}/how/dewPoint`);
    await page.getByText('Opened without a task').waitFor();
    await page.getByText('Temperature at which this air').waitFor();
    await page.goto(`${season.page}/how/nonsense?task=none&line=0`);
    await page.getByText('The task is no longer in the list').waitFor();
    await page.getByText('Expected the name of a formula, got "nonsense"').waitFor();
    await close();
  });
});
