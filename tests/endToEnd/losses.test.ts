import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Loss, LossHistory } from '../../hub/contract/index.ts';
import { fitsItsWidth, hasChromium, needsChromium, openBrowser, shutsOut } from './browser.ts';
import { tempFolder, until } from './processes.ts';
import { type SeasonHub, startSeasonHub } from './seasonHub.ts';
import { SMALL_PICTURE } from './smallPicture.ts';

// The page of losses as it is used: in a tunnel, with one hand, and at a desk.

describe.skipIf(!hasChromium)(`the page of losses in Chromium${needsChromium}`, () => {
  let season: SeasonHub;
  beforeAll(async () => {
    season = await startSeasonHub();
  }, 120_000);
  afterAll(() => season?.kill());

  const losses = () => season.hub().get<Loss[]>('/api/losses');
  const holding = async () => (await losses()).filter(({ state }) => state === 'holds');
  const open = async (page: Awaited<ReturnType<typeof openBrowser>>['page']) => {
    await page.goto(`${season.page}/losses`);
    await page.getByRole('form', { name: 'Log a loss' }).waitFor();
    await page.getByRole('heading', { name: 'Tunnels, week by week' }).waitFor();
  };

  test('a loss is logged in three taps at 320 px, and taken back with a fourth', {
    timeout: 90_000,
  }, async () => {
    const { page, complaints, close } = await openBrowser({ width: 320, touch: true });
    await open(page);
    const before = (await holding()).length;
    const form = page.getByRole('form', { name: 'Log a loss' });
    let taps = 0;
    const tap = async (name: RegExp) => {
      await form.getByRole('button', { name }).first().tap();
      taps += 1;
    };
    await tap(/^Long House$/);
    await tap(/^A quarter$/);
    await tap(/^Grey mould/);
    await page
      .getByText(/The hub has stored: 25.% of 36.trays Basil, grey mould, Long House\./)
      .waitFor();
    expect(taps).toBe(3);
    const [stored] = await holding();
    expect(stored).toMatchObject({ place: 'long-house', crop: 'basil', share: 0.25, kg: 3.15 });
    expect(stored?.day).toBe('2026-04-23');
    await page.getByRole('button', { name: 'Undo' }).tap();
    await page.getByText('Taken back; its history keeps both.').waitFor();
    expect(await holding()).toHaveLength(before);
    expect(complaints).toEqual([]);
    await close();
  });

  test('a pin opens its entry: a photo is added and deleted, a correction kept as history', {
    timeout: 120_000,
  }, async () => {
    await season.hub().post<LossHistory>('/api/losses', {
      ...{ place: 'sun-house', crop: 'basil', amount: 2, unit: 'trays', look: 'wilted' },
      of: { amount: 22, unit: 'trays' },
    });
    const picture = join(tempFolder(), 'leaf.png');
    writeFileSync(picture, SMALL_PICTURE);
    const { page, complaints, close } = await openBrowser({ width: 360 });
    await open(page);
    await page
      .getByRole('button', { name: /^Losses of 23 Apr: 2.trays of 22.trays Basil, wilted/ })
      .click();
    const entry = page.getByRole('region', { name: 'Entry' });
    await entry.getByText(/Entered: 2.trays of 22.trays Basil, wilted\./).waitFor();
    await entry.getByLabel('Add a photo').setInputFiles(picture);
    await entry.getByRole('img', { name: /^Photo: / }).waitFor();
    const photo = (await holding()).find(({ place }) => place === 'sun-house')?.photo ?? '';
    const served = await fetch(season.page + photo);
    expect(served.headers.get('content-type')).toBe('image/jpeg'); // made anew in the browser
    expect(
      await page.evaluate<boolean>(
        "document.querySelector('.kept-photo').complete && document.querySelector('.kept-photo').naturalWidth > 0",
      ),
    ).toBe(true);

    await entry.getByRole('button', { name: 'Correct it' }).click();
    const form = entry.getByRole('form', { name: /^Correct it/ });
    await form.getByLabel('Amount').fill('3');
    await form.getByLabel('Why it is corrected').fill('counted again');
    await form.getByRole('button', { name: 'Store it' }).click();
    await entry.getByText(/Corrected \(counted again\): how much 3.trays\./).waitFor();
    await entry.getByRole('heading', { name: /3.trays of 22.trays Basil/ }).waitFor();

    await entry.getByRole('button', { name: 'Delete the photo' }).click();
    await entry.getByText('The photo was withdrawn and deleted.').waitFor();
    expect((await fetch(season.page + photo)).status).toBe(404);

    await entry.getByRole('button', { name: /^Take this back: Corrected/ }).click();
    await entry.getByRole('heading', { name: /2.trays of 22.trays Basil/ }).waitFor();
    expect((await holding()).find(({ place }) => place === 'sun-house')).toMatchObject({
      amount: 2,
    });
    // The photo that is gone is not there when its address is asked for by a page.
    expect(complaints.filter((one) => !/404/.test(one))).toEqual([]);
    await close();
  });

  test('one tap says that nothing else was lost in a week', { timeout: 90_000 }, async () => {
    const { page, close } = await openBrowser({ touch: true });
    await open(page);
    // The story begins on a Thursday: the last week can be spoken for.
    await page.getByRole('button', { name: 'Nothing lost elsewhere in the week of 13 Apr' }).tap();
    await page.getByText('Said for the week of 13 Apr: nothing else lost.').waitFor();
    await page
      .getByText(/\d+ said to have had none/)
      .first()
      .waitFor();
    await page.locator('.quiet-week').getByRole('button', { name: 'Undo' }).tap();
    await page
      .getByRole('button', { name: 'Nothing lost elsewhere in the week of 13 Apr' })
      .waitFor();
    await close();
  });

  test('what a lot tells is asked about before it is stored a second time', {
    timeout: 90_000,
  }, async () => {
    const lot = await season
      .hub()
      .post<{ id: string }>('/api/lots', { crop: 'salad-leaves', kg: 8, place: 'cool-room' });
    const thrown = await fetch(`${season.page}/api/lots/${lot.id}`, {
      method: 'PATCH',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ take: { how: 'thrown-out', kg: 2, by: 'Ada' } }),
    });
    expect(thrown.status).toBe(200);
    const { page, close } = await openBrowser();
    await open(page);
    const form = page.getByRole('form', { name: 'Log a loss' });
    await form.getByRole('button', { name: 'Cool room', exact: true }).click();
    await form.getByRole('button', { name: /^Salad leaves/ }).click();
    await form.getByRole('button', { name: 'A quarter' }).click();
    await form.getByRole('button', { name: /^Wilted/ }).click();
    await form
      .getByText(/perhaps the same: 2\.0.kg Salad leaves were thrown out of a lot/)
      .waitFor();
    const before = (await holding()).length;
    await form.getByRole('button', { name: 'It is another loss: store it as well' }).click();
    await until(async () => (await holding()).length === before + 1, 'another loss');
    await close();
  });

  test.for([320, 360, 1280])(
    'at %d px with everything open nobody is shut out',
    {
      timeout: 240_000,
    },
    async (width) => {
      await season.hub().post('/api/losses', {
        ...{
          place: 'hollow-house',
          crop: 'pea-shoots',
          amount: 15,
          unit: 'share',
          look: 'stem-rot',
        },
        day: '2026-04-21',
      });
      const { page, complaints, close } = await openBrowser({ width });
      await open(page);
      const form = page.getByRole('form', { name: 'Log a loss' });
      await form.getByRole('button', { name: 'Hollow House', exact: true }).click();
      await form.getByRole('button', { name: 'A tenth' }).click();
      await page
        .getByRole('button', { name: /^Losses of 2\d Apr: 15/ })
        .first()
        .click();
      await page.getByRole('button', { name: 'Correct it' }).first().click();
      await page.evaluate(
        "document.querySelectorAll('details').forEach((one) => (one.open = true))",
      );
      await fitsItsWidth(page);
      expect(await shutsOut(page)).toEqual([]);
      expect(complaints).toEqual([]);
      await close();
    },
  );

  test('on paper there are the strips and the sentences, and nothing that needs a finger', {
    timeout: 90_000,
  }, async () => {
    const { page, close } = await openBrowser({ width: 1280 });
    await open(page);
    await page.emulateMedia({ media: 'print' });
    expect(await page.locator('form:visible, input:visible, select:visible').count()).toBe(0);
    expect(await page.locator('.loss-strip svg:visible').count()).toBeGreaterThan(3);
    expect((await page.pdf({ format: 'A4' })).length).toBeGreaterThan(5000);
    await close();
  });

  test('when the hub is away the page says so and stores nothing', {
    timeout: 90_000,
  }, async () => {
    const { page, close } = await openBrowser();
    await open(page);
    const before = (await losses()).length;
    await page.route('**/api/losses', (route) => route.abort());
    const form = page.getByRole('form', { name: 'Log a loss' });
    await form.getByRole('button', { name: 'Sun House', exact: true }).click();
    await form.getByRole('button', { name: '1 tray', exact: true }).click();
    await form.getByRole('button', { name: /^Eaten/ }).click();
    await page.getByText('1 entry waits to be sent.').waitFor();
    expect(await losses()).toHaveLength(before);
    expect(await page.getByText(/The hub has stored/).count()).toBe(0);
    await page.unrouteAll({ behavior: 'wait' });
    await page.locator('#waiting').waitFor({ state: 'hidden', timeout: 45_000 });
    expect(await losses()).toHaveLength(before + 1);
    await close();
  });
});
