import { expect, test } from 'vitest';
import type { CoolRoom, Task } from '../../../hub/contract/index.ts';
import { coldHub, HOUR, iso, MINUTE, T } from '../lots/coldFarm.ts';

// What a hub learns of a cool room beside its cycle, by what was put into its store.

const DAY = 24 * HOUR;

/**
 * Days with an afternoon stop: the air warms towards 20 °C by Newton's law with the time constant of
 * that day, from 3 °C, for two hours. The rest of the day the unit runs, or pauses in each hour.
 */
async function stopped(tauOf: (day: number) => number, days: number, waits = false) {
  const hub = await coldHub();
  const start = T - days * DAY;
  const at = (t: number) => {
    const day = Math.floor((t - start) / DAY);
    const hour = ((t - start) % DAY) / HOUR;
    return { day, since: hour >= 6 && hour <= 8 ? hour - 6 : null };
  };
  const rows: { probe: string; quantity: string; t: number; value: number }[] = [];
  for (let t = start; t < T; t += 10 * MINUTE) {
    const { day, since } = at(t);
    const air = since === null ? 3 : 20 - 17 * Math.exp(-since / tauOf(day));
    rows.push({ probe: 'cold', quantity: 'temperature', t, value: air });
    rows.push({ probe: 'mast', quantity: 'temperature', t, value: 20 });
    const pause = waits && (t / MINUTE) % 60 >= 20;
    const watts = since !== null && since < 2 ? 0 : pause ? 5 : 600;
    rows.push({ probe: 'cold', quantity: 'power', t, value: watts });
  }
  hub.store.transaction(() => {
    hub.store.readings.add(rows.map((row) => ({ ...row, raw: null, flag: null })));
  });
  return { ...hub, start };
}
type Hub = Awaited<ReturnType<typeof stopped>>;
const roomOf = async ({ core, ask }: Hub) => {
  core.look();
  return (await ask<CoolRoom>('GET', '/api/cool-rooms/cool-room')).body;
};
/** Puts `kg` away at `from`, and sells it at `to`. */
async function held({ ask }: Hub, kg: number, from: number, to: number | null) {
  const { status, body } = await ask('POST', '/api/lots', {
    ...{ crop: 'own', kg, place: 'cool-room', storedAt: iso(from) },
  });
  expect(status, body.error).toBe(200);
  if (to !== null)
    await ask('PATCH', `/api/lots/${body.id}`, { take: { how: 'sold', at: iso(to) } });
}

test('a stop with as much in the room as now speaks before one with less', async () => {
  // Three days empty at 4 h, then three days with 100 kg at 8 h; now it holds 90 kg.
  const hub = await stopped((day) => (day < 3 ? 4 : 8), 6);
  expect((await roomOf(hub)).holdOver).toMatchObject({ contents: null, kilograms: null });
  await held(hub, 1, hub.start, hub.start + HOUR); // from here on the book tells of the room
  await held(hub, 100, hub.start + 3 * DAY, T - HOUR);
  await held(hub, 90, T - HOUR, null);
  hub.clock.set(T + HOUR); // learned anew once an hour
  const full = (await roomOf(hub)).holdOver;
  expect(full).toMatchObject({ contents: 'full', kilograms: 90, sameContents: 3 });
  expect(full.tauHours).toBeCloseTo(8, 1);
});

test('with nothing like it seen yet all stops speak, and that is said', async () => {
  const hub = await stopped((day) => (day < 3 ? 4 : 8), 6);
  await held(hub, 1, hub.start, hub.start + HOUR);
  await held(hub, 100, hub.start + 3 * DAY, T - HOUR);
  await held(hub, 40, T - HOUR, null);
  hub.clock.set(T + HOUR);
  const half = (await roomOf(hub)).holdOver;
  expect(half).toMatchObject({ contents: 'half', sameContents: 0, learnedFrom: 5 });
  expect(half.tauHours).toBeGreaterThan(4);
  expect(half.produceShortest ?? 0).toBeLessThanOrEqual(half.produceLongest ?? 0);
});

test('hours of a generator are learned from its meter, and hold while that is heard', async () => {
  const hub = await stopped(() => 6, 15, true);
  hub.clock.set(T);
  const { plan } = await roomOf(hub);
  // T is 6:00 UTC: the stop lies from noon to two, each day.
  expect(plan.usual).toMatchObject({ hours: ['14:00-12:00'] });
  expect(plan).toMatchObject({ planned: true, on: true, changesAt: iso(T + 6 * HOUR) });
  hub.clock.set(T + HOUR);
  expect((await roomOf(hub)).plan).toMatchObject({ planned: false, usual: null, on: true });
});

test('a probe in a cool room unchecked for ninety days is asked for quietly, until it is checked', async () => {
  const hub = await coldHub();
  const asked = async () => {
    hub.core.look();
    const { body } = await hub.ask<Task[]>('GET', '/api/tasks');
    return body.filter(({ kind, subject }) => kind === 'see-to-probe' && subject === 'cold');
  };
  const heard = (t: number) => {
    hub.clock.set(t);
    hub.send('cold', 'temperature', t, 3 + ((t / DAY) % 7) / 10);
  };
  const daily = (from: number, to: number) => {
    for (let day = from; day <= to; day++) heard(T + day * DAY);
  };
  daily(0, 89);
  expect(await asked()).toEqual([]);
  daily(90, 91);
  const [task] = await asked();
  expect(task).toMatchObject({ alarm: false, doBy: null, until: null });
  expect(task?.title).toBe('Check probe cold in the cool room in melting ice');
  expect(task?.why).toMatch(/measured here for 91 days and was never checked in melting ice/);
  expect(task?.because[0]).toMatchObject({ limit: 90, source: 'ours, from no source' });
  await hub.ask('POST', '/api/probes/cold/checks', {
    ...{ points: [{ reading: 0.1, reference: 0 }], by: 'Ada', apply: false },
  });
  expect(await asked()).toEqual([]);
  // In a drawer it ages no check.
  heard(T + 183 * DAY);
  expect(await asked()).toEqual([]);
  daily(184, 275);
  expect((await asked())[0]?.why).toMatch(/measured for 9\d days since it was last checked/);
});
