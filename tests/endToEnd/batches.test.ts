import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Batch } from '../../hub/contract/index.ts';
import { startBatchesHub } from './batchesHub.ts';
import { hasChromium, needsChromium, openBrowser, tabTo } from './browser.ts';
import type { HubProcess } from './hubProcess.ts';
import { until } from './processes.ts';

// The page of batches as it is used: in a tunnel, with a thumb; and at a desk with a keyboard.

describe.skipIf(!hasChromium)(`the page of batches in Chromium${needsChromium}`, () => {
  let hub: HubProcess;
  beforeAll(async () => {
    hub = await startBatchesHub();
  }, 120_000);
  afterAll(() => hub?.kill());

  const list = (query = '') => hub.get<Batch[]>(`/api/batches${query}`);
  const open = async (page: Page, path = '/batches') => {
    await page.goto(hub.page + path);
    await page.locator('.batch').first().waitFor();
  };
  const said = (page: Page, sentence: RegExp) =>
    page.locator('.batch-said').getByText(sentence).waitFor();
  const card = (page: Page, id: string) => page.locator(`[id="${id}"]`);

  test('by touch: sown as last week, moved in one tap, cut, and taken back', {
    timeout: 120_000,
  }, async () => {
    const { page, complaints, close } = await openBrowser({ touch: true });
    await open(page);
    const before = (await list()).length;
    await page
      .getByRole('form', { name: 'As last week' })
      .getByRole('button', { name: /^Sow: 6.trays Radish shoots/ })
      .first()
      .tap();
    await said(page, /The hub has stored: 6.trays Radish shoots sown/);
    const sown = await until(async () => {
      const all = await list();
      return all.length === before + 1 && all.at(-1);
    }, 'one batch more');
    expect(sown).toMatchObject({ crop: 'radish-shoots', trays: 6 });

    const mine = card(page, sown.id);
    await mine.getByRole('button', { name: /^Move/ }).tap();
    await mine.getByRole('button', { name: /^Move to Outside/ }).tap();
    await said(page, /moved to Outside/);
    const moved = await until(async () => {
      const found = (await list()).find(({ id }) => id === sown.id);
      return found?.place === 'outside' && found;
    }, 'the move');
    expect(moved.stays).toHaveLength(2);

    await mine.getByRole('button', { name: /^Cut/ }).tap();
    await mine.getByLabel('Weight in kg').fill('1,8');
    await mine.getByRole('button', { name: 'One tray fewer' }).tap();
    await mine.getByRole('button', { name: 'Young leaves' }).tap();
    await mine.getByLabel('Minutes it took, if known').fill('14');
    await mine.getByRole('button', { name: 'Store it' }).tap();
    await said(page, /1\.8.kg Radish shoots cut/);
    await mine.getByText(/1 of 6.trays left, 1\.8.kg cut\./).waitFor();
    const cut = (await list()).find(({ id }) => id === sown.id)?.cuts;
    expect(cut).toMatchObject([{ kg: 1.8, trays: 5, stage: 'young', minutes: 14 }]);

    await page.locator('.batch-said').getByRole('button', { name: 'Undo' }).tap();
    await said(page, /Taken back/);
    await mine.getByText(/All trays growing\./).waitFor();
    expect((await list()).find(({ id }) => id === sown.id)?.cuts).toEqual([]);
    expect(complaints).toEqual([]);
    await close();
  });

  test('some of the trays, a note and what was thrown out, each stored and each taken back', {
    timeout: 120_000,
  }, async () => {
    const { page, complaints, close } = await openBrowser({ touch: true });
    await open(page);
    const [first] = (await list()).filter(({ crop }) => crop === 'basil');
    const id = first?.id ?? '';
    const trays = first?.traysLeft ?? 0;
    const mine = card(page, id);
    await mine.getByRole('button', { name: /^Move/ }).tap();
    await mine.getByRole('button', { name: 'Only some of the trays' }).tap();
    await mine.getByLabel(/^How many of the/).fill('2');
    await mine.getByRole('button', { name: /^Move to Outside/ }).tap();
    await said(page, /2.trays Basil \(Sweet\) moved to Outside/);
    const part = await until(
      async () => (await list()).find(({ partOf }) => partOf === id),
      'the part',
    );
    expect(part).toMatchObject({ trays: 2, place: 'outside', sownAt: first?.sownAt });
    await page.locator('.batch-said').getByRole('button', { name: 'Undo' }).tap();
    await said(page, /Taken back/);
    expect((await list()).some(({ partOf }) => partOf === id)).toBe(false);

    await mine.getByRole('button', { name: /^Note/ }).tap();
    await mine.getByRole('button', { name: 'Leggy' }).tap();
    await mine.getByLabel('A word about it, if you like').fill('far corner');
    await mine.getByRole('button', { name: 'Store it' }).tap();
    await said(page, /The hub has stored: leggy\./);
    await mine.getByText(/Last seen: leggy, .+ “far corner”/).waitFor();

    await mine.getByRole('button', { name: /^Throw out/ }).tap();
    await mine.getByLabel('Trays', { exact: true }).fill('1');
    await mine.getByRole('button', { name: 'Mould' }).tap();
    await mine.getByRole('button', { name: 'Throw out', exact: true }).tap();
    await said(page, /1.tray Basil thrown out/);
    expect((await list()).find((one) => one.id === id)?.traysLeft).toBe(trays - 1);

    await mine.getByRole('button', { name: /^More/ }).tap();
    await mine.getByText('History', { exact: false }).first().tap();
    await mine.getByText(/Thrown out 1.tray: mould/).waitFor();
    expect(complaints).toEqual([]);
    await close();
  });

  test('a place too full is warned about, and a name sows there anyway', {
    timeout: 120_000,
  }, async () => {
    const { page, close } = await openBrowser({ touch: true });
    await open(page);
    const form = page.getByRole('form', { name: 'Sow a batch' });
    await form.getByRole('button', { name: 'Basil' }).tap();
    await form.getByLabel('Trays', { exact: true }).fill('40');
    await form.getByRole('button', { name: /^Sun House/ }).tap();
    await form.getByRole('button', { name: 'Sow it' }).tap();
    await form.getByText(/Sun House would hold \d+.trays, and has room for 30/).waitFor();
    const before = (await list()).length;
    await form.getByLabel('Your name').fill('Ada');
    await form.getByRole('button', { name: 'Do it anyway' }).tap();
    await said(page, /40.trays Basil \(Sweet\) sown/);
    expect(await list()).toHaveLength(before + 1);
    await page.locator('.batch-said').getByRole('button', { name: 'Undo' }).tap();
    await said(page, /Taken back/);
    expect(await list()).toHaveLength(before);
    await close();
  });

  test('by keyboard alone a batch is carried to another place', { timeout: 120_000 }, async () => {
    const { page, complaints, close } = await openBrowser({ width: 1280 });
    await open(page);
    const [first] = (await list()).filter(({ place }) => place === 'hollow-house');
    await page.getByRole('heading', { level: 1 }).focus();
    await tabTo(page, `[id="${first?.id}"] button[aria-label^="Move"]`, 300);
    await page.keyboard.press('Enter');
    await tabTo(page, `[id="${first?.id}"] .batch-places button:last-child`);
    await page.keyboard.press('Enter');
    await said(page, /moved to/);
    const moved = (await list()).find(({ id }) => id === first?.id);
    expect(moved?.place).not.toBe('hollow-house');
    expect(complaints).toEqual([]);
    await close();
  });
});
