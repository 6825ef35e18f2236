import { expect, test } from 'vitest';
import type { CoolRoom, SolarSheet } from '../../../hub/contract/index.ts';
import type { StoredReading } from '../../../hub/store/index.ts';
import { coldHub, HOUR, MINUTE, T } from '../lots/coldFarm.ts';

const DAY = 24 * HOUR;

/** Days with a steady draw, so that a day's energy is known by hand: 250 W is 6 kWh. */
async function metered(days: number) {
  const hub = await coldHub();
  const rows: StoredReading[] = [];
  for (let t = T - days * DAY - 6 * HOUR; t <= T; t += 10 * MINUTE)
    for (const [probe, quantity, value] of [
      ['cold', 'temperature', 3],
      ['mast', 'temperature', 15],
      ['cold', 'power', 250],
    ] as const)
      rows.push({ probe, quantity, t, value, raw: null, flag: null });
  hub.store.transaction(() => {
    hub.store.readings.add(rows);
  });
  hub.core.look();
  const sheet = async (query = '') =>
    await hub.ask<SolarSheet>('GET', `/api/cool-rooms/cool-room/solar?${query}`);
  return { ...hub, sheet };
}

test('the sheet is worked with usual numbers, and with somebody’s own', async () => {
  const { sheet } = await metered(4);
  // Method sheet: 6 kWh a day, 3 h, 0.75 -> 2.667 kW; 2 days, 0.8, 0.9 -> 16.667 kWh.
  const usual = (await sheet()).body;
  expect(usual.own).toEqual([]);
  expect(usual.used).toMatchObject({ sunHours: 3, days: 2, depth: 0.8 });
  expect(usual.sheet?.panels).toBeCloseTo(2.6667, 3);
  expect(usual.sheet?.battery).toBeCloseTo(16.6667, 3);
  // By hand: 6 / (1.5 x 0.75) = 5.333 kW; 6 x 3 / (0.5 x 0.9) = 40 kWh.
  const own = (await sheet('sunHours=1.5&days=3&depth=0.5')).body;
  expect(own.own).toEqual(['sunHours', 'days', 'depth']);
  expect(own.sheet?.panels).toBeCloseTo(5.3333, 3);
  expect(own.sheet?.battery).toBeCloseTo(40, 3);
});

test.for(['sunHours=0', 'depth=2', 'days=never', 'gap=-4'])(
  'a number that cannot be is refused: %s',
  async (query) => {
    const { sheet } = await metered(1);
    const { status, body } = await sheet(query);
    expect(status).toBe(400);
    expect(body.error).toMatch(/^Expected /);
  },
);

test('with two days of a meter there is no sheet yet, and that is no zero', async () => {
  const { sheet, ask } = await metered(2);
  expect((await sheet()).body.sheet).toBeNull();
  expect((await ask<CoolRoom>('GET', '/api/cool-rooms/cool-room')).body.solar).toBeNull();
});

test('what a set burns is counted from the hours it feeds the meter', async () => {
  const hub = await metered(2);
  const without = (await hub.ask<CoolRoom>('GET', '/api/cool-rooms/cool-room')).body;
  expect(without.fuel).toBeNull(); // nobody told what it burns
  expect(without.energy.kWhPerDay).toBeCloseTo(6, 1);
});
