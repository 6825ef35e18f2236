import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { FarmDescription, Lot } from '../../hub/contract/index.ts';
import { fitsItsWidth, hasChromium, needsChromium, openBrowser, shutsOut } from './browser.ts';
import { type SeasonHub, startSeasonHub } from './seasonHub.ts';

// A farm that reads °F, pounds and a clock of twelve hours. 37.4 °F is 3 °C, and a pound 0.45359237 kg:
// NIST SP 811, Appendix B, from memory.

const KILOGRAMS_IN_A_POUND = 0.45359237;

describe.skipIf(!hasChromium)(`units in Chromium${needsChromium}`, () => {
  let season: SeasonHub;
  beforeAll(async () => {
    season = await startSeasonHub();
  }, 120_000);
  afterAll(() => season?.kill());

  /** What is read without opening anything: citations keep the units of their authors. */
  const seen = (page: Page) => page.evaluate<string>("document.getElementById('page').innerText");
  const choose = (page: Page, label: string, option: string) =>
    page.getByRole('combobox', { name: label }).selectOption({ label: option });

  test('a page that is switched reads °F, lb and am and pm, and sends °C and kg', {
    timeout: 120_000,
  }, async () => {
    const { page, complaints, close } = await openBrowser();
    await page.goto(`${season.page}/set-up/units`);
    await choose(page, 'Temperatures', 'Fahrenheit (°F)');
    await choose(page, 'Weights', 'pounds (lb)');
    await choose(page, 'Clock', '12 hours (7:40 pm)');
    await choose(page, 'First day of the week', 'Sunday');
    await page.getByText('Farm: temperatures in not told → F').waitFor();
    expect(await shutsOut(page)).toEqual([]);
    await fitsItsWidth(page);
    await page.getByRole('button', { name: 'Store this' }).click();
    await expect
      .poll(() => page.evaluate("localStorage.getItem('dewpost reading')"), { timeout: 20_000 })
      .toContain('"temperature":"F"');
    const { description } = await season.hub().get<FarmDescription>('/api/farm/description');
    expect(description?.farm).toMatchObject({
      units: { temperature: 'F', weight: 'lb', clock: 12, weekStart: 'sunday' },
    });

    await page.goto(season.page);
    await page
      .getByText(/\d\s°F/)
      .filter({ visible: true })
      .first()
      .waitFor();
    const today = await seen(page);
    expect(today).toMatch(/As of \d{1,2}:\d\d\s[ap]m/);
    expect(today).not.toMatch(/°C|\bkg\b|\b([01]\d|2[0-3]):[0-5]\d(?!\s[ap]m)/);

    await page.goto(`${season.page}/cool-room`);
    await page
      .getByText(/set temperature/)
      .filter({ visible: true })
      .first()
      .waitFor();
    expect(await seen(page)).not.toMatch(/°C/);
    await page.getByRole('button', { name: 'Strawberries', exact: true }).click();
    await page.getByLabel('Weight in lb').fill('2.5');
    await page.getByRole('button', { name: 'Put away', exact: true }).click();
    await page.getByText('The hub has stored: 2.5\u00a0lb Strawberries').waitFor();
    const lots = await season.hub().get<Lot[]>('/api/lots');
    const newest = lots.find(({ crop }) => crop.startsWith('strawberr'));
    expect(newest?.kg).toBeCloseTo(2.5 * KILOGRAMS_IN_A_POUND, 3);

    await page.goto(`${season.page}/set-up/places`);
    await page.getByRole('button', { name: /^Change: Cool room/ }).click();
    await page.getByLabel('Set temperature, °F').fill('37.4');
    await page.getByRole('button', { name: 'Store this' }).click();
    await page
      .getByText(/The hub has stored this|Nothing changes yet/)
      .first()
      .waitFor();
    await page.reload();
    await page.getByRole('button', { name: /^Change: Cool room/ }).click();
    expect(await page.getByLabel('Set temperature, °F').inputValue()).toBe('37.4');
    const now = await season.hub().get<FarmDescription>('/api/farm/description');
    const places = (now.description?.places ?? []) as { kind: string; setPoint?: number }[];
    expect(places.find(({ kind }) => kind === 'cool-room')?.setPoint).toBe(3);
    expect(complaints).toEqual([]);
    await close();
  });
});
