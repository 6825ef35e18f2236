import { connectAsync } from 'mqtt';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Probe, Task } from '../../hub/contract/index.ts';
import { hasChromium, needsChromium, type Opened, openBrowser, tabTo } from './browser.ts';
import { farmNow } from './hubProcess.ts';
import { until } from './processes.ts';
import { type SeasonHub, startSeasonHub } from './seasonHub.ts';

// What somebody does on the pages, and that the hub has it.

const PATIENCE = 60_000; // ms for a test

describe.skipIf(!hasChromium)(`taps and keys in Chromium${needsChromium}`, () => {
  let season: SeasonHub;
  beforeAll(async () => {
    season = await startSeasonHub();
  }, 120_000);
  afterAll(() => season?.kill());

  const openToday = async (width: number): Promise<Opened> => {
    const opened = await openBrowser({ width });
    const listens = opened.page.waitForResponse(/\/api\/events$/);
    await opened.page.goto(season.page);
    await listens;
    await opened.page.getByRole('heading', { name: 'To do' }).waitFor();
    return opened;
  };
  const part = ({ page }: Opened, name: string) =>
    page.locator('section', { has: page.getByRole('heading', { name, exact: true }) });
  const openTasks = () => season.hub().get<Task[]>('/api/tasks');
  const kept = async (id: string) =>
    (await season.hub().get<Task[]>('/api/tasks?state=all')).find((task) => task.id === id);
  const taskOf = async (kind: string, place: string) => {
    const found = (await openTasks()).find((one) => one.kind === kind && one.place === place);
    if (!found) throw new Error(`Expected a task ${kind} at ${place}, got none`);
    return found;
  };

  test.for([
    { width: 360, kind: 'open-up', place: 'hollow-house', answer: 'done', button: 'Done' },
    { width: 1280, kind: 'cover', place: 'south-patch', answer: 'no', button: 'Not doing' },
  ])(
    'at $width px a tap on $button ends the task, and it stands among the ended',
    {
      timeout: PATIENCE,
    },
    async ({ width, kind, place, answer, button }) => {
      const task = await taskOf(kind, place);
      const opened = await openToday(width);
      const { page } = opened;
      // A second screen in the house hears of it too.
      const other = await openToday(1280);
      await page.getByRole('button', { name: `${button}: ${task.title}` }).click();
      const stored = page.getByText(`The hub has stored: ${task.title}: ${button}.`);
      await stored.waitFor();
      const box = await stored.boundingBox();
      const seen = box !== null && box.y >= 0 && box.y + box.height <= 800;
      expect.soft(seen, 'what the hub stored can be seen without scrolling').toBe(true);
      for (const screen of [opened, other]) {
        const ended = part(screen, 'Done and dropped today').getByText(task.title);
        await ended.waitFor();
        expect(await ended.textContent()).toMatch(
          new RegExp(`${button}, 15:4\\d|${button}, 15:5\\d`),
        );
        expect(await screen.page.getByRole('heading', { name: task.title }).count()).toBe(0);
      }
      expect(await kept(task.id)).toMatchObject({ state: 'ended', answer });
      // Asked of the hub anew it is still so.
      await page.reload();
      await part(opened, 'Done and dropped today').getByText(task.title).waitFor();
      expect([...opened.complaints, ...other.complaints]).toEqual([]);
      await opened.close();
      await other.close();
    },
  );

  test.for(['/', '/places', '/probes'])(
    'on %s the first Tab offers to skip to the page',
    {
      timeout: PATIENCE,
    },
    async (path) => {
      const { page, close } = await openBrowser();
      await page.goto(season.page + path);
      await page.locator('article, li.place').first().waitFor();
      await page.keyboard.press('Tab');
      expect(await page.evaluate('document.activeElement?.textContent')).toBe('Skip to the page');
      await page.keyboard.press('Enter');
      expect(await page.evaluate('document.activeElement?.id')).toBe('main');
      await close();
    },
  );

  test('a keyboard alone answers a task, and goes on where the next one is', {
    timeout: PATIENCE,
  }, async () => {
    const task = await taskOf('see-to-probe', 'south-patch');
    const opened = await openToday(1280);
    const { page } = opened;
    await tabTo(page, `[aria-label="Done: ${task.title}"]`);
    // The focus can be seen: an outline of at least two pixels (WCAG 2.2, 2.4.13 says so for AAA).
    const outline = await page.evaluate<string>(
      'getComputedStyle(document.activeElement).outlineWidth',
    );
    expect(Number.parseFloat(outline)).toBeGreaterThanOrEqual(2);
    await page.keyboard.press('Enter');
    await part(opened, 'Done and dropped today').getByText(task.title).waitFor();
    expect(await kept(task.id)).toMatchObject({ state: 'ended', answer: 'done' });
    expect(await page.evaluate('document.activeElement?.id')).toBe('to-do');
    await page.keyboard.press('Tab');
    expect(await page.evaluate("document.activeElement?.closest('.task') !== null")).toBe(true);
    expect(opened.complaints).toEqual([]);
    await opened.close();
  });

  test('a keyboard alone puts a task off, and the alarm is quiet until then', {
    timeout: PATIENCE,
  }, async () => {
    const task = await taskOf('move-produce', 'cool-room');
    expect(task.alarm).toBe(true);
    const opened = await openToday(360);
    const { page } = opened;
    await tabTo(page, `[aria-label="Later: ${task.title}"]`);
    await page.keyboard.press('Enter');
    await page.getByRole('button', { name: /^In 1 hour, .*16:\d\d/ }).waitFor();
    await until(
      () => page.evaluate<boolean>("document.activeElement.textContent.startsWith('In 1 hour')"),
      'the focus on the first time to choose',
      3_000,
    );
    await page.keyboard.press('Enter');
    const off = part(opened, 'Put off').getByText(task.title);
    await off.waitFor();
    const now = await until(async () => {
      const one = await kept(task.id);
      return one?.until !== null && one;
    }, 'a task that is put off');
    expect(now).toMatchObject({ state: 'open', answer: 'later', alarm: false });
    const wait =
      Date.parse(now.until ?? '') - farmNow(season.clock ?? { start: 0, real: 0, speed: 1 });
    expect(wait).toBeGreaterThan(50 * 60_000);
    expect(wait).toBeLessThanOrEqual(60 * 60_000);
    expect(opened.complaints).toEqual([]);
    await opened.close();
  });

  test('a reading that comes in is on the page without asking for it', {
    timeout: PATIENCE,
  }, async () => {
    const opened = await openBrowser();
    const { page } = opened;
    await page.goto(`${season.page}/places`);
    const row = page.locator('li.place', { has: page.getByRole('link', { name: 'Far Patch' }) });
    await row.waitFor();
    const probe = await connectAsync(`mqtt://127.0.0.1:${season.mqtt}`);
    await probe.publishAsync('garden/far-flower/temperature', '9.3', { qos: 1 });
    await row.getByText('9.3').waitFor();
    await row.getByText('read just now').waitFor();
    await probe.endAsync();
    expect(opened.complaints).toEqual([]);
    await opened.close();
  });

  test('a probe that nobody placed is placed where the hub suggests it', {
    timeout: PATIENCE,
  }, async () => {
    const opened = await openBrowser();
    const { page } = opened;
    await page.goto(`${season.page}/probes`);
    const card = (list: string) =>
      part(opened, list).locator('article', {
        has: page.getByRole('heading', { name: /^spare-7/ }),
      });
    await card('Not placed yet').getByText('Seems to belong at').waitFor();
    expect(await card('Not placed yet').getByLabel('Place').inputValue()).toBe('long-house');
    expect(await card('Not placed yet').getByLabel('Spot').inputValue()).toBe('canopy');
    await card('Not placed yet').getByRole('button', { name: 'Place it here' }).click();
    await card('Placed').waitFor();
    await page.getByText('The hub has placed spare-7: Long House, canopy.').waitFor();
    expect(await card('Placed').getByRole('heading').textContent()).toBe(
      'spare-7 Long House, canopy',
    );
    await page.getByText('Every probe that sends has a place.').waitFor();
    const spare = (await season.hub().get<Probe[]>('/api/probes')).find(
      ({ id }) => id === 'spare-7',
    );
    expect(spare).toMatchObject({ place: 'long-house', spot: 'canopy', suggestion: null });
    expect(opened.complaints).toEqual([]);
    await opened.close();
  });

  test('a probe is moved by hand, and its past stays where it hung', {
    timeout: PATIENCE,
  }, async () => {
    const opened = await openBrowser({ width: 1280 });
    const { page } = opened;
    await page.goto(`${season.page}/probes`);
    await page.getByRole('button', { name: 'Move: grass' }).click();
    const form = page.locator('article', { has: page.getByRole('heading', { name: /^grass/ }) });
    await form.getByLabel('Place').selectOption({ label: 'Far Patch' });
    await form.getByLabel('Spot').selectOption({ label: 'grass' });
    await form.getByRole('button', { name: 'Place it here' }).click();
    await page.getByText('The hub has placed grass: Far Patch, grass.').waitFor();
    const grass = (await season.hub().get<Probe[]>('/api/probes')).find(({ id }) => id === 'grass');
    expect(grass?.placements.map(({ place }) => place)).toEqual(['outside', 'far-patch']);
    expect(grass?.placements[0]?.to).toBe(grass?.placements[1]?.from);
    expect(opened.complaints).toEqual([]);
    await opened.close();
  });
});
