import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { CoolRoomLog, Lot } from '../../hub/contract/index.ts';
import {
  fitsItsWidth,
  hasChromium,
  needsChromium,
  openBrowser,
  shutsOut,
  tabTo,
} from './browser.ts';
import { until } from './processes.ts';
import { type SeasonHub, startSeasonHub } from './seasonHub.ts';

// The cool room's page as it is used: standing, with one hand, and at a desk with a keyboard.

/** The chosen crop asks for a weight; what is typed sooner goes nowhere. */
const weightHasFocus = (page: Page) =>
  until(
    () => page.evaluate<boolean>("document.activeElement?.inputMode === 'decimal'"),
    'the focus on the weight',
  );

describe.skipIf(!hasChromium)(`the cool room's page in Chromium${needsChromium}`, () => {
  let season: SeasonHub;
  beforeAll(async () => {
    season = await startSeasonHub();
  }, 120_000);
  afterAll(() => season?.kill());

  const lots = () => season.hub().get<Lot[]>('/api/lots');
  const open = async (page: Page) => {
    await page.goto(`${season.page}/cool-room`);
    await page.getByRole('form', { name: 'Put produce away' }).waitFor();
    await page.getByRole('heading', { name: 'The record of this week' }).waitFor();
  };
  const said = (page: Page, sentence: RegExp) =>
    page.locator('.lot-said').getByText(sentence).waitFor();
  const takeAllOut = async () => {
    for (const { id, entry } of await lots()) {
      const response = await fetch(`${season.page}/api/lots/${id}`, {
        method: 'PATCH',
        headers: { 'content-type': 'application/json' },
        body: JSON.stringify({ undo: entry }),
      });
      expect(response.status).toBe(200);
    }
  };

  test('an empty room says so; a lot is put away by touch with two taps and a number', {
    timeout: 90_000,
  }, async () => {
    await takeAllOut();
    const { page, complaints, close } = await openBrowser({ touch: true });
    await open(page);
    await page.getByText('No lots are stored here.').waitFor();
    await page.getByRole('button', { name: 'Pea shoots', exact: true }).tap();
    await weightHasFocus(page);
    await page.keyboard.type('6,5');
    await page.getByRole('button', { name: 'Put away', exact: true }).tap();
    await said(page, /The hub has stored: 6\.5.kg Pea shoots/);
    expect((await lots()).map(({ crop, kg }) => [crop, kg])).toEqual([['pea-shoots', 6.5]]);
    // The same once more is one tap, and for a minute there is a way back.
    await page.getByRole('button', { name: /^Same as last time: 6\.5.kg Pea shoots$/ }).tap();
    await until(async () => (await lots()).length === 2, 'a second lot');
    await page.getByRole('button', { name: 'Undo' }).tap();
    await said(page, /Taken back/);
    expect(await lots()).toHaveLength(1);
    expect(complaints).toEqual([]);
    await close();
  });

  test('a lot is put away, partly sold and looked up by keyboard alone', {
    timeout: 90_000,
  }, async () => {
    await takeAllOut();
    const { page, complaints, close } = await openBrowser({ width: 1280 });
    await open(page);
    const salad = page.getByRole('button', { name: 'Salad leaves', exact: true });
    await tabTo(page, '.quick-crops button');
    for (let i = 0; i < 8; i++) {
      const focused = await page.evaluate<string>('document.activeElement.textContent');
      if (focused === 'Salad leaves') break;
      await page.keyboard.press('Tab');
    }
    await page.keyboard.press('Enter');
    await until(async () => (await salad.getAttribute('aria-pressed')) === 'true', 'the crop');
    await weightHasFocus(page);
    await page.keyboard.type('8');
    await page.keyboard.press('Enter');
    await said(page, /stored: 8.kg Salad leaves/);
    await page.getByRole('heading', { name: /8.kg Salad leaves/ }).waitFor();
    await tabTo(page, 'button[aria-label^="Take from it"]');
    await page.keyboard.press('Enter');
    const form = page.getByRole('form', { name: /^Take from it/ });
    await form.getByLabel('How much, in kg').fill('3');
    await page.keyboard.press('Enter');
    await said(page, /stored: sold, 3.kg Salad leaves/);
    await page.getByRole('heading', { name: /5.kg Salad leaves/ }).waitFor();
    await page.getByRole('button', { name: /^History/ }).press('Enter');
    await page.getByText(/Put away, 8.kg\./).waitFor();
    await page.getByText(/Sold: 3.kg/).waitFor();
    expect(complaints).toEqual([]);
    await close();
  });

  test('a crop that chills is warned about before the weight is typed, and needs a name', {
    timeout: 90_000,
  }, async () => {
    const { page, close } = await openBrowser({ touch: true });
    await open(page);
    await page.getByRole('button', { name: 'Basil', exact: true }).tap();
    await page
      .getByText(/Basil is hurt below 12.°C; the cool room has been at [\d.]+.°C/)
      .waitFor();
    await weightHasFocus(page);
    await page.keyboard.type('2');
    const before = (await lots()).length;
    await page.getByRole('button', { name: 'Put it there anyway' }).tap();
    await page.waitForTimeout(300);
    expect(await lots()).toHaveLength(before); // the browser asks for the name first
    await page.getByLabel('Your name').fill('Ada');
    await page.getByRole('button', { name: 'Put it there anyway' }).tap();
    await said(page, /stored: 2.kg Basil/);
    const basil = (await lots()).find(({ crop }) => crop === 'basil');
    expect(basil?.override).toMatchObject({ by: 'Ada', warning: expect.stringMatching(/hurt/) });
    await close();
  });

  test('what was done and a probe check are entered, and stand on the sheet for paper', {
    timeout: 90_000,
  }, async () => {
    const { page, complaints, close } = await openBrowser({ width: 1280 });
    await open(page);
    await page.getByText('Enter what was done', { exact: true }).click();
    const form = page.getByRole('form', { name: 'Enter what was done' });
    await form.getByLabel('What was seen').fill('Generator stopped');
    await form.getByLabel('What was done').fill('Started it again');
    await form.getByLabel(/^Core reading/).fill('4,5');
    await form.getByLabel('By whom').fill('Ada');
    await form.getByRole('button', { name: 'Store it' }).click();
    await form.getByText('The hub has stored what was done.').waitFor();
    await page.getByText('Check cool-air', { exact: true }).click();
    const check = page.getByRole('form', { name: 'Check cool-air' });
    await check.getByLabel('It reads, in °C').fill('0.2');
    await check.getByRole('button', { name: 'Store it' }).click();
    await check.getByText('The hub has stored the check.').waitFor();

    await page.getByRole('link', { name: 'The record to print' }).click();
    await page.getByRole('heading', { name: 'Temperature record: Cool room' }).waitFor();
    const sheet = page.locator('.record-sheet');
    await sheet.getByText(/Seen: Generator stopped Done: Started it again/).waitFor();
    await sheet.getByText(/cool-air: off by \+0\.2.°C, by Ada; corrected from then on/).waitFor();
    for (const words of [/a record, not a verdict/, /certified recorder/, /food-safety officer/])
      expect(await sheet.textContent()).toMatch(words);
    await page.emulateMedia({ media: 'print' });
    for (const hidden of ['nav', 'button', 'input', '.alarm-notice'])
      expect(await page.locator(`${hidden}:visible`).count(), hidden).toBe(0);
    const ground = await page.evaluate<string>(
      "getComputedStyle(document.querySelector('.record-sheet')).color + getComputedStyle(document.querySelector('.record-sheet')).backgroundColor",
    );
    expect(ground).toBe('rgb(0, 0, 0)rgb(255, 255, 255)');
    expect((await page.pdf({ format: 'A4' })).length).toBeGreaterThan(5000);
    const log = await season.hub().get<CoolRoomLog>('/api/cool-rooms/cool-room/log');
    expect(log.actions.at(-1)).toMatchObject({ by: 'Ada', core: 4.5 });
    expect(complaints).toEqual([]);
    await close();
  });

  test.for([320, 360, 1280])(
    'at %d px with every form open nobody is shut out',
    {
      timeout: 90_000,
    },
    async (width) => {
      await season.hub().post('/api/lots', { crop: 'salad-leaves', kg: 4, place: 'cool-room' });
      const { page, complaints, close } = await openBrowser({ width });
      await open(page);
      await page.getByRole('button', { name: 'Strawberries', exact: true }).click();
      await page
        .getByRole('button', { name: /^Take from it/ })
        .first()
        .click();
      await page.getByRole('button', { name: 'Thrown out' }).first().click();
      await page
        .getByRole('button', { name: /^Correct it/ })
        .last()
        .click();
      await page.evaluate(
        "document.querySelectorAll('details').forEach((one) => (one.open = true))",
      );
      await fitsItsWidth(page);
      expect(await shutsOut(page)).toEqual([]);
      expect(complaints).toEqual([]);
      await close();
    },
  );

  test('when the hub is away the page says so, keeps what it shows, and stores nothing', {
    timeout: 90_000,
  }, async () => {
    const { page, close } = await openBrowser();
    await open(page);
    const before = (await lots()).length;
    await page.route('**/api/lots', (route) => route.abort());
    await page.getByRole('button', { name: 'Strawberries', exact: true }).click();
    const weight = page.locator('.quick input').first();
    await weight.fill('3'); // waits until the field is there
    await weight.press('Enter');
    await page.getByText('1 entry waits to be sent.').waitFor();
    expect(await lots()).toHaveLength(before);
    await page.unrouteAll({ behavior: 'wait' });
    await page.locator('#waiting').waitFor({ state: 'hidden', timeout: 45_000 });
    expect(await lots()).toHaveLength(before + 1);
    await page.goto(`${season.page}/cool-room?room=attic`);
    await page.getByText('No such cool room on this farm.').waitFor();
    await close();
  });
});
