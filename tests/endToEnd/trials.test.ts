import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Trial } from '../../hub/contract/index.ts';
import { fitsItsWidth, hasChromium, openBrowser, shutsOut } from './browser.ts';
import { until } from './processes.ts';
import { type SeasonHub, startSeasonHub } from './seasonHub.ts';

// Trials of limits in a real hub: on a thread of their own, over its own store.

let season: SeasonHub;
beforeAll(async () => {
  season = await startSeasonHub();
}, 120_000);
afterAll(() => season?.kill());

const ask = async (method: 'GET' | 'POST' | 'DELETE', path: string, body?: unknown) => {
  const reply = await fetch(season.page + path, {
    method,
    ...(body === undefined
      ? {}
      : { headers: { 'content-type': 'application/json' }, body: JSON.stringify(body) }),
  });
  return { status: reply.status, body: (await reply.json()) as Trial & { error?: string } };
};
const WET = { changes: [{ what: 'wet-hours', of: 'long-house', to: 1 }] };

test('a limit is tried on what the hub has kept, and told in words', {
  timeout: 90_000,
}, async () => {
  const { status, body } = await ask('POST', '/api/trials', WET);
  expect(status, body.error).toBe(200);
  expect(body.changes[0]?.words.replaceAll('\u00a0', ' ')).toBe(
    'Long House: wet hours that ask for air, 1 h instead of 4 h',
  );
  let trial = body;
  await until(
    async () => {
      trial = (await ask('GET', `/api/trials/${body.id}`)).body;
      return trial.state !== 'running';
    },
    'a trial that is over',
    60_000,
  );
  expect(trial).toMatchObject({ state: 'done', progress: 1, place: 'Long House' });
  const row = trial.result?.rows.find(({ kind }) => kind === 'open-up');
  for (const day of row?.before.days ?? []) expect(row?.after.days).toContain(day);
  expect(trial.result?.words[0]).toMatch(/^Tried: Long House/);
  // Nothing of the farm is changed by trying.
  const farm = await (await fetch(`${season.page}/api/farm`)).json();
  expect(JSON.stringify(farm)).not.toContain('"hours":1');
});

test('a trial that is called off is over, and the next may begin', {
  timeout: 60_000,
}, async () => {
  const first = await ask('POST', '/api/trials', WET);
  const off = await ask('DELETE', `/api/trials/${first.body.id}`);
  expect(['canceled', 'done']).toContain(off.body.state);
  const next = await ask('POST', '/api/trials', WET);
  expect(next.status, next.body.error).toBe(200);
  await ask('DELETE', `/api/trials/${next.body.id}`);
});

test.for([
  [{ changes: [] }, /changes/],
  [{ changes: [{ what: 'wet-hours', of: 'attic', to: 2 }] }, /^Expected whose limit wet-hours is/],
  [{ changes: [{ what: 'wet-at', of: 'long-house', to: 20 }] }, /^Expected a limit that a farm/],
  [{ changes: [{ what: 'wet-hours', of: 'cool-room', to: 2 }] }, /^Expected whose limit/],
  [{ ...WET, from: '2026-05-02', to: '2026-05-01' }, /^Expected from at or before to/],
  [{ ...WET, from: '2001-01-01', to: '2026-01-01' }, /^Expected at most three years/],
] as const)('%j is refused in one sentence', async ([body, sentence]) => {
  const { status, body: told } = await ask('POST', '/api/trials', body);
  expect(status).toBe(400);
  expect(told.error).toMatch(sentence);
});

test('a trial nobody began is not found', async () => {
  expect((await ask('GET', '/api/trials/none')).status).toBe(404);
});

test.skipIf(!hasChromium)(
  'on the page a limit is tried, seen as strips beside a loss, kept, and undone in the changes',
  { timeout: 120_000 },
  async () => {
    const day = new Date(Date.parse('2026-04-22')).toISOString().slice(0, 10);
    await season.hub().post('/api/losses', {
      ...{ place: 'long-house', crop: 'basil', amount: 2, unit: 'trays', look: 'grey-mould', day },
    });
    const { page, complaints, close } = await openBrowser({ width: 360 });
    await page.goto(`${season.page}/try-limit`);
    const form = page.getByRole('form', { name: 'Try a limit' });
    await form.getByLabel('Whose limit').selectOption({ label: 'Long House' });
    await form.getByText(/^4.h now, which holds because the farm file tells none$/).waitFor();
    await form.getByRole('button', { name: 'Try it' }).click();
    await form.getByText('Choose another value than the one that stands.').waitFor();
    for (let i = 0; i < 3; i++) await form.getByRole('button', { name: /less$/ }).click();
    expect(await form.getByLabel('New value').inputValue()).toBe('1');
    await form.getByRole('button', { name: 'Try it' }).click();
    await page
      .getByText(/^Tried: Long House: wet hours that ask for air/)
      .waitFor({ timeout: 60_000 });
    await page.getByRole('heading', { name: 'Losses really entered' }).waitFor();
    await page.locator('.trial-strips figure').first().waitFor();
    for (const width of [320, 360, 1280]) {
      await page.setViewportSize({ width, height: 800 });
      await fitsItsWidth(page);
      expect(await shutsOut(page)).toEqual([]);
    }
    const keep = page.getByRole('form', { name: 'Keep it' });
    await keep.getByRole('listitem').first().waitFor();
    await keep.getByLabel('Why (if you like)').fill('Mould in the corner');
    await keep.getByRole('button', { name: 'Keep this limit' }).click();
    await page.getByText(/^The hub has kept it/).waitFor();
    type Changes = { id: number; why: string | null; who: string; undoable: boolean }[];
    const [change] = await season.hub().get<Changes>('/api/farm/changes');
    expect(change?.why).toMatch(/^Mould in the corner – Tried on .* Tried: Long House/);
    const text = async () => (await fetch(`${season.page}/api/farm/text`)).text();
    expect(await text()).toMatch(/hours: 1\b/);
    const { version } = await season.hub().get<{ version: string }>('/api/farm/description');
    await season.hub().post(`/api/farm/changes/${change?.id}/undo`, { based: version });
    expect(await text()).not.toMatch(/hours: 1\b/);
    expect(complaints).toEqual([]);
    await close();
  },
);
