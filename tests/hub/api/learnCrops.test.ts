import { expect, test } from 'vitest';
import type { CropsLearned } from '../../../hub/contract/index.ts';
import { DAY, iso, pickHub, T } from '../picks/pickFarm.ts';

const soft = (text = '') => text.replaceAll('\u00a0', ' ');
const learned = async (hub: Awaited<ReturnType<typeof pickHub>>, query = '') =>
  (await hub.ask<CropsLearned>('GET', `/api/learn/crops${query}`)).body;
const group = ({ groups }: CropsLearned, by: string, name: RegExp) =>
  groups.find((one) => one.by === by && name.test(one.name));

/** Basil sown and cut over the journal, as the pages enter it. */
function grow(
  { core, clock }: Awaited<ReturnType<typeof pickHub>>,
  id: string,
  kg: number,
  lostKg: number | null = 0.5,
) {
  const sownAt = clock.now() - 30 * DAY;
  const facts = {
    ...{ crop: 'basil', variety: null, trays: 10, sownAt, place: 'long-house' },
    ...{ seedCost: null, otherCost: null, meantFor: null },
  };
  const add = (event: Parameters<typeof core.batches.add>[2]) =>
    core.batches.add(id, 'long-house', event, 'Ann', clock.now());
  add({ event: 'sown', facts, partOf: null });
  add({
    ...{ event: 'cut', at: sownAt + 20 * DAY, kg, trays: 10, stage: 'later', clears: true },
    ...{ minutes: null, price: null, lostKg, note: null },
  });
}

test('a farm that wrote nothing down is told how it would be counted, and nothing else', async () => {
  const found = await learned(await pickHub());
  expect(found).toMatchObject({
    groups: [],
    stops: [],
    pickOns: [],
    units: [],
    growing: 0,
    wage: 16,
  });
  expect(found.how.length).toBeGreaterThan(4);
});

test('three batches pay in words, and a fourth without its losses is left out and said', async () => {
  const hub = await pickHub();
  for (const [i, kg] of [4.4, 4.6, 4.8].entries()) grow(hub, `basil-${i}`, kg);
  grow(hub, 'basil-9', 90, null);
  const found = await learned(hub);
  const basil = group(found, 'crop', /^Basil$/);
  expect(basil).toMatchObject({ units: 4, counted: 3, leftOut: 1, verdict: 'pays', moreNeeded: 0 });
  expect(soft(basil?.words)).toMatch(
    /^Basil: pays, between \d+ and \d+ EUR an hour over 3 batches\. 1 batch left out: something is not known\.$/,
  );
  expect(found.stops[0]).toMatchObject({ crop: 'basil', answer: 'go-on', instead: null });
  const vague = found.units.find(({ id }) => id === 'basil-9');
  expect(vague).toMatchObject({ missing: ['lost', 'packing'], earned: null, perHour: null });
  expect(vague?.words).toBe('Not known: what was sorted out and minutes of packing.');
  expect(vague?.figures.price).toEqual({ value: 30, from: 'farm-file' });
  expect(group(found, 'crop-place', /./)?.name).toBe('Basil in Long House');
  expect(group(found, 'season', /./)?.name).toBe('Sown in autumn');
});

test('what falls off from picking to picking is not picked on', async () => {
  // Speeds of 8, 6.5, 5, 3.5 and 2 kg an hour on every third day: a line that reaches 0.5 at the next.
  const hub = await pickHub();
  await hub.pickings([
    [12, 8, 60],
    [9, 6.5, 60],
    [6, 5, 60],
    [3, 3.5, 60],
    [0, 2, 60],
  ]);
  const [asked] = (await learned(hub)).pickOns;
  expect(asked).toMatchObject({
    ...{ place: 'south-patch', crop: 'strawberry', pickings: 5, leftOut: 0, next: '2025-10-16' },
    ...{ verdict: 'does-not-pay', planner: null },
  });
  expect(asked?.speed?.expected).toBeCloseTo(0.5, 2);
  // 16 an hour at 9 a kilogram.
  expect(asked?.breakEvenSpeed).toBeCloseTo(16 / 9, 2);
  expect(soft(asked?.words[0])).toBe(
    'Strawberries in South Patch: stop picking. The picking on 16 Oct would not pay its hours.',
  );
  expect(soft(asked?.words.join(' '))).toMatch(/Below 1\.8 kg an hour it does not pay/);
});

test('a steady patch is picked on; pickings without minutes are left out, and named', async () => {
  const hub = await pickHub();
  const steady = [12, 9, 6, 3].map((ago, i) => [ago, 6 + i / 10, 60] as const);
  await hub.pickings(steady);
  await hub.ask('POST', '/api/picks', { place: 'south-patch', kg: 6, at: iso(T - DAY) });
  const [asked] = (await learned(hub)).pickOns;
  expect(asked).toMatchObject({ verdict: 'pays', pickings: 5, leftOut: 1 });
  expect(soft(asked?.words.join(' '))).toMatch(
    /pick on\. .* 1 picking of 5 left out, without what was sorted out and minutes\./,
  );
});

test('with three pickings nobody can tell, and after two months the season is over', async () => {
  const hub = await pickHub();
  await hub.pickings([
    [6, 5, 60],
    [4, 5, 60],
    [2, 5, 60],
  ]);
  const [asked] = (await learned(hub)).pickOns;
  expect(asked).toMatchObject({ verdict: 'cannot-tell', perHour: null, speed: null });
  expect(asked?.words[0]).toMatch(/1 more picking with weight, losses and minutes is needed\.$/);
  hub.clock.set(T + 60 * DAY);
  expect((await learned(hub)).pickOns).toEqual([]);
});

test('days asked for bound what is counted; days that cross are refused', async () => {
  const hub = await pickHub();
  grow(hub, 'basil-1', 4);
  const ended = new Date(T - 10 * DAY).toISOString().slice(0, 10);
  expect((await learned(hub, `?from=${ended}&to=${ended}`)).units).toHaveLength(1);
  expect((await learned(hub, `?to=2025-09-01`)).units).toHaveLength(0);
  const crossed = await hub.ask('GET', '/api/learn/crops?from=2025-10-02&to=2025-10-01');
  expect(crossed.status).toBe(400);
  expect(crossed.body.error).toMatch(/^Expected a day up to 2025-10-01 in from/);
});
