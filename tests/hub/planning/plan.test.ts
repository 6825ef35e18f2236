import { expect, test } from 'vitest';
import type { SowingPlanShown, Task } from '../../../hub/contract/index.ts';
import { DAY } from '../growing/growingFarm.ts';
import { NOW, planningHub, planText, SIX } from './planningHub.ts';

const soft = (text: string) => text.replaceAll('\u00a0', ' ');
const url = '/api/sowing-plan';

test('weights of the week are sown for as many days before as the past batches took', async () => {
  const { get, past } = await planningHub();
  past(SIX, [0.34, 0.41, 0.29, 0.37, 0.36, 0.35]);
  const plan = await get<SowingPlanShown>(url);
  expect(plan.missing).toEqual([]);
  // By hand: 156.83 units (tests/truth/batches/sowingDay.csv) at ten a day are 16 days; the first
  // Thursday that far ahead is 21 May, so 5 May. Those before are too late: 7 and 14 May.
  expect(plan.deliveries.map(({ day, state }) => [day, state]).slice(0, 4)).toEqual([
    ['2026-05-07', 'short'],
    ['2026-05-14', 'short'],
    ['2026-05-21', 'to-sow'],
    ['2026-05-28', 'to-sow'],
  ]);
  const [first] = plan.sowings;
  expect(first).toMatchObject({ day: '2026-05-05', delivery: '2026-05-21', place: 'long-house' });
  expect(first?.late).toBe(false);
  expect(first?.ready).toBeGreaterThan(0.9);
  expect(first?.minutes).toBe(4 * (first?.trays ?? 0));
  expect(soft(plan.deliveries[0]?.words ?? '')).toBe(
    'Short by 7 kg of basil, because it is too late: basil sown today would not be ready.',
  );
  expect(plan.deliveries[0]?.chanceShort).toBe(1);
  expect(plan.deliveries[2]?.chanceShort).toBeLessThan(0.5);
});

test('a batch on its way covers the delivery it will be ready for, and takes its room', async () => {
  const { get, past, tell } = await planningHub();
  past(SIX);
  // Sown eight days ago: of 147 units 67 are to come, 6.7 days from the 4th at 7: late on the 10th.
  tell('now-1', { sownAt: NOW - 8 * DAY, trays: 20, meantFor: '2026-05-14' });
  const plan = await get<SowingPlanShown>(url);
  const [, second] = plan.deliveries;
  expect(second).toMatchObject({ day: '2026-05-14', state: 'covered' });
  expect(second?.parts[0]).toMatchObject({ kg: 7, covered: 7, toSow: 0, short: 0 });
  expect(soft(second?.parts[0]?.sources[0]?.words ?? '')).toBe(
    '7 kg growing in Long House, ready about Sun 10 May',
  );
  expect(plan.rooms[0]?.free[0]).toBe(40);
  expect(plan.rooms[0]?.free[10]).toBe(40); // the 14th: it goes that day
  expect(plan.rooms[0]?.free[11]).toBe(60);
});

test('a change for one day holds for that day alone, and taking it back gives the same plan', async () => {
  const { get, post, past, app } = await planningHub();
  past(SIX);
  const before = await get<SowingPlanShown>(url);
  const reply = await post('/api/wants', { day: '2026-05-21', of: 'basil', kg: 3.5 });
  expect(reply.statusCode).toBe(200);
  const after = reply.json() as SowingPlanShown;
  const [want] = after.deliveries.find(({ day }) => day === '2026-05-21')?.wants ?? [];
  expect(want).toMatchObject({ kg: 3.5, usual: 7, change: { who: 'grower' } });
  const traysOf = (plan: SowingPlanShown, on: string) =>
    plan.sowings.filter(({ delivery }) => delivery === on).reduce((n, { trays }) => n + trays, 0);
  expect(traysOf(after, '2026-05-21')).toBe(traysOf(before, '2026-05-21') / 2);
  expect(traysOf(after, '2026-05-28')).toBe(traysOf(before, '2026-05-28'));
  const entry = want?.change?.entry;
  const undone = await post('/api/wants', { day: '2026-05-21', of: 'basil', undo: entry });
  expect(undone.json()).toEqual(before);
  const again = await post('/api/wants', { day: '2026-05-21', of: 'basil', undo: entry });
  expect(again.statusCode).toBe(409);
  expect(app).toBeDefined();
});

test('none is wanted on a day, and a day of its own can be added', async () => {
  const { post, past } = await planningHub();
  past(SIX);
  const none = await post('/api/wants', { day: '2026-05-21', of: 'basil', kg: 0 });
  const plan = none.json() as SowingPlanShown;
  expect(plan.deliveries.find(({ day }) => day === '2026-05-21')).toMatchObject({
    state: 'nothing',
    words: 'Nothing is wanted.',
  });
  const market = await post('/api/wants', { day: '2026-05-23', of: 'basil', kg: 2 });
  expect(
    (market.json() as SowingPlanShown).deliveries.find(({ day }) => day === '2026-05-23')?.wants,
  ).toEqual([expect.objectContaining({ of: 'basil', kg: 2, usual: null })]);
});

test.for([
  [{ day: '2026-05-03', of: 'basil', kg: 1 }, 'Expected a day from 2026-05-04 to 2026-07-27'],
  [{ day: '2026-07-28', of: 'basil', kg: 1 }, 'Expected a day from 2026-05-04 to 2026-07-27'],
  [{ day: '2026-05-21', of: 'kale', kg: 1 }, 'Expected one of basil, cress, rocket in of'],
  [{ day: '2026-05-21', of: 'basil', kg: -1 }, 'Expected'],
] as const)('%o is refused in one sentence', async ([body, said]) => {
  const { post } = await planningHub({ days: 1 });
  const reply = await post('/api/wants', body);
  expect(reply.statusCode).toBe(400);
  expect(reply.json().error).toContain(said);
});

test('a mix is sown as its parts, told days stand in for batches, and what nobody can time is said', async () => {
  const farm = planText({
    deliveries: '[ { day: thursday, wants: [ { of: salad, kg: 4 } ] } ]',
    mixes:
      '[ { id: salad, name: Salad, parts: [ { crop: cress, share: 0.5 }, { crop: rocket, share: 0.5 } ] } ]',
  });
  const { get, core } = await planningHub({ farm });
  const plan = await get<SowingPlanShown>(url);
  const [first, second] = plan.deliveries;
  // Cress takes 8 to 10 days: today is too late for the 7th, and in time for the 14th.
  expect(first?.parts.map(({ crop, short }) => [crop, short])).toEqual([
    ['cress', 2],
    ['rocket', 2],
  ]);
  const [cress] = plan.sowings;
  expect(cress).toMatchObject({ crop: 'cress', day: '2026-05-04', delivery: '2026-05-14' });
  expect(cress).toMatchObject({ trays: 10, ready: null, batches: 0, minutes: null });
  expect(second).toMatchObject({ state: 'short', chanceShort: null });
  expect(soft(second?.words ?? '')).toBe(
    'Short by 2 kg of rocket, because nobody knows how long rocket takes: no batch has ended, and the farm file tells no days.',
  );
  core.look();
  const unknown = core.lastLook()?.outlook.decisions.find(({ subject }) => subject === 'rocket');
  expect(unknown).toMatchObject({ kind: 'sow', verdict: 'unknown', missing: ['growing-days'] });
});

test('what is due today is one task; a batch entered for it ends it', async () => {
  const { get, past, tell, core, clock } = await planningHub();
  past(SIX);
  clock.set(NOW + DAY); // the 5th of May, when the trays for the 21st are due
  core.look();
  const open = async () => (await get<Task[]>('/api/tasks')).filter(({ kind }) => kind === 'sow');
  const [task] = await open();
  expect(task).toMatchObject({ place: 'long-house', subject: '2026-05-21' });
  expect(soft(task?.title ?? '')).toBe('Sow 20 trays of basil in Long House');
  expect(task?.why).toMatch(/^For Thursday 21 May\./);
  expect(task?.doBy).toBe('2026-05-05T18:00:00.000Z');
  tell('new-1', { sownAt: NOW + DAY, trays: 20, meantFor: '2026-05-21' });
  core.look();
  clock.set(NOW + DAY + 3_600_000); // patience of half an hour
  core.look();
  expect(await open()).toEqual([]);
});

test('a farm that wants nothing is told what is missing, and gets no task', async () => {
  const { get, core } = await planningHub({ farm: planText({ deliveries: '[]' }), days: 1 });
  const plan = await get<SowingPlanShown>(url);
  expect(plan.missing).toEqual(['delivery days in the farm file (deliveries)']);
  core.look();
  expect(core.tasks.open().filter(({ kind }) => kind === 'sow')).toEqual([]);
});

test('a house that is full says so, and a house too cold says that', async () => {
  const full = await planningHub({ farm: planText({ capacity: 8 }) });
  full.past(SIX);
  const plan = await full.get<SowingPlanShown>(url);
  const short = plan.deliveries.find(({ day }) => day === '2026-05-21');
  expect(short?.parts[0]?.shortfalls).toEqual([
    expect.objectContaining({ trays: 12, reason: 'no-room' }),
  ]);
  const cold = await planningHub({
    farm: planText().replace('band: [18, 28]', 'band: [26, 34]'),
  });
  cold.past(SIX);
  const other = await cold.get<SowingPlanShown>(url);
  expect(other.deliveries.at(-1)?.parts[0]?.shortfalls[0]?.reason).toBe('too-cold');
});

test('a sowing answered done is not asked for again, but waits in the plan to be entered', async () => {
  const { get, past, post, core, clock, tell } = await planningHub();
  past(SIX);
  clock.set(NOW + DAY);
  core.look();
  const open = async () => (await get<Task[]>('/api/tasks')).filter(({ kind }) => kind === 'sow');
  const answer = async (said: 'done' | 'no') => {
    const [task] = await open();
    const path = `/api/tasks/${encodeURIComponent(task?.id ?? '')}/answer`;
    expect((await post(path, { answer: said })).statusCode).toBe(200);
  };
  const rows = async () =>
    (await get<SowingPlanShown>(url)).sowings.map(({ delivery, answered }) => [delivery, answered]);
  await answer('done');
  for (const hours of [0, 1, 20, 30]) {
    clock.set(NOW + DAY + hours * 3_600_000);
    core.look();
    expect(await open()).toEqual([]);
  }
  expect((await rows())[0]).toEqual(['2026-05-21', 'done']);
  // A week on the next delivery is asked for, though the first was never entered.
  clock.set(NOW + 8 * DAY);
  core.look();
  expect((await open()).map(({ subject }) => subject)).toEqual(['2026-05-28']);
  await answer('no');
  clock.set(NOW + 9 * DAY);
  core.look();
  expect(await open()).toEqual([]);
  expect(await rows()).toContainEqual(['2026-05-28', 'no']);
  // Entered after all, it is in the plan as what grows.
  tell('new-1', { sownAt: NOW + DAY, trays: 20, meantFor: '2026-05-21' });
  expect((await rows()).map(([day]) => day)).not.toContain('2026-05-21');
});

test('what falls due beside a sowing that was answered is asked for at once', async () => {
  const farm = planText({
    deliveries: '[ { day: thursday, wants: [ { of: basil, kg: 7 }, { of: cress, kg: 1 } ] } ]',
  });
  const { get, past, post, core, clock } = await planningHub({ farm });
  past(SIX);
  const asked: string[] = [];
  const open = async () => (await get<Task[]>('/api/tasks')).filter(({ kind }) => kind === 'sow');
  for (let day = 0; day < 9; day += 1) {
    clock.set(NOW + day * DAY);
    core.look();
    for (const { id, title } of await open()) {
      asked.push(title.replaceAll('\u00a0', ' '));
      await post(`/api/tasks/${encodeURIComponent(id)}/answer`, { answer: 'done' });
    }
    core.look();
    expect(await open()).toEqual([]);
  }
  expect(asked.filter((one) => one.includes('cress')).length).toBeGreaterThan(0);
  expect(asked.filter((one) => one.includes('basil')).length).toBeGreaterThan(0);
});
