import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { madeUpStation, scenario, writeStation } from '../../simulators/index.ts';
import { fitsItsWidth, hasChromium, needsChromium, openBrowser, shutsOut } from './browser.ts';
import { gardenFile } from './gardenFile.ts';
import { clockFrom, dewpost, startHub } from './hubProcess.ts';
import { tempFolder } from './processes.ts';

// A grower in October: a station's past is taken in, fruit is counted, the page says when to stop.

const AUTUMN = Date.parse('2025-10-10T12:00:00Z');

describe.skipIf(!hasChromium)(`the season in Chromium${needsChromium}`, () => {
  let hub: Awaited<ReturnType<typeof startHub>>;
  const data = tempFolder();
  beforeAll(async () => {
    const farm = gardenFile(data);
    expect(await dewpost('farm', 'import', farm, '--data', data)).toMatchObject({ code: 0 });
    hub = await startHub({ data, open: true, clock: clockFrom(AUTUMN, 1) });
  }, 120_000);
  afterAll(() => hub?.kill());
  const address = () => `${hub.page}/places/south-patch`;

  test('before anything was taken in the page says what is missing, and how to mend it', {
    timeout: 90_000,
  }, async () => {
    const { page, complaints, close } = await openBrowser({ width: 320 });
    await page.goto(address());
    await page.getByText(/Cannot say without a count of the fruit/).waitFor();
    await page
      .getByText(/Cannot say without the past record of a weather station/)
      .first()
      .waitFor();
    await page.getByText('npx dewpost import FILE', { exact: false }).first().waitFor();
    await fitsItsWidth(page);
    expect(await shutsOut(page)).toEqual([]);
    expect(complaints).toEqual([]);
    await close();
  });

  test('a station and a count make a plan with its pictures, tables and a trial on past autumns', {
    timeout: 180_000,
  }, async () => {
    const file = join(data, 'station.csv');
    writeStation(scenario, { years: 14, to: AUTUMN }, file);
    const { name, lat, lon } = madeUpStation;
    const where = [`--lat=${lat}`, `--lon=${lon}`, '--station', name];
    const taken = await dewpost('import', file, '--data', data, ...where);
    expect(taken).toMatchObject({ code: 0, err: '' });

    const { page, complaints, close } = await openBrowser({ width: 360 });
    await page.goto(address());
    await page.getByLabel('kg', { exact: true }).fill('6');
    await page.getByRole('button', { name: 'Another line' }).click();
    await page.getByLabel('Stage').nth(1).selectOption('ripe');
    await page.getByLabel('kg', { exact: true }).nth(1).fill('4');
    await page.getByRole('button', { name: 'Keep this count' }).click();
    await page.getByText('The hub has kept the count.').waitFor();
    await page.getByText(/Best to stop /).waitFor();
    await page.getByRole('img', { name: /Still to gain, and lost by waiting/ }).waitFor();
    await page.getByText('4.0 kg ripe, ripe about 10 Oct').waitFor();

    await page.getByText('Your own figures').click();
    await page.getByLabel('Price of a kilogram, EUR').fill('20');
    await page.getByRole('button', { name: 'Keep these figures' }).click();
    await page.getByText('The hub has kept the figures.').waitFor();
    await page.getByText('What it rests on').click();
    await page.getByText('20.00 EUR').waitFor();

    await page.getByRole('button', { name: 'Try it on past autumns' }).click();
    await page
      .getByText(/In \d+ autumns this rule would have stopped/)
      .waitFor({ timeout: 60_000 });
    await page.getByText(/Stopping on the average date of the frost/).waitFor();
    for (const summary of ['Day by day as a table', 'Year by year', 'Stations taken in'])
      await page.getByText(summary, { exact: true }).click();
    await fitsItsWidth(page);
    expect(await shutsOut(page)).toEqual([]);
    expect(complaints).toEqual([]);
    await close();
  });

  test('a station is removed after being asked once, and the odds go with it', {
    timeout: 90_000,
  }, async () => {
    const { page, complaints, close } = await openBrowser({ width: 1280, scheme: 'dark' });
    await page.goto(address());
    await page
      .getByRole('img', { name: /Chance that/ })
      .first()
      .waitFor();
    await page.getByText('Stations taken in', { exact: true }).click();
    await page.getByRole('button', { name: `Remove ${madeUpStation.name}` }).click();
    await page.getByRole('button', { name: 'Keep it' }).click();
    await page.getByRole('button', { name: `Remove ${madeUpStation.name}` }).click();
    await page.getByRole('button', { name: 'Remove it' }).click();
    await page
      .getByText(/Cannot say without the past record of a weather station/)
      .first()
      .waitFor();
    await page.getByText('None yet.').waitFor();
    expect(await shutsOut(page)).toEqual([]);
    expect(complaints).toEqual([]);
    await close();
  });

  test('a hub that does not answer is said to, and can be asked again', {
    timeout: 90_000,
  }, async () => {
    const { page, close } = await openBrowser();
    await page.route('**/api/frost/**', (route) =>
      route.fulfill({ status: 500, json: { error: 'The hub failed to answer; its log says why' } }),
    );
    await page.goto(address());
    await page.getByText('The hub failed to answer').first().waitFor();
    await page.unroute('**/api/frost/**');
    for (const button of await page.getByRole('button', { name: 'Try again' }).all())
      await button.click();
    await page
      .getByText(/Best to stop|Cannot say without/)
      .first()
      .waitFor();
    await close();
  });
});
