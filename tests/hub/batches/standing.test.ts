import { expect, test } from 'vitest';
import type { PlaceNow } from '../../../hub/contract/index.ts';
import { sparedTrays } from '../../../rules/decide/worth.ts';
import { DAY, iso, T, trayHub } from './trayFarm.ts';

type Hub = Awaited<ReturnType<typeof trayHub>>;
const seen = ({ core }: Hub, place: string) => {
  core.look();
  return core.lastLook()?.snapshot.places.find(({ id }) => id === place);
};
const spared = (hub: Hub, place: string) => {
  const now = seen(hub, place);
  const { amount, money } = sparedTrays(now ?? { trays: null }, null, 0.5);
  const tidy = (value: number | null) => value && Number(value.toFixed(6));
  return [now?.trays, tidy(amount), tidy(money)];
};

test('trays and their worth come from the batches of a place, and from the farm file without any', async () => {
  const hub = await trayHub();
  const { sow, change, clock, ok } = hub;
  expect(seen(hub, 'long-house')).toMatchObject({ trays: 30 });
  expect(seen(hub, 'long-house')).not.toHaveProperty('standing');
  const { id } = await sow();
  const peas = await sow({ crop: 'pea-shoots', trays: 4, sownAt: iso(T - 5 * DAY) });
  // By hand: half of 12 x 0.35 kg + 4 x 0.5 kg = 6.2 kg, and of 4.2 x 30 + 2 x 18 = 162.
  expect(spared(hub, 'long-house')).toEqual([16, 3.1, 81]);
  expect((await ok<PlaceNow>('GET', '/api/places/long-house')).stands).toEqual([
    { crop: 'basil', name: 'Basil', trays: 12 },
    { crop: 'pea-shoots', name: 'Pea shoots', trays: 4 },
  ]);
  await change(id, { move: { place: 'sun-house', trays: 2 } });
  expect(spared(hub, 'long-house')[0]).toBe(14);
  expect(spared(hub, 'sun-house')).toEqual([2, 0.35, 10.5]);
  // A crop that nobody gave a yield: no figure, and no zero.
  await sow({ crop: 'chives', trays: 3, place: 'sun-house' });
  expect(spared(hub, 'sun-house')).toEqual([5, null, null]);
  await change(id, { clear: {} });
  await change(peas.id, { clear: {} });
  expect(spared(hub, 'long-house')).toEqual([0, 0, 0]);
  // Nobody has kept a batch there for a season: the farm file speaks again.
  clock.set(T + 121 * DAY);
  expect(seen(hub, 'long-house')?.trays).toBe(30);
  expect(seen(hub, 'sun-house')?.trays).toBe(5); // of batches: two of basil, three of chives
});
