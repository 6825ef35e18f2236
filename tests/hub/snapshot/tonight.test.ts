import { expect, test } from 'vitest';
import { frostFarm, nightsGoBy, temperatureAt } from '../frostNights.ts';
import { HOUR, MINUTE, type SmallHub, smallHub } from '../smallFarm.ts';

const DAY = 24 * HOUR;
const FIRST = Date.UTC(2025, 9, 20, 12);
const hubAfter = (days: number, farm = frostFarm()) => {
  const hub = smallHub({ now: FIRST, farm });
  nightsGoBy(hub, FIRST, FIRST + days * DAY);
  return hub;
};
const snapshotOf = ({ core, clock }: SmallHub) =>
  core.snapshots.take(clock.now(), [], core.heardAt);
const patchOf = (hub: SmallHub) => snapshotOf(hub).places.find(({ id }) => id === 'south-patch');
const nightsOf = (hub: SmallHub, spot = 'canopy') =>
  patchOf(hub)?.spots.find((one) => one.spot === spot)?.nights ?? [];
const forecastOf = (hub: SmallHub, spot = 'canopy') => {
  hub.core.look();
  return hub.core.lastLook()?.outlook.frost.find((one) => one.spot === spot);
};

test('a night keeps its morning, its hours and its length', () => {
  const night = nightsOf(hubAfter(5)).at(-1);
  // 51.9° N in late October: some fourteen hours of night (almanac, from memory).
  expect(night?.length).toBeGreaterThan(13.5);
  expect(night?.length).toBeLessThan(14.7);
  expect(night?.hours?.length).toBe(Math.floor(night?.length ?? 0) + 1);
  expect(night?.hours?.every((value) => value !== null)).toBe(true);
  expect(night?.morning?.temperature).toBeLessThan(10);
  expect(night?.morning?.dewPoint).not.toBeNull(); // taken from the mast outside
});

test('what a moved probe read elsewhere teaches nothing of the new spot', () => {
  const hub = hubAfter(14);
  expect(nightsOf(hub).length).toBe(14);
  // A week ago it was hung among the far flowers: the same probe, another place.
  const moved = FIRST + 7 * DAY;
  hub.store.probes.place('mast', 'south-patch', 'grass', moved);
  hub.core.snapshots.moved(['outside', 'south-patch'], moved);
  const grass = nightsOf(hub, 'grass').filter(({ low }) => low !== null);
  expect(grass.map(({ night }) => night).sort()[0]).toBe('2025-10-28');
  expect(grass.length).toBe(7);
  expect(nightsOf(hub).length).toBe(14);
});

test('a gap at night hides its low, and the next evenings are forecast from the nights that have one', () => {
  const hub = smallHub({ now: FIRST, farm: frostFarm() });
  nightsGoBy(hub, FIRST, FIRST + 9 * DAY + 8 * HOUR);
  // Silent from 20:20 to past noon, then on.
  nightsGoBy(hub, FIRST + 10 * DAY + 2 * HOUR, FIRST + 13 * DAY + 8 * HOUR);
  const lows = nightsOf(hub).map(({ night, low }) => `${night} ${low === null ? 'unknown' : ''}`);
  expect(lows.filter((night) => night.endsWith('unknown'))).toEqual(['2025-10-30 unknown']);
  expect(forecastOf(hub)).toMatchObject({ method: 'evening', nightsLearned: 12 });
});

test('an evening without readings is not guessed: the afternoon speaks, and says so', () => {
  const hub = hubAfter(14);
  const today = FIRST + 14 * DAY;
  nightsGoBy(hub, today, today + 4 * HOUR); // up to 16:00
  for (let t = today + 10 * HOUR; t < today + 11 * HOUR; t += 20 * MINUTE) {
    hub.clock.set(t);
    hub.send('flower', 'temperature', t, temperatureAt(t) - 1);
  }
  expect(forecastOf(hub)).toMatchObject({ method: 'afternoon' });
});

test('where the sun does not set there are no nights, no forecast and no fault', () => {
  const north = frostFarm().replace('lat: 51.9', 'lat: 78.2');
  const hub = smallHub({ now: Date.UTC(2026, 5, 1, 12), farm: north });
  nightsGoBy(hub, Date.UTC(2026, 5, 1, 12), Date.UTC(2026, 5, 3, 12));
  expect(nightsOf(hub)).toEqual([]);
  expect(forecastOf(hub)).toBeUndefined();
  expect(hub.core.lastLook()?.outlook.failures).toEqual([]);
  expect(hub.core.lastLook()?.failure).toBeNull();
});

test('south of the equator the nights of June are learned from as winter nights', () => {
  const south = frostFarm()
    .replace('lat: 51.9', 'lat: -42')
    .replace('lon: -8.3', 'lon: 147')
    .replace('Europe/Dublin', 'Australia/Hobart');
  const first = Date.UTC(2026, 5, 1, 2);
  const hub = smallHub({ now: first, farm: south });
  // The same weather, ten hours earlier by UTC, so that it is as late there as in the north.
  nightsGoBy(hub, first, first + 13 * DAY + 7 * HOUR, { shift: 10 * HOUR }); // to 19:00 there
  const nights = nightsOf(hub);
  expect(nights.length).toBe(13);
  expect(nights.at(-1)?.night).toBe('2026-06-14');
  expect(nights.at(-1)?.length).toBeGreaterThan(14); // 42° S in June: almanac, from memory
  expect(forecastOf(hub)).toMatchObject({ night: '2026-06-15', method: 'evening' });
});

test('covers are learned from nights of which somebody said that they were on', () => {
  const hub = smallHub({ now: FIRST, farm: frostFarm() });
  const say = (t: number, is: boolean) =>
    hub.store.journal.add({
      ...{ t, who: 'Ann', what: 'covers', place: 'south-patch', subject: null },
      body: { is },
    });
  const onHour = (t: number) => {
    const hour = new Date(t).getUTCHours();
    // On each afternoon of the first ten days, off each morning; once lifted in the night.
    if (t < FIRST + 10 * DAY && hour === 15) say(t, true);
    if (hour === 9) say(t, false);
    if (t === FIRST + 3 * DAY + 12 * HOUR) say(t, false);
  };
  nightsGoBy(hub, FIRST, FIRST + 14 * DAY, { onHour });
  const clear = nightsOf(hub).filter(({ clearCalm }) => clearCalm === true);
  expect(clear.length).toBeGreaterThan(5);
  const known = patchOf(hub)?.coverNights ?? [];
  const covered = clear.filter(({ night }) => night <= '2025-10-30' && night !== '2025-10-24');
  expect(known.length).toBe(covered.length);
  // The probe beneath reads 1.5 K more than the one among the flowers.
  for (const { gain } of known) expect(gain).toBeCloseTo(1.5, 6);
});

test('a patch without a probe beneath its covers learns nothing of them', () => {
  const farm = frostFarm().replace(/.*cloche,.*\n/, '');
  expect(patchOf(hubAfter(3, farm))?.coverNights).toBeUndefined();
});

test('what is ripe is known from the dates of the farm file, over the end of the year too', () => {
  const picking = (dates: string, now = FIRST) =>
    patchOf(
      smallHub({
        now,
        farm: frostFarm({ patch: `, picking: { ${dates}, minutes: 60, value: 80 }` }),
      }),
    )?.picking;
  expect(picking('from: 05-20, to: 10-31')).toMatchObject({ minutes: 60, value: 80, damage: -1.1 });
  expect(picking('from: 05-20, to: 10-15')).toBeNull();
  expect(picking('from: 10-20, to: 02-10')).not.toBeNull();
  expect(picking('from: 11-20, to: 02-10')).toBeNull();
  expect(patchOf(smallHub({ now: FIRST, farm: frostFarm() }))?.picking).toBeNull();
});

test('a stage of the crop gives the limit, with a margin for the probe; the grower’s own goes first', () => {
  const cover = (patch: string, probe = '') => {
    const farm = frostFarm({ patch }).replace(', damage: -1.1', '');
    const bare = probe === '' ? farm : farm.replace('spot: canopy,', `spot: canopy, ${probe},`);
    return patchOf(smallHub({ now: FIRST, farm: bare }))?.cover;
  };
  // Extension tables, as in tests/truth/frost/damageLimits.csv: open flower -1.1, green fruit -2.2.
  expect(cover(', stage: open-flower')?.damage).toBeCloseTo(-1.1 + 2, 9);
  expect(cover(', stage: green-fruit')?.damage).toBeCloseTo(-2.2 + 2, 9);
  expect(cover(', stage: green-fruit', 'bare: true')?.damage).toBeCloseTo(-2.2 + 1, 9);
  expect(cover(', stage: open-flower')?.damageFrom).toContain('extension tables');
  const told = patchOf(smallHub({ now: FIRST, farm: frostFarm({ patch: ', stage: tight-bud' }) }));
  expect(told?.cover).toMatchObject({ damage: -1.1 });
  expect(told?.cover?.damageFrom).toBeUndefined();
});
