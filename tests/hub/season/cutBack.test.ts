import { expect, test } from 'vitest';
import type { Backtest, CutBack, Task } from '../../../hub/contract/index.ts';
import { seasonHub, stationYears } from './seasonFarm.ts';

const plan = '/api/frost/cut-back?place=south-patch';
const fruit = '/api/patches/south-patch/fruit';
const terms = '/api/patches/south-patch/terms';
const trial = '/api/patches/south-patch/backtest';
const hanging = {
  cohorts: [
    { stage: 'ripe', kg: 4 },
    { stage: 'green', kg: 6 },
    { stage: 'flower', kg: 3, flowered: '2025-10-01' },
  ],
};

test('without a count nobody can say, and no task is opened', async () => {
  const { get, core } = await seasonHub();
  const [found] = await get<CutBack[]>(plan);
  expect(found).toMatchObject({ missing: ['fruit-count'], advice: 'unknown', window: null });
  expect(core.tasks.open().filter(({ kind }) => kind === 'cut-back')).toEqual([]);
});

test('everything that is missing is named at once', async () => {
  const { get } = await seasonHub({ days: [], price: false });
  const [found] = await get<CutBack[]>(plan);
  expect(found?.missing).toEqual([
    ...['fruit-count', 'price', 'climate-of-the-place', 'frost-years', 'wet-days'],
  ]);
});

test('a count gives a plan, day by day, with its two sides, its window and what would change it', async () => {
  const { send, store } = await seasonHub();
  const reply = await send('POST', fruit, hanging);
  expect(reply.statusCode).toBe(200);
  const found = reply.json() as CutBack;
  expect(found.missing).toEqual([]);
  expect(found.counted?.cohorts.map(({ stage, units }) => [stage, units !== null])).toEqual([
    ...[
      ['ripe', true],
      ['green', true],
      ['flower', true],
    ],
  ]);
  expect(found.rows[0]).toMatchObject({ day: '2025-10-10', ripe: 4, survives: 1, lost: 0 });
  expect(found.rows).toHaveLength(85);
  for (const [at, row] of found.rows.entries()) {
    expect(row.survives).toBeLessThanOrEqual(found.rows[at - 1]?.survives ?? 1);
    expect(row.lost).toBeGreaterThanOrEqual(found.rows[at - 1]?.lost ?? 0);
    expect(row.toGain).toBeGreaterThanOrEqual(0);
  }
  const { window } = found;
  expect(window && window.from <= window.best && window.best <= window.to).toBe(true);
  expect(found.changes.length).toBeGreaterThan(0);
  expect(found.mayCut).toBeNull();
  // Four kilograms are ripe: (9 - 6 min at 16/h) each, less a quarter of an hour's walk.
  expect(found.rows[0]?.value).toBeCloseTo(4 * (9 - 1.6) - 4, 2);
  expect(store.journal.between('fruit', 0, Number.MAX_SAFE_INTEGER)).toHaveLength(1);
});

test('the latest count speaks, and earlier ones are kept', async () => {
  const { send, store, get } = await seasonHub();
  await send('POST', fruit, hanging);
  await send('POST', fruit, { cohorts: [{ stage: 'green', kg: 1 }], counted: '2025-09-20' });
  const [first] = await get<CutBack[]>(plan);
  expect(first?.counted?.day).toBe('2025-10-10'); // an older count, typed in later
  await send('POST', fruit, { cohorts: [] });
  const [empty] = await get<CutBack[]>(plan);
  expect(empty?.counted?.cohorts).toEqual([]);
  expect(empty?.window?.reason).toBe('nothing-left');
  expect(store.journal.between('fruit', 0, Number.MAX_SAFE_INTEGER)).toHaveLength(3);
});

test('an empty patch in autumn is to be cleared out; done, it is not asked again at once', async () => {
  const { send, get, core } = await seasonHub();
  await send('POST', fruit, { cohorts: [] });
  const tasks = await get<Task[]>('/api/tasks');
  const task = tasks.find(({ kind }) => kind === 'cut-back');
  expect(task).toMatchObject({ subject: 'clear-out', title: 'Clear out South patch' });
  expect(task?.caution).toMatch(/green/);
  const done = await send('POST', `/api/tasks/${task?.id}/answer`, { answer: 'done' });
  expect(done.statusCode).toBe(200);
  core.look();
  expect(core.tasks.open().filter(({ kind }) => kind === 'cut-back')).toEqual([]);
});

test('in spring an empty patch is left to grow', async () => {
  const now = Date.UTC(2025, 3, 10, 12);
  const { send } = await seasonHub({ now, days: stationYears({ to: now }) });
  const found = (await send('POST', fruit, { cohorts: [] })).json() as CutBack;
  expect(found.advice).toBe('wait');
});

test('a count of four weeks ago says nothing of today', async () => {
  const { send } = await seasonHub();
  const reply = await send('POST', fruit, { ...hanging, counted: '2025-09-11' });
  expect(reply.json().error).toBe('Expected a day up to 2025-09-11 in flowered, got 2025-10-01');
  const old = { cohorts: [{ stage: 'green', kg: 6 }], counted: '2025-09-11' };
  const found = (await send('POST', fruit, old)).json() as CutBack;
  expect(found.missing).toEqual(['fresh-fruit-count']);
});

test('own figures override the usual ones, and may allow cutting back', async () => {
  const { send } = await seasonHub();
  await send('POST', fruit, hanging);
  const before = (await send('POST', terms, {})).json() as CutBack;
  const told = { price: 20, rotWet: 0.01, rotDry: 0, nextYear: 400, hygiene: 25 };
  const after = (await send('POST', terms, told)).json() as CutBack;
  expect(after.window?.value ?? 0).toBeGreaterThan(before.window?.value ?? 0);
  expect(after.assumed.find(({ what }) => what === 'price')).toMatchObject({
    ...{ value: 20, from: 'told' },
  });
  expect(before.ways?.cut).toBeNull();
  // Cutting gives up what picking on would bring: 25 - 32 - 20 - keep.
  expect(after.ways?.cut).toBeCloseTo(25 - 32 - 20 - (after.ways?.keep ?? 0), 2);
  const june = { bearing: 'june', lastPicking: '2025-09-20' };
  expect(((await send('POST', terms, june)).json() as CutBack).mayCut).toBe('renovation');
  const insists = (await send('POST', terms, { insists: true })).json() as CutBack;
  expect(insists).toMatchObject({ mayCut: 'grower', advice: 'cut-back' });
});

test.for([
  [fruit, { cohorts: [{ stage: 'rotten', kg: 1 }] }, /in cohorts\.0\.stage|in cohorts\[0\]\.stage/],
  [fruit, { cohorts: [{ stage: 'green', kg: -1 }] }, /got -1$/],
  [
    fruit,
    { cohorts: [], counted: '2026-01-01' },
    /^Expected a day up to 2025-10-10 in counted, got 2026-01-01$/,
  ],
  [terms, { rotWet: 2 }, /in rotWet, got 2$/],
  [terms, { colour: 'red' }, /^Expected no field colour, got "red"$/],
] as const)('%s refuses %j in one sentence', async ([url, payload, sentence]) => {
  const { send, store } = await seasonHub();
  const reply = await send('POST', url, payload);
  expect(reply.statusCode).toBe(400);
  expect(reply.json().error).toMatch(sentence);
  expect(store.journal.between('fruit', 0, Number.MAX_SAFE_INTEGER)).toEqual([]);
});

test('a place without strawberries has no plan', async () => {
  const { send } = await seasonHub();
  const reply = await send('POST', '/api/patches/outside/fruit', { cohorts: [] });
  expect(reply.statusCode).toBe(404);
  expect(reply.json().error).toBe('Expected one of south-patch in id, got "outside"');
});

const ended = async (get: <Shape>(url: string) => Promise<Shape>) => {
  for (let tries = 0; tries < 1500; tries += 1) {
    const now = await get<Backtest>(trial);
    if (now.state !== 'running') return now;
    await new Promise((resolve) => setTimeout(resolve, 20));
  }
  throw new Error('Expected the trial to end, got none');
};

test('the rule is tried on past autumns, off the request, and told against the plain rule', {
  timeout: 60_000,
}, async () => {
  const { send, get } = await seasonHub();
  expect(await get<Backtest>(trial)).toMatchObject({ state: 'none', result: null });
  await send('POST', fruit, hanging);
  const begun = (await send('POST', trial, {})).json() as Backtest;
  expect(begun).toMatchObject({ state: 'running', done: 0, of: 30 });
  const { result, done } = await ended(get);
  expect(done).toBe(30);
  expect(result?.seasons).toBe(30);
  for (const { near, early, late } of [result?.rule, result?.averageDate].flatMap(
    (one) => one ?? [],
  ))
    expect(near + early + late).toBeLessThanOrEqual(30);
  expect(result?.rule.money ?? 0).toBeLessThanOrEqual(result?.foresight ?? 0);
  expect(result?.years).toHaveLength(30);
});

test('a trial that is called off stops, and one that cannot be made says why', {
  timeout: 60_000,
}, async () => {
  const { send, get } = await seasonHub();
  await send('POST', trial, {});
  expect((await send('DELETE', trial)).json()).toMatchObject({ state: 'canceled' });
  const canceled = await ended(get);
  expect(canceled).toMatchObject({ state: 'canceled', result: null });
  expect(canceled.done).toBeLessThan(30);
  const bare = await seasonHub({ days: [] });
  expect((await bare.send('POST', trial, {})).json()).toMatchObject({
    ...{ state: 'failed', why: 'frost-years' },
  });
});
