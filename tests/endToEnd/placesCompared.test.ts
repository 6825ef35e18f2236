import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { PlacesCompared, Task } from '../../hub/contract/index.ts';
import { fitsItsWidth, hasChromium, needsChromium, openBrowser, shutsOut } from './browser.ts';
import { clockFrom, dewpost, type HubProcess, startHub } from './hubProcess.ts';
import { tempFolder } from './processes.ts';
import { houseReadings, NOW, twoHouses } from './trayFarmFile.ts';

// A hub with two houses, one of them too hot for weeks: the page says so, the task asks to carry,
// and what is answered is kept.

describe.skipIf(!hasChromium)(`places compared${needsChromium}`, () => {
  let hub: HubProcess;
  beforeAll(async () => {
    const data = tempFolder();
    const { farm, readings } = twoHouses(data);
    houseReadings(readings);
    const taken = await dewpost('import', '--data', join(data, 'store'), '--farm', farm, readings);
    expect(taken).toMatchObject({ code: 0 });
    hub = await startHub({ data: join(data, 'store'), open: true, clock: clockFrom(NOW, 1) });
  }, 120_000);
  afterAll(() => hub?.kill());

  const asked = async () => {
    for (let i = 0; i < 120; i += 1) {
      const tasks = await hub.get<Task[]>('/api/tasks');
      const task = tasks.find(({ kind }) => kind === 'move-trays');
      if (task) return task;
      await new Promise((resolve) => setTimeout(resolve, 500));
    }
    throw new Error('Expected a task to move trays, got none');
  };

  test.for([
    { width: 320, scheme: 'dark' },
    { width: 360, scheme: 'light' },
    { width: 1280, scheme: 'light' },
  ] as const)(
    'the places page says where basil does best, at $width px',
    {
      timeout: 120_000,
    },
    async ({ width, scheme }) => {
      await asked();
      const { page, complaints, close } = await openBrowser({ width, scheme });
      await page.goto(`${hub.page}/places`);
      await page.getByText(/Basil did best in Sun House: ahead of Long House by/).waitFor();
      await page.getByRole('img', { name: /Hours a day of each place/ }).waitFor();
      await page.getByRole('cell', { name: '24.0' }).first().waitFor();
      await page.getByText(/move the trays there, Basil, from Long House to Sun House/).waitFor();
      for (const summary of ['Each place in words', 'Two by two', 'How a saving is estimated'])
        await page.getByText(summary, { exact: true }).click();
      await page.getByText(/Sun House was better than Long House by/).waitFor();
      await page.getByText(/ours, from no source, until twelve finished batches/).waitFor();
      await page.getByLabel('Days').selectOption('20');
      await page
        .getByText(/over 20 days/)
        .first()
        .waitFor();
      await fitsItsWidth(page);
      expect(await shutsOut(page)).toEqual([]);
      expect(complaints).toEqual([]);
      await close();
    },
  );

  test('the page of a place says what stands there and how the crop does', {
    timeout: 120_000,
  }, async () => {
    const { page, complaints, close } = await openBrowser({ width: 360 });
    await page.goto(`${hub.page}/places/long-house`);
    await page.getByRole('heading', { name: 'How the trays do here' }).waitFor();
    await page.getByRole('heading', { name: 'How Basil does here' }).waitFor();
    await page.getByText(/30 trays here, room for 10 more/).waitFor();
    await fitsItsWidth(page);
    expect(await shutsOut(page)).toEqual([]);
    expect(complaints).toEqual([]);
    await close();
  });

  test('a move that was answered with done can be taken back on the same page', {
    timeout: 120_000,
  }, async () => {
    const task = await asked();
    await hub.post(`/api/tasks/${encodeURIComponent(task.id)}/answer`, { answer: 'done' });
    const { page, complaints, close } = await openBrowser({ width: 360 });
    await page.goto(hub.page);
    await page.getByRole('button', { name: /It was not moved: take it back/ }).click();
    await page.getByText('Taken back; the record keeps both.').waitFor();
    expect(await shutsOut(page)).toEqual([]);
    expect(complaints).toEqual([]);
    await close();
    const { standing } = await hub.get<PlacesCompared>('/api/learn/places?crop=basil');
    expect(standing.find(({ place }) => place === 'long-house')?.verdict).toBe('act');
  });
});
