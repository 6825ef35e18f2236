import { expect, test } from 'vitest';
import type { CutBack, Task } from '../../../hub/contract/index.ts';
import { seasonHub } from './seasonFarm.ts';

const NOW = Date.UTC(2025, 9, 10, 12);
const DAY = 86_400_000;
const plan = '/api/frost/cut-back?place=south-patch';

async function picked(hub: Awaited<ReturnType<typeof seasonHub>>, list: readonly object[]) {
  for (const [i, more] of list.entries()) {
    const reply = await hub.send('POST', '/api/picks', {
      ...{ place: 'south-patch', kg: 5, minutes: 50, walkMinutes: 10, lostKg: 0 },
      at: new Date(NOW - (list.length - i) * 3 * DAY).toISOString(),
      ...more,
    });
    expect(reply.statusCode, reply.body).toBe(200);
  }
}
const speedOf = async ({ get }: Awaited<ReturnType<typeof seasonHub>>) =>
  (await get<CutBack[]>(plan))[0]?.assumed.find(({ what }) => what === 'minutesPerKg');

test('three pickings leave the planner with the speed told; the fourth gives it its own', async () => {
  const hub = await seasonHub();
  await hub.send('POST', '/api/patches/south-patch/terms', { minutesPerKg: 5 });
  await picked(hub, [{}, {}, {}]);
  expect(await speedOf(hub)).toMatchObject({ value: 5, from: 'told' });
  await picked(hub, [{}]);
  // By hand: 50 less 10 minutes for 5 kg, each time.
  expect(await speedOf(hub)).toMatchObject({ value: 8, from: 'measured' });
});

test('pickings without minutes, of another crop, taken back, or of last season tell nothing', async () => {
  const hub = await seasonHub();
  const at = (days: number) => ({ at: new Date(NOW - days * DAY).toISOString() });
  await picked(hub, [{}, {}, {}, { minutes: null, walkMinutes: null }, { crop: 'basil' }]);
  await picked(hub, [at(400), at(390), at(100)]);
  expect(await speedOf(hub)).toMatchObject({ from: 'usual' });
});

test('a walk that nobody told apart is as long as each picking is told to cost', async () => {
  const hub = await seasonHub();
  await picked(hub, Array(4).fill({ walkMinutes: null, pickers: 2 }));
  // By hand: 2 pickers of 50 minutes, less a usual quarter of an hour each, for 5 kg.
  expect(await speedOf(hub)).toMatchObject({ value: 14, from: 'measured' });
});

test('slow pickings make a patch not worth picking on, and the task says by whose speed', async () => {
  const hub = await seasonHub();
  const ripe = { cohorts: [{ stage: 'ripe', kg: 12 }] };
  await hub.send('POST', '/api/patches/south-patch/fruit', ripe);
  const before = (await hub.get<CutBack[]>(plan))[0];
  expect(before?.advice).toBe('pick-last');
  // 40 minutes a kilogram cost more than the 9 it fetches.
  await picked(hub, Array(4).fill({ kg: 1, minutes: 50 }));
  const after = (await hub.get<CutBack[]>(plan))[0];
  expect(after?.advice).toBe('clear-out');
  const task = (await hub.get<Task[]>('/api/tasks')).find(({ kind }) => kind === 'cut-back');
  expect(task?.because.find(({ what }) => what === 'own-picking-speed')).toMatchObject({
    ...{ value: 40, unit: 'min/kg', method: 'pickingSpeed' },
  });
  expect(task?.why).toMatch(/keep the green leaves/); // the caution is still the last word
});
