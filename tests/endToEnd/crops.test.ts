import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { fitsItsWidth, hasChromium, needsChromium, openBrowser, shutsOut } from './browser.ts';
import { clockFrom, dewpost, type HubProcess, startHub } from './hubProcess.ts';
import { tempFolder } from './processes.ts';

// Made up: a house at 20 °C and one at 14 °C, and a crop that counts from 5 °C and takes 180 units, 12 days
// in the one and 20 in the other. The farm file has its base wrong. Midnight there is UTC's.

const DAY = 86_400_000;
const START = Date.UTC(2026, 4, 10, 9);
const farm = `
farm: { name: Test Garden (invented), zone: Etc/UTC, lat: 51.9, lon: -8.3, money: EUR, wage: 16 }
places:
  - { id: long-house, name: Long House, kind: tunnel, capacity: 40 }
  - { id: sun-house, name: Sun House, kind: tunnel, capacity: 40 }
probes:
  - { id: p1, place: long-house, spot: canopy, every: 1h }
  - { id: p2, place: sun-house, spot: canopy, every: 1h }
crops:
  - { id: basil, name: Basil, base: 8, price: 30, perTray: 0.35, young: { days: [8, 10], perTray: 0.2, price: 40 } }
`;
const at = (t: number) => new Date(t).toISOString();

function batchesFile(): string {
  const rows = ['batch,event,at,crop,trays,place,kg,look,stage,clears'];
  for (let i = 0; i < 8; i++) {
    const warm = i % 2 === 0;
    const sown = START - (95 - 7 * i) * DAY;
    const ready = sown + (warm ? 12 : 20) * DAY;
    rows.push(`b${i},sown,${at(sown)},basil,6,${warm ? 'long-house' : 'sun-house'},,,,`);
    rows.push(`b${i},noted,${at(ready)},,,,,ready,,`);
    rows.push(`b${i},cut,${at(ready + DAY)},,6,,${2 + 0.1 * i},,later,yes`);
  }
  for (const [i, place] of ['long-house', 'sun-house', 'sun-house'].entries())
    rows.push(`n${i},sown,${at(START - 6 * DAY)},basil,6,${place},,,,`);
  return `${rows.join('\n')}\n`;
}

describe.skipIf(!hasChromium)(`what crops need in Chromium${needsChromium}`, () => {
  let hub: HubProcess;
  beforeAll(async () => {
    const data = tempFolder();
    const file = (name: string, text: string) => {
      writeFileSync(join(data, name), text);
      return join(data, name);
    };
    const readings: string[] = [];
    for (let t = START - 100 * DAY; t <= START; t += DAY / 24)
      for (const [probe, v] of [
        ['p1', 20],
        ['p2', 14],
      ] as const)
        readings.push(
          JSON.stringify({
            probe,
            quantity: 'temperature',
            t: at(t),
            value: v + ((t / 36e5) % 2) / 5,
          }),
        );
    const clock = clockFrom(START, 1);
    const told = `${at(clock.start)}/${clock.real}/1`;
    const take = async (path: string, ...more: readonly string[]) =>
      expect(await dewpost('import', '--data', data, '--clock', told, ...more, path)).toMatchObject(
        {
          ...{ code: 0, err: '' },
        },
      );
    await take(file('batches.csv', batchesFile()), '--farm', file('farm.yaml', farm));
    await take(file('readings.jsonl', readings.join('\n')));
    hub = await startHub({ data, open: true, clock });
  }, 120_000);
  afterAll(() => hub?.kill());

  test.for([
    { width: 360, scheme: 'light' },
    { width: 1280, scheme: 'dark' },
  ] as const)(
    'at $width px a base from own sowings, the heat they took, and both cuts side by side',
    { timeout: 120_000 },
    async ({ width, scheme }) => {
      const { page, complaints, close } = await openBrowser({ width, scheme });
      await page.goto(`${hub.page}/crops`);
      await page.getByRole('heading', { level: 2, name: 'Basil' }).waitFor();
      await page.getByText(/Heat counts from [45]\.\d\s°C, learned from \d own sowings/).waitFor();
      await page.getByText(/The next batch takes about 1[78]\d heat units/).waitFor();
      const heads = await page.locator('.young-or-later thead th').allTextContents();
      expect(heads.slice(1)).toEqual(['Young', 'Later']);
      await page.getByText('Past batches of Basil').first().click();
      await page.locator('.crop-needs details tbody tr').nth(7).waitFor();
      await fitsItsWidth(page);
      expect(await shutsOut(page)).toEqual([]);
      expect(complaints).toEqual([]);
      await close();
    },
  );

  test('one request tells when all batches are ready, each by the heat of its own house', {
    timeout: 120_000,
  }, async () => {
    const { page, complaints, close } = await openBrowser({ width: 360 });
    const asked: string[] = [];
    page.on('request', (request) => {
      const { pathname } = new URL(request.url());
      if (pathname.endsWith('/ready')) asked.push(pathname);
    });
    await page.goto(`${hub.page}/batches`);
    const card = (id: string) => page.locator(`#${id} .ready-words`).last();
    await card('n2').waitFor();
    // 180 units, six days of them had: six days more at 20 °C, fourteen at 14 °C.
    expect(await card('n0').textContent()).toMatch(/most likely \S+ 1[567] May.*By 8 own batches/);
    expect(await card('n1').textContent()).toMatch(/most likely \S+ 2[345] May.*By 8 own batches/);
    expect(await page.locator('.heat-picture').count()).toBe(3);
    expect([...new Set(asked)]).toEqual(['/api/batches/ready']);
    expect(complaints).toEqual([]);
    await close();
  });
});
