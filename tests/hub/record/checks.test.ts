import { expect, test } from 'vitest';
import type { Probe, ProbeCheck } from '../../../hub/contract/index.ts';
import { importFarm } from '../../../hub/main/farm/farmKept.ts';
import { coldFarm, coldHub, HOUR, iso, MINUTE, T } from '../lots/coldFarm.ts';

const ICE = [{ reading: 0.4, reference: 0 }];
const path = '/api/probes/cold/checks';

test('a check against melting ice corrects what comes after it, and nothing that is stored', async () => {
  const { ask, send, store, clock } = await coldHub();
  send('cold', 'temperature', T, 3.6);
  const { status, body } = await ask<ProbeCheck[]>('POST', path, {
    ...{ points: ICE, by: 'Ada', apply: true },
  });
  expect(status).toBe(200);
  expect(body).toMatchObject([{ at: iso(T), by: 'Ada', offset: 0.4, applied: true, ageDays: 0 }]);
  clock.set(T + HOUR);
  send('cold', 'temperature', T + HOUR, 3.6);
  // One that was on its way for an hour was read before the check.
  send('cold', 'temperature', T - 10 * MINUTE, 3.5);
  // Source: offset only, 3.6 - 0.4 = 3.2 (worked example of the project's sheet, 8.2).
  expect(store.readings.allBetween('cold', 'temperature', 0, T + 2 * HOUR)).toMatchObject([
    { t: T - 10 * MINUTE, value: 3.5, raw: null },
    { t: T, value: 3.6, raw: null },
    { t: T + HOUR, value: expect.closeTo(3.2, 9), raw: 3.6 },
  ]);
  const probes = (await ask<Probe[]>('GET', '/api/probes')).body;
  expect(probes.find(({ id }) => id === 'cold')?.offsets).toEqual({ temperature: -0.4 });
});

test('a second check counts on top of the first: what the hub shows is what is told', async () => {
  const { ask, send, store, clock } = await coldHub();
  send('cold', 'temperature', T, 3.6);
  await ask('POST', path, { points: ICE, by: 'Ada', apply: true });
  clock.set(T + HOUR);
  // The hub now shows 0.1 in the ice, so the probe itself says 0.5.
  await ask('POST', path, { points: [{ reading: 0.1 }], by: 'Ada', apply: true });
  clock.set(T + 2 * HOUR);
  send('cold', 'temperature', T + 2 * HOUR, 3.6);
  expect(store.readings.newest('cold', 'temperature')?.value).toBeCloseTo(3.1, 9);
});

test('a check that is not applied is kept and changes nothing', async () => {
  const { ask, send, store, clock } = await coldHub();
  send('cold', 'temperature', T, 3.6);
  await ask('POST', path, { points: ICE, by: 'Ada', apply: false });
  clock.set(T + HOUR);
  send('cold', 'temperature', T + HOUR, 3.6);
  expect(store.readings.newest('cold', 'temperature')).toMatchObject({ value: 3.6, raw: null });
});

test('two points 25 °C apart give a slope; near 3 °C it hardly matters', async () => {
  // Source: raw 0.4 at 0.0 and 25.9 at 25.2 °C, raw 3.6 -> 3.1624 (project's sheet 8.2; by hand
  // slope 25.2 / 25.5).
  const { ask, send, store, clock } = await coldHub();
  send('cold', 'temperature', T, 3.5);
  const points = [...ICE, { reading: 25.9, reference: 25.2 }];
  expect((await ask('POST', path, { points, by: 'Ada', apply: true })).status).toBe(200);
  clock.set(T + HOUR);
  send('cold', 'temperature', T + HOUR, 3.6);
  expect(store.readings.newest('cold', 'temperature')?.value).toBeCloseTo(3.1624, 4);
});

test('a second point that is doubtful is kept, and not corrected by', async () => {
  const { ask, send } = await coldHub();
  send('cold', 'temperature', T, 3.5);
  const points = [...ICE, { reading: 10.9, reference: 10 }];
  const refused = await ask('POST', path, { points, by: 'Ada', apply: true });
  expect(refused).toMatchObject({
    status: 409,
    body: { error: expect.stringMatching(/too-near/) },
  });
  const kept = await ask<ProbeCheck[]>('POST', path, { points, by: 'Ada', apply: false });
  expect(kept.body[0]?.doubts).toContain('too-near');
});

test('a farm file taken in again keeps the check; one with another offset overrules it', async () => {
  const { ask, send, store, clock, core } = await coldHub();
  send('cold', 'temperature', T, 3.6);
  await ask('POST', path, { points: ICE, by: 'Ada', apply: true });
  const readAfter = (hours: number, text: string) => {
    importFarm(store, text, T + hours * HOUR);
    clock.set(T + hours * HOUR);
    core.look();
    send('cold', 'temperature', T + hours * HOUR + 1, 3.6);
    return store.readings.newest('cold', 'temperature')?.value;
  };
  expect(readAfter(1, `${coldFarm()}\n# the same`)).toBeCloseTo(3.2, 9);
  const other = coldFarm().replace(
    'spot: air, every: 10m }\n  - { id: warm',
    'spot: air, every: 10m, offset: { temperature: 1 } }\n  - { id: warm',
  );
  expect(readAfter(2, other)).toBeCloseTo(4.6, 9);
});

test('the hub remembers a correction after a restart', async () => {
  const { ask, send, store } = await coldHub();
  send('cold', 'temperature', T, 3.6);
  await ask('POST', path, { points: ICE, by: 'Ada', apply: true });
  const { makeCorrections } = await import('../../../hub/record/index.ts');
  const again = makeCorrections(store);
  expect(again.added('cold', 'temperature', 3.6, T + 1)).toBeCloseTo(-0.4, 12);
  expect(again.added('cold', 'temperature', 3.6, T - 1)).toBeUndefined();
  expect(again.added('cold', 'humidity', 50, T + 1)).toBeUndefined();
});

test('a probe that never was checked, or over ninety days ago, is due', async () => {
  const { ask, send, clock } = await coldHub();
  send('cold', 'temperature', T, 3.6);
  type Log = { probes: { probe: string; due: boolean; words: string }[] };
  const log = async () => (await ask<Log>('GET', '/api/cool-rooms/cool-room/log')).body.probes;
  expect(await log()).toMatchObject([
    { probe: 'cold', due: true, words: expect.stringMatching(/never been checked/) },
  ]);
  await ask('POST', path, { points: ICE, by: 'Ada', apply: false });
  expect(await log()).toMatchObject([{ due: false }]);
  clock.set(T + 183 * 24 * HOUR);
  expect(await log()).toMatchObject([{ due: true, words: expect.stringMatching(/over 90 days/) }]);
});

test.for([
  { points: [], by: 'Ada', apply: true },
  { points: ICE, by: '', apply: true },
  { points: ICE, apply: true },
  { points: ICE, by: 'Ada', apply: true, at: '2030-01-01T00:00:00Z' },
  { points: [{ reading: 900 }], by: 'Ada', apply: true },
])('a check that cannot be is refused in one sentence: %j', async (given) => {
  const { ask, send } = await coldHub();
  send('cold', 'temperature', T, 3.6);
  const { status, body } = await ask('POST', path, given);
  expect(status).toBe(400);
  expect(body.error).toMatch(/^Expected [^\n]+, got /);
});
