import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { CoolRoom, Lot } from '../../hub/contract/index.ts';
import { fitsItsWidth, hasChromium, needsChromium, openBrowser, shutsOut } from './browser.ts';
import { type SeasonHub, startSeasonHub } from './seasonHub.ts';

// What the cool room's page tells of the room itself, the sheet for panels, and a lot put right.

describe.skipIf(!hasChromium)(`a cool room's facts in Chromium${needsChromium}`, () => {
  let season: SeasonHub;
  beforeAll(async () => {
    season = await startSeasonHub();
  }, 120_000);
  afterAll(() => season?.kill());

  const lots = () => season.hub().get<Lot[]>('/api/lots');
  const open = async (page: Page) => {
    await page.goto(`${season.page}/cool-room`);
    await page.getByRole('heading', { name: 'The record of this week' }).waitFor();
  };
  const said = (page: Page, sentence: RegExp) =>
    page.locator('.lot-said').getByText(sentence).waitFor();

  test('its state, its cause, when it reaches the limit, its energy and its generator are told', {
    timeout: 90_000,
  }, async () => {
    const { page, complaints, close } = await openBrowser();
    await page.goto(`${season.page}/`);
    await page.locator('.cool-room').getByRole('link', { name: 'Cool room' }).click();
    await page.getByRole('heading', { name: 'The record of this week' }).waitFor();
    const room = await season.hub().get<CoolRoom>('/api/cool-rooms/cool-room');
    const state = page.locator('.room-state');
    await state
      .getByText(/Something is wrong since \d\d:\d\d \(.+\)\. It looks like the power\./)
      .waitFor();
    await state
      .getByText(/air at 5\.0.°C (between \d\d:\d\d and|at about|after) .*\d\d:\d\d/)
      .waitFor();
    expect(room.habits.learned).toBe(true);
    await page.getByText(/^Its cycle\. Usually from [\d.]+ to [\d.]+.°C/).waitFor();
    await page
      .getByText(/^Learned from the meter: it usually runs \d\d:\d\d to \d\d:\d\d/)
      .waitFor();
    await page
      .getByText(/(must|has to) run (by|now)/)
      .first()
      .waitFor();
    await page
      .getByText(/of petrol, .1?\d\.\d\d\. Burning it makes about [\d.]+.kg of CO₂/)
      .waitFor();
    for (const picture of [/^From now on with the cooling off/, /^Energy of each day/])
      await page.getByRole('img', { name: picture }).waitFor();
    await page.getByText('Energy by day in figures', { exact: true }).click();
    const rows = page.locator('.energy-figures tbody tr');
    expect(await rows.count()).toBe(room.energyDays.length);
    expect(complaints).toEqual([]);
    await close();
  });

  test('the sheet for panels and battery takes own numbers, keeps its cautions, and prints', {
    timeout: 90_000,
  }, async () => {
    const { page, complaints, close } = await openBrowser({ width: 320 });
    await open(page);
    await page.getByRole('link', { name: 'The sheet, line by line, to print' }).click();
    await page.getByRole('heading', { name: /^Solar and battery, worked on paper/ }).waitFor();
    const lines = page.locator('.solar-lines > div');
    await lines.filter({ hasText: 'Hours of full sun' }).getByText(/^3.h$/).waitFor();
    await page.getByText('Your own numbers', { exact: true }).click();
    const form = page.getByRole('form', { name: 'Your own numbers' });
    await form.getByLabel(/^Hours of full sun/).fill('1,5');
    await form.getByRole('button', { name: 'Work it out' }).click();
    await lines.filter({ hasText: 'Hours of full sun' }).getByText('your own number').waitFor();
    expect(new URL(page.url()).searchParams.get('sunHours')).toBe('1.5');
    expect(await page.locator('.record-sheet').textContent()).toMatch(/licensed person/);
    await fitsItsWidth(page);
    expect(await shutsOut(page)).toEqual([]);
    await page.emulateMedia({ media: 'print' });
    expect(await page.locator('button:visible').count()).toBe(0);
    expect(await lines.count()).toBeGreaterThan(7);
    expect((await page.pdf({ format: 'A4' })).length).toBeGreaterThan(5000);
    expect(complaints).toEqual([]);
    await close();
  });

  test('a lot is corrected in all that was said of it, and the correction is taken back', {
    timeout: 90_000,
  }, async () => {
    await season.hub().post('/api/lots', { crop: 'salad-leaves', kg: 4, place: 'cool-room' });
    const { page, complaints, close } = await openBrowser({ width: 1280 });
    await open(page);
    await page.getByRole('button', { name: /^Correct it/ }).click();
    const form = page.getByRole('form', { name: /^Correct it/ });
    await form.locator('select').first().selectOption({ label: 'Pea shoots' });
    await form.getByLabel('Weight in kg').fill('3,5');
    await form.getByLabel('Harvested from').selectOption({ label: 'Hollow House' });
    await form.getByLabel('Cooled').selectOption('ice');
    await form.getByLabel('Food rules see it as').selectOption('whole');
    await form.getByLabel('Price per kg').fill('19');
    await form.getByRole('button', { name: 'Store it' }).click();
    await said(page, /The hub has stored the correction/);
    expect(await lots()).toMatchObject([
      {
        ...{ crop: 'pea-shoots', kg: 3.5, from: 'hollow-house', cooled: 'ice' },
        ...{ class: 'whole', price: 19 },
      },
    ]);
    await page.getByRole('button', { name: /^History/ }).click();
    await page.getByText(/Corrected: crop Pea shoots, weight 3\.5.kg,/).waitFor();
    await page.getByRole('button', { name: /^Take back: Corrected/ }).click();
    await said(page, /Taken back/);
    expect(await lots()).toMatchObject([{ crop: 'salad-leaves', kg: 4, cooled: null }]);
    expect(complaints).toEqual([]);
    await close();
  });
});
