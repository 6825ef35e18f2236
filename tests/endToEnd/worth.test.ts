import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { CropsLearned, Pick } from '../../hub/contract/index.ts';
import { fitsItsWidth, hasChromium, needsChromium, openBrowser, shutsOut } from './browser.ts';
import { gardenFile } from './gardenFile.ts';
import { type HubProcess, startHub } from './hubProcess.ts';
import { tempFolder, until } from './processes.ts';

// Pickings are entered with one hand; what they and the batches earned is read at a desk.

const DAY = 86_400_000; // ms
const ago = (days: number) => new Date(Date.now() - days * DAY).toISOString();

async function freshHub() {
  const data = tempFolder();
  return startHub({ data, farm: gardenFile(data), open: true });
}

/** Three batches of basil and five pickings, of which one lacks its minutes. */
async function season(hub: HubProcess) {
  const patch = async (id: string, change: object) => {
    const response = await fetch(`${hub.page}/api/batches/${id}`, {
      method: 'PATCH',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify(change),
    });
    expect(response.status, await response.clone().text()).toBe(200);
  };
  for (const [i, kg] of [4, 4.3, 4.6].entries()) {
    const { id } = await hub.post<{ id: string }>('/api/batches', {
      ...{ crop: 'basil', trays: 10, place: 'long-house', sownAt: ago(60 + i) },
      ...{ seedCost: 12, otherCost: 8, minutes: 40 },
    });
    await patch(id, { work: { work: 'tending', minutes: 60, at: ago(50) } });
    await patch(id, { cut: { kg, at: ago(40), minutes: 60, lostKg: 0.2, price: 30 } });
    await patch(id, { work: { work: 'packing', minutes: 30, at: ago(40) } });
  }
  for (const [i, kg] of [6, 5.4, 5, 4.4, 4].entries())
    await hub.post('/api/picks', {
      ...{ place: 'south-patch', kg, at: ago(13 - 3 * i), lostKg: 0.2 },
      minutes: i === 2 ? null : 60,
    });
}

describe.skipIf(!hasChromium)(`pickings and what is worth its hours${needsChromium}`, () => {
  let empty: HubProcess;
  let hub: HubProcess;
  beforeAll(async () => {
    empty = await freshHub();
    hub = await freshHub();
    await season(hub);
  }, 120_000);
  afterAll(async () => {
    await empty?.kill();
    await hub?.kill();
  });

  test('a farm that wrote nothing down is told what to write down', {
    timeout: 60_000,
  }, async () => {
    const { page, complaints, close } = await openBrowser();
    await page.goto(`${empty.page}/worth`);
    await page.getByText(/^Nothing can be told yet\. Write down of each batch/).waitFor();
    expect(await shutsOut(page)).toEqual([]);
    await fitsItsWidth(page);
    expect(complaints).toEqual([]);
    await close();
  });

  test('a picking is entered with three taps, by big steps, and taken back', {
    timeout: 90_000,
  }, async () => {
    const { page, complaints, close } = await openBrowser({ touch: true });
    const before = (await hub.get<Pick[]>('/api/picks')).length;
    const kept = (count: number) =>
      until(async () => {
        const list = await hub.get<Pick[]>('/api/picks');
        return list.length === count && list;
      }, `${count} pickings`);
    await page.goto(`${hub.page}/pickings`);
    const form = page.getByRole('form', { name: 'Enter a picking' });
    await form.getByRole('button', { name: /South patch/ }).tap();
    await form.getByRole('button', { name: /^4.kg$/ }).tap();
    await form.getByRole('button', { name: 'Store it' }).tap();
    await page.getByText(/The hub has stored: 4.kg/).waitFor();
    const [bare] = await kept(before + 1);
    // What nobody tapped is not known, never zero.
    expect(bare).toMatchObject({ kg: 4, lostKg: null, minutes: null });
    await page.getByRole('button', { name: 'Undo' }).tap();
    await page.getByText('Taken back; its history keeps both.').waitFor();
    await kept(before);
    await form.getByRole('button', { name: /South patch/ }).tap();
    await form.getByLabel('Picked, in kg').fill('3,5');
    await form.getByRole('button', { name: /^45.min$/ }).tap();
    await form.getByRole('button', { name: 'Nothing' }).tap();
    await form.getByRole('button', { name: 'Store it' }).tap();
    const [whole] = await kept(before + 1);
    expect(whole).toMatchObject({ kg: 3.5, lostKg: 0, minutes: 45, missing: [] });
    await page.getByRole('button', { name: 'Undo' }).tap();
    await kept(before);
    expect(complaints).toEqual([]);
    await close();
  });

  test('the page says in sentences what pays, draws it, and says the same as a table', {
    timeout: 90_000,
  }, async () => {
    const { page, complaints, close } = await openBrowser({ width: 1280 });
    await page.goto(`${hub.page}/worth`);
    const short = page.locator('section', { hasText: 'In short' });
    await short
      .getByText(/in Long House: pays, between \d+ and \d+.EUR an hour over 3 batches/)
      .waitFor();
    await page.getByRole('img', { name: /^Earnings in EUR for each hour, by crop\. / }).waitFor();
    await page.getByText('wage 16').waitFor();
    // For each tray there is no wage to hold it against, and pickings have no trays.
    await page.getByRole('button', { name: 'tray', exact: true }).click();
    await page.getByRole('img', { name: 'Earnings in EUR for each tray, by crop' }).waitFor();
    expect(await page.getByText('wage 16').count()).toBe(0);
    await page.getByRole('button', { name: 'place', exact: true }).click();
    const table = page.getByRole('region', { name: 'Earnings in EUR for each tray, by place' });
    await table.getByRole('rowheader', { name: 'Long House', exact: true }).waitFor();
    expect(await table.getByRole('rowheader').count()).toBe(1);
    const { pickOns } = await hub.get<CropsLearned>('/api/learn/crops');
    await page.getByText(pickOns[0]?.words[0] ?? 'no answer').waitFor();
    expect(complaints).toEqual([]);
    await close();
  });

  test('one tap leads to the picking that lacks its minutes; filled in, it counts', {
    timeout: 90_000,
  }, async () => {
    const { page, complaints, close } = await openBrowser({ touch: true });
    await page.goto(`${hub.page}/worth`);
    await page.getByRole('link', { name: /^Fill in: / }).tap();
    const form = page.getByRole('form', { name: /^Fill in or correct: / });
    await form.getByRole('button', { name: /^60.min$/ }).tap();
    await form.getByRole('button', { name: 'Store it' }).tap();
    await page.getByText('The hub has stored the correction; its history keeps both.').waitFor();
    const { units } = await hub.get<CropsLearned>('/api/learn/crops');
    expect(units.filter(({ missing }) => missing.length > 0)).toEqual([]);
    expect(complaints).toEqual([]);
    await close();
  });

  test.for([320, 360, 1280])(
    'both pages at %d px shut nobody out',
    { timeout: 90_000 },
    async (width) => {
      const { page, complaints, close } = await openBrowser({ width });
      await page.goto(`${hub.page}/worth`);
      await page.getByRole('img', { name: /^Earnings/ }).waitFor();
      await fitsItsWidth(page);
      expect(await shutsOut(page)).toEqual([]);
      await page.goto(`${hub.page}/pickings`);
      await page
        .getByRole('button', { name: /South patch/ })
        .first()
        .click();
      await page.getByRole('button', { name: 'Store it' }).waitFor();
      await fitsItsWidth(page);
      for (const button of await page.locator('.quick-pick button').all())
        expect.soft((await button.boundingBox())?.height).toBeGreaterThanOrEqual(44);
      expect(await shutsOut(page)).toEqual([]);
      expect(complaints).toEqual([]);
      await close();
    },
  );

  test('on paper the answers stand without buttons', { timeout: 60_000 }, async () => {
    const { page, close } = await openBrowser({ width: 1280 });
    await page.goto(`${hub.page}/worth`);
    await page.getByRole('img', { name: /^Earnings/ }).waitFor();
    await page.emulateMedia({ media: 'print' });
    expect(await page.locator('.worth-switch:visible, button:visible').count()).toBe(0);
    expect(await page.locator('.worth-sentences:visible').count()).toBe(1);
    await close();
  });
});
