import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import ICAL from 'ical.js';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { SowingPlanShown } from '../../hub/contract/index.ts';
import { fitsItsWidth, hasChromium, needsChromium, openBrowser, shutsOut } from './browser.ts';
import { clockFrom, type HubProcess, startHub } from './hubProcess.ts';
import { tempFolder } from './processes.ts';

// A grower on a Monday in May: what is sown this week, what Thursday is covered by, a weight changed
// with two taps, the week on a sheet of paper, and the plan in a calendar program.

const MONDAY = Date.parse('2026-05-04T07:00:00Z');
// An invented garden. Every crop tells its days, so that each sowing can be worked out by hand.
const garden = `
farm: { name: Test Garden (invented), zone: Europe/Dublin, lat: 51.9, lon: -8.3, money: EUR, wage: 16 }
places:
  - { id: long-house, name: Long House, kind: tunnel, capacity: 40 }
  - { id: sun-house, name: Sun House, kind: tunnel, capacity: 12 }
  - { id: outside, name: Outside, kind: outdoor }
  - { id: cool-room, name: Cool room, kind: cool-room, setPoint: 3, limit: 5 }
crops:
  - { id: cress, name: Cress, price: 20, perTray: 0.2, days: [8, 10], seed: 0.5, minutes: { sow: 3 }, keeps: { days: 5 } }
  - { id: peas, name: Pea shoots, price: 18, perTray: 0.5, days: [10, 12], seed: 0.8, minutes: { sow: 4 }, keeps: { days: 6 } }
  - { id: basil, name: Basil, price: 30, perTray: 0.35, days: 28, keeps: { days: 3 } }
mixes:
  - { id: salad, name: Salad mix, price: 24, parts: [ { crop: cress, share: 0.4 }, { crop: peas, share: 0.6 } ] }
deliveries:
  - { day: thursday, wants: [ { of: salad, kg: 4 }, { of: basil, kg: 3 } ] }
  - { day: friday, wants: [ { of: cress, kg: 1 } ] }
`;

describe.skipIf(!hasChromium)(`the sowing plan in Chromium${needsChromium}`, () => {
  let hub: HubProcess;
  beforeAll(async () => {
    const data = tempFolder();
    const farm = join(data, 'farm.yaml');
    writeFileSync(farm, garden);
    hub = await startHub({ data, farm, open: true, clock: clockFrom(MONDAY, 1) });
    await hub.post('/api/batches', {
      ...{ crop: 'peas', trays: 6, place: 'sun-house', meantFor: '2026-05-07' },
      sownAt: '2026-04-26T08:00:00Z',
    });
    await hub.post('/api/lots', { crop: 'cress', kg: 1, place: 'cool-room' });
  }, 120_000);
  afterAll(() => hub?.kill());

  test.for([
    { width: 320, scheme: 'light' as const },
    { width: 360, scheme: 'dark' as const },
    { width: 1280, scheme: 'light' as const },
  ])(
    'at $width px nobody is shut out and nothing is cut off',
    { timeout: 120_000 },
    async (look) => {
      const { page, complaints, close } = await openBrowser(look);
      for (const [path, shows] of [
        ['/sowing', 'To sow'],
        ['/week', 'Print'],
        ['/week?from=2026-05-11', 'Print'],
      ] as const) {
        await page.goto(hub.page + path);
        await page.getByText(shows, { exact: true }).first().waitFor();
        for (const summary of await page.locator('main details > summary').all())
          if (await summary.isVisible()) await summary.click();
        await fitsItsWidth(page);
        expect(await shutsOut(page), path).toEqual([]);
      }
      expect(complaints).toEqual([]);
      await close();
    },
  );

  test('this week is read off the page, and a weight is changed with two taps', {
    timeout: 120_000,
  }, async () => {
    const { page, complaints, close } = await openBrowser({ width: 360, touch: true });
    await page.goto(`${hub.page}/sowing`);
    // By hand: pea shoots take 12 days at the most, so those for the 21st are sown on the 9th.
    const row = page.locator('.sowings > li', { hasText: 'Sat 9 May' });
    await row.getByText('5 trays of pea shoots').waitFor();
    const thursday = page.locator('.delivery', { hasText: 'Thursday 7 May' });
    await thursday.locator('p', { hasText: /3\skg of basil, because it is too late/ }).waitFor();
    await thursday.getByText('Where it comes from').click();
    await thursday.getByText('1 kg stored in the cool room').waitFor();
    await thursday.getByText(/2.4\skg growing in Sun House/).waitFor();

    await thursday.getByRole('button', { name: 'Change basil on Thu 7 May' }).click();
    await thursday.getByRole('button', { name: 'None', exact: true }).click();
    await page.getByText('The hub has kept: no basil on Thu 7 May.').waitFor();
    await thursday.getByText('(usually 3 kg; said by grower)').waitFor();
    expect(await thursday.getByText('kg of basil, because').count()).toBe(0);
    await thursday.getByRole('button', { name: 'Change basil on Thu 7 May' }).click();
    await thursday.getByRole('button', { name: 'As usual, 3 kg' }).click();
    await page.getByText('The hub has taken back the change of basil on Thu 7 May.').waitFor();
    await thursday.locator('p', { hasText: /3\skg of basil, because/ }).waitFor();
    expect(complaints).toEqual([]);
    await close();
  });

  test('what is sown is entered as a batch, and the plan counts on it', {
    timeout: 120_000,
  }, async () => {
    const { page, complaints, close } = await openBrowser({ width: 360 });
    await page.goto(`${hub.page}/sowing`);
    // Cress for Thursday the 14th: 1.6 kg are 8 trays, due today.
    await page
      .getByRole('button', { name: /^Sown: 8 trays of cress in/ })
      .first()
      .click();
    await page.getByText('The hub has kept: 8 trays of cress, sown now, as a batch.').waitFor();
    const plan = await hub.get<SowingPlanShown>('/api/sowing-plan');
    const day = plan.deliveries.find(({ day }) => day === '2026-05-14');
    const cress = day?.parts.find(({ crop }) => crop === 'cress');
    expect(cress).toMatchObject({ covered: 1.6, toSow: 0, short: 0 });
    expect(complaints).toEqual([]);
    await close();
  });

  test('a calendar program reads the plan at a secret address until it is closed', {
    timeout: 120_000,
  }, async () => {
    const { page, complaints, close } = await openBrowser({ width: 1280 });
    await page.goto(`${hub.page}/sowing`);
    await page.getByRole('button', { name: 'Make an address' }).click();
    const address = await page.getByLabel('Address for a calendar program').inputValue();
    expect(address).toMatch(/\/api\/calendar\/[\w-]{22}\.ics$/);
    await page.getByText(/speaks without TLS/).waitFor();
    const reply = await fetch(address); // no cookie, as such a program
    expect(reply.headers.get('content-type')).toBe('text/calendar; charset=utf-8');
    const calendar = new ICAL.Component(ICAL.parse(await reply.text()));
    const summaries = calendar
      .getAllSubcomponents('vevent')
      .map((event) => new ICAL.Event(event).summary.replaceAll('\u00a0', ' '));
    expect(summaries).toContain('Delivery: 4 kg salad mix, 3 kg basil');
    expect(summaries).toContain('Sow 5 trays of pea shoots in Long House');
    expect(summaries.some((one) => one.startsWith('Harvest pea shoots in Sun House'))).toBe(true);

    await page.getByRole('button', { name: 'Close the address' }).click();
    await page.getByText('No calendar program can read the plan yet.').waitFor();
    expect((await fetch(address)).status).toBe(404);
    expect(complaints).toEqual([]);
    await close();
  });

  test('the week goes onto one sheet of paper, next week too', { timeout: 120_000 }, async () => {
    const { page, complaints, close } = await openBrowser({ width: 1280 });
    await page.goto(`${hub.page}/week`);
    await page.getByText('Monday 4 May to Sunday 10 May', { exact: false }).waitFor();
    for (const path of ['/week', '/week?from=2026-05-11']) {
      await page.goto(hub.page + path);
      await page.getByRole('table').waitFor();
      await page.getByText('3 kg basil').first().waitFor();
      const paper = (await page.pdf({ format: 'A4', preferCSSPageSize: true })).toString('latin1');
      // PDF 32000-1:2008, 7.7.3.3: each page is an object of the type Page.
      expect(paper.match(/\/Type\s*\/Page\b(?!s)/g), path).toHaveLength(1);
      await page.emulateMedia({ media: 'print' });
      const smallest = await page.evaluate<number>(
        "Math.min(...[...document.querySelectorAll('.week-sheet *')].filter((one) => one.textContent.trim()).map((one) => parseFloat(getComputedStyle(one).fontSize)))",
      );
      expect(smallest).toBeGreaterThan(10.5); // px: 8 pt, small print that is still read; ours
      expect(await page.locator('button:visible, nav:visible').count()).toBe(0);
      await page.emulateMedia({ media: null });
    }
    await page.goto(`${hub.page}/week`);
    await page.getByRole('link', { name: 'The week after' }).click();
    await page.getByText('Monday 11 May to Sunday 17 May', { exact: false }).waitFor();
    expect(complaints).toEqual([]);
    await close();
  });
});
