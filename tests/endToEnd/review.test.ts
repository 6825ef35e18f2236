import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { SeasonReview, Task } from '../../hub/contract/index.ts';
import { fitsItsWidth, hasChromium, needsChromium, openBrowser, shutsOut } from './browser.ts';
import { type SeasonHub, startSeasonHub } from './seasonHub.ts';

// The review of a season as it is read: on a phone, at a desk, on paper.

describe.skipIf(!hasChromium)(`the season review in Chromium${needsChromium}`, () => {
  let season: SeasonHub;
  beforeAll(async () => {
    season = await startSeasonHub();
    const [task] = await season.hub().get<Task[]>('/api/tasks');
    await season.hub().post(`/api/tasks/${task?.id}/answer`, { answer: 'done' });
    await season.hub().post('/api/losses', {
      ...{ place: 'long-house', crop: 'basil', amount: 2, unit: 'trays', look: 'grey-mould' },
    });
  }, 120_000);
  afterAll(() => season?.kill());

  const open = async (page: Awaited<ReturnType<typeof openBrowser>>['page'], search = '') => {
    await page.goto(`${season.page}/review${search}`);
    await page.getByRole('heading', { name: 'Asked and answered' }).waitFor();
  };

  test.for([320, 360, 1280])(
    'at %i px it fits, shuts nobody out and tells what the hub counted',
    {
      timeout: 90_000,
    },
    async (width) => {
      const { page, complaints, close } = await openBrowser({ width });
      await open(page);
      const review = await season.hub().get<SeasonReview>('/api/review');
      expect(review.all.done + review.all.late).toBe(1);
      expect(review.lost.entries).toBe(1);
      await page
        .locator('.review-sheet .sentence')
        .getByText(/tasks? asked/)
        .waitFor();
      const asked = page.getByRole('region', { name: 'Asked and answered' });
      expect(await asked.locator('tbody tr').count()).toBe(review.kinds.length);
      expect(await asked.locator('tfoot td').first().textContent()).toBe(String(review.all.asked));
      await page.getByRole('region', { name: 'Lost' }).getByText('grey mould').waitFor();
      await fitsItsWidth(page);
      expect(await shutsOut(page)).toEqual([]);
      expect(complaints).toEqual([]);
      await close();
    },
  );

  test('another season is a tap away, and any days can be asked for', {
    timeout: 90_000,
  }, async () => {
    const { page, close } = await openBrowser();
    await open(page);
    await page.getByRole('link', { name: 'Winter 2025–2026' }).click();
    await page.getByText(/^From 1 Dec 2025 to 28 Feb 2026 no task was asked/).waitFor();
    const current = page.getByRole('navigation', { name: 'Seasons' }).locator('[aria-current]');
    expect(await current.textContent()).toBe('Winter 2025–2026');
    const form = page.getByRole('form', { name: 'Days of your own' });
    await form.getByLabel('To').fill('2026-04-23');
    await form.getByLabel('From').fill('2026-04-20');
    await form.getByRole('button', { name: 'Show' }).click();
    await page.getByText(/^From 20 Apr 2026 to 23 Apr 2026 \d+ tasks? asked/).waitFor();
    await close();
  });

  test('it is printed on A4 without what needs a finger, and comes as a table', {
    timeout: 90_000,
  }, async () => {
    const { page, close } = await openBrowser({ width: 1280 });
    await open(page);
    await page.emulateMedia({ media: 'print' });
    expect(await page.getByRole('button', { name: 'Print' }).isVisible()).toBe(false);
    expect(await page.getByRole('navigation', { name: 'Seasons' }).isVisible()).toBe(false);
    const pdf = (await page.pdf({ preferCSSPageSize: true })).toString('latin1');
    const pages = pdf.match(/\/Type\s*\/Page\b/g)?.length ?? 0;
    expect(pages).toBeGreaterThan(0);
    expect(pages).toBeLessThanOrEqual(3);
    // A4 is 210 mm by 297 mm (ISO 216): 595 by 842 points of 1/72 inch.
    const [, wide, high] = /MediaBox\s*\[\s*0 0 ([\d.]+) ([\d.]+)/.exec(pdf) ?? [];
    expect(Math.round(Number(wide))).toBeGreaterThanOrEqual(594);
    expect(Math.round(Number(wide))).toBeLessThanOrEqual(596);
    expect(Math.round(Number(high))).toBeGreaterThanOrEqual(841);
    expect(Math.round(Number(high))).toBeLessThanOrEqual(843);
    await page.emulateMedia({ media: 'screen' });
    const href = await page.getByRole('link', { name: 'As a table (CSV)' }).getAttribute('href');
    const table = await (await fetch(season.page + href)).text();
    expect(table).toMatch(/^from,to,part,what,measure,value,unit\r\n/);
    await close();
  });
});
