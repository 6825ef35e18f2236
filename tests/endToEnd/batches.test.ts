import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Batch } from '../../hub/contract/index.ts';
import { demoBatches } from '../../simulators/demoBatches.ts';
import { scenario } from '../../simulators/index.ts';
import {
  fitsItsWidth,
  hasChromium,
  needsChromium,
  openBrowser,
  shutsOut,
  tabTo,
} from './browser.ts';
import { clockFrom, dewpost, type HubProcess, root, startHub } from './hubProcess.ts';
import { tempFolder, until } from './processes.ts';

// The page of batches as it is used: in a tunnel, with a thumb; and at a desk with a keyboard.

describe.skipIf(!hasChromium)(`the page of batches in Chromium${needsChromium}`, () => {
  let hub: HubProcess;
  beforeAll(async () => {
    const data = tempFolder();
    const csv = join(data, 'batches.csv');
    writeFileSync(csv, demoBatches(scenario));
    const farm = join(root, 'simulators', 'farm.yaml');
    const clock = clockFrom(scenario.start, 1);
    const told = `${new Date(clock.start).toISOString()}/${clock.real}/1`;
    const taken = await dewpost('import', '--data', data, '--farm', farm, '--clock', told, csv);
    expect(taken).toMatchObject({ code: 0, err: '' });
    hub = await startHub({ data, open: true, clock });
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

  test('a file is looked at before it is entered, and entered once', {
    timeout: 120_000,
  }, async () => {
    const { page, complaints, close } = await openBrowser();
    await open(page);
    const csv = 'crop,trays,sown,place\nbasil,3,2026-04-20,outside\nkale,3,2026-04-20,outside\n';
    const file = { name: 'trays.csv', mimeType: 'text/csv', buffer: Buffer.from(csv) };
    const before = (await list()).length;
    const choose = () => page.getByLabel('Take in a file (CSV)').setInputFiles(file);
    await choose();
    await page.getByText('It would enter 1 entry for 1 batch.').waitFor();
    await page.getByText(/^line 3: Expected one of basil, .+ in crop, got "kale"$/).waitFor();
    expect(await list()).toHaveLength(before);
    await page.getByRole('button', { name: 'Enter it' }).click();
    await page.getByText('The hub has stored 1 entry for 1 batch.').waitFor();
    expect(await list()).toHaveLength(before + 1);
    await page.reload();
    await page.locator('.batch').first().waitFor();
    await choose();
    await page.getByText('The file has nothing new for the hub.').waitFor();
    expect(complaints).toEqual([]);
    await close();
  });

  test.for([
    { width: 320, scheme: 'light' },
    { width: 360, scheme: 'dark' },
    { width: 1280, scheme: 'light' },
  ] as const)(
    'at $width px, $scheme, with every form open nobody is shut out',
    { timeout: 120_000 },
    async ({ width, scheme }) => {
      const { page, complaints, close } = await openBrowser({ width, scheme });
      await open(page);
      await page.getByRole('form', { name: 'Sow a batch' }).getByRole('button').first().click();
      for (const [i, name] of ['Move', 'Cut', 'Note', 'Throw out', 'More'].entries())
        await page
          .locator('.batch')
          .nth(i)
          .getByRole('button', { name: new RegExp(`^${name}`) })
          .first()
          .click();
      await page.evaluate(
        "document.querySelectorAll('details').forEach((one) => (one.open = true))",
      );
      await page.locator('.batch-past li').first().waitFor();
      await fitsItsWidth(page);
      expect(await shutsOut(page)).toEqual([]);
      await open(page, '/batches?show=ended');
      await page.getByRole('heading', { level: 1, name: 'Batches that have ended' }).waitFor();
      await fitsItsWidth(page);
      await page.goto(`${hub.page}/places/long-house`);
      await page.getByRole('heading', { name: 'What stands here' }).waitFor();
      await fitsItsWidth(page);
      expect(complaints).toEqual([]);
      await close();
    },
  );

  test('when the hub is away the page says so, and what was typed stays', {
    timeout: 120_000,
  }, async () => {
    const { page, close } = await openBrowser();
    await open(page);
    await page.route('**/api/batches/*', (route) => route.abort());
    const mine = page.locator('.batch').first();
    await mine.getByRole('button', { name: /^Cut/ }).click();
    await mine.getByLabel('Weight in kg').fill('2');
    await mine.getByRole('button', { name: 'Store it' }).click();
    await mine.getByText('Not stored: no answer from the hub').waitFor();
    expect(await mine.getByLabel('Weight in kg').inputValue()).toBe('2');
    await page.unrouteAll({ behavior: 'wait' });
    await page.route('**/api/batches**', (route) => route.abort());
    await page.reload();
    await page
      .getByText(/The hub did not give this: no answer from the hub/)
      .first()
      .waitFor();
    await page.unrouteAll({ behavior: 'wait' });
    await page.getByRole('button', { name: 'Try again' }).first().click();
    await close();
  });
});
