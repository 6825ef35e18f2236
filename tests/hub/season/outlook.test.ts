import { expect, test } from 'vitest';
import type { FrostOutlook, Station } from '../../../hub/contract/index.ts';
import { seasonHub, stationYears } from './seasonFarm.ts';

const HOUR = 3_600_000;
const DAY = 24 * HOUR;
const patchOf = (all: readonly FrostOutlook[]) => {
  const found = all.find(({ place }) => place === 'south-patch');
  if (!found) throw new Error('Expected the patch, got none');
  return found;
};
const frostOf = (outlook: FrostOutlook) => {
  const found = outlook.limits.find(({ what }) => what === 'frost');
  if (!found) throw new Error('Expected the limit of frost, got none');
  return found;
};

test('without a station and without years of its own nobody can say, and is told what is missing', async () => {
  const { get } = await seasonHub({ days: [] });
  const outlook = patchOf(await get('/api/frost/outlook'));
  expect(outlook.nights).toBe(0);
  for (const { first, last } of outlook.limits)
    for (const side of [first, last]) {
      expect(side).toMatchObject({ way: 'unknown', missing: ['station-record'], curve: [] });
      expect(side.ahead.every(({ p, counted }) => p === null && counted === null)).toBe(true);
    }
});

test('five years of a station are too few, and are said to be', async () => {
  const { get } = await seasonHub({ days: stationYears({ from: 2020 }) });
  const { first } = frostOf(patchOf(await get('/api/frost/outlook')));
  expect(first).toMatchObject({ way: 'unknown', missing: ['more-years'], seasons: 5 });
});

test('thirty years give odds by date that grow with the days ahead', async () => {
  const { get } = await seasonHub();
  const outlook = patchOf(await get('/api/frost/outlook?place=south-patch'));
  expect(outlook).toMatchObject({ hemisphere: 'north', spot: 'canopy', day: '2025-10-10' });
  expect(outlook.fitted.way).toBe('none'); // nothing was measured here yet
  const { current, soFar, first } = frostOf(outlook);
  expect(current).toBe('first');
  expect(soFar.came).toBeNull();
  expect(first).toMatchObject({ way: 'curve', seasons: 30, withFrost: 30 });
  const ps = first.ahead.map(({ p }) => p ?? Number.NaN);
  expect([...ps].sort((a, b) => a - b)).toEqual(ps);
  // Where the made-up lows cross 0 °C, by hand: cos(2 pi (d - 20)/365.25) = 5/8.5 on the way down,
  // d = 20 + 365.25 (1 - 0.9420/(2 pi)) = 330.5, the 27th of November; the spread of its mean is 1.5 d.
  expect(first.dates?.middle).toMatch(/^2025-11-2[4-9]|2025-11-30$/);
  expect(first.past).toHaveLength(30);
});

test('the crop’s own limit is reached later than frost', async () => {
  const { get } = await seasonHub();
  const { limits } = patchOf(await get('/api/frost/outlook'));
  const [frost, damage] = limits;
  expect(damage).toMatchObject({ what: 'damage', at: -2.2 });
  expect(String(damage?.first.dates?.middle) > String(frost?.first.dates?.middle)).toBe(true);
});

test('south of the equator the season begins in January', async () => {
  const { get } = await seasonHub({
    ...{ lat: -42, now: Date.UTC(2025, 3, 10, 12) },
    days: stationYears({ south: true, to: Date.UTC(2025, 3, 10) }),
  });
  const outlook = patchOf(await get('/api/frost/outlook'));
  expect(outlook.hemisphere).toBe('south');
  const { current, first } = frostOf(outlook);
  expect(current).toBe('first');
  // 182.5 days sooner than in the north: the 29th of May.
  expect(first.dates?.middle).toMatch(/^2025-0(5-2[6-9]|5-3|6-0[12])/);
});

test('own clear nights that are colder bring the frost forward, and are said to', async () => {
  const hub = await seasonHub();
  const [before] = [frostOf(patchOf(await hub.get('/api/frost/outlook'))).first.dates?.middle];
  // Twelve nights here, 2 K colder than the station's lows of the same mornings.
  const lows = new Map(stationYears().map(({ day, min }) => [day, min]));
  for (let t = Date.UTC(2025, 8, 27); t < Date.UTC(2025, 9, 10); t += HOUR) {
    const morning = new Date(t + 8 * HOUR).toISOString().slice(0, 10);
    hub.core.intake.receiveReadings(
      [
        {
          probe: 'bloom',
          quantity: 'temperature',
          t,
          value: (lows.get(morning) ?? 6) - 2 + (t % DAY === 4 * HOUR ? 0 : 0.5),
        },
      ],
      t,
      (error) => {
        if (error) throw error;
      },
    );
  }
  hub.core.intake.flush();
  hub.core.snapshots.fold();
  hub.clock.set(Date.UTC(2025, 9, 11, 12)); // another day: looked at anew
  hub.core.look();
  const outlook = patchOf(await hub.get('/api/frost/outlook'));
  expect(outlook.fitted).toMatchObject({ way: 'nights' });
  expect(outlook.fitted.shared).toBeGreaterThanOrEqual(5);
  expect(outlook.fitted.by).toBeCloseTo(-2, 0);
  const { first, soFar } = frostOf(outlook);
  expect(String(first.dates?.middle) < String(before)).toBe(true);
  expect(soFar.unknownNights).toBeLessThan(5);
});

test('a first frost that was measured here is told, and the odds turn to the last one', async () => {
  const days = stationYears();
  const cold = days.map((day) => (day.day === '2025-10-02' ? { ...day, min: -1 } : day));
  const { get } = await seasonHub({ days: cold });
  const { current, soFar, first } = frostOf(patchOf(await get('/api/frost/outlook')));
  expect(current).toBe('last');
  expect(soFar.came).toBe('2025-10-02');
  expect(first.ahead.every(({ p }) => p === null)).toBe(true);
});

test('stations are listed with how far they are, and go when they are removed', async () => {
  const { get, send, store } = await seasonHub();
  const [station] = await get<Station[]>('/api/stations');
  expect(station).toMatchObject({ id: 'far-head', form: 'station-csv', first: '1995-01-01' });
  expect(station?.distance).toBeCloseTo(11.1, 1); // a tenth of a degree of latitude
  expect((await send('DELETE', '/api/stations/nowhere')).statusCode).toBe(404);
  expect((await send('DELETE', '/api/stations/far-head')).statusCode).toBe(200);
  expect(await get('/api/stations')).toEqual([]);
  expect(store.stations.days('far-head')).toEqual([]);
  expect(frostOf(patchOf(await get('/api/frost/outlook'))).first.way).toBe('unknown');
});

test('a place that has no frost to tell of is refused by name', async () => {
  const { app } = await seasonHub();
  const reply = await app.inject({ url: '/api/frost/outlook?place=long-house' });
  expect(reply.statusCode).toBe(404);
  expect(reply.json().error).toBe(
    'Expected one of outside, south-patch in place, got "long-house"',
  );
});

test('a spot without nights of its own takes a station’s into its first guess of tonight', async () => {
  const lowOf = async (days: ReturnType<typeof stationYears>) => {
    const { core } = await seasonHub({ days });
    const message = { topic: 'garden/bloom/temperature', payload: Buffer.from('12') };
    core.receive({ ...message, again: false, from: null }, () => {});
    core.flush();
    core.look();
    const [forecast] = core.lastLook()?.outlook.frost ?? [];
    return forecast;
  };
  const alone = await lowOf([]);
  const fitted = await lowOf(stationYears());
  expect(alone?.method).toBe('wide-default');
  expect(fitted?.method).toBe('station');
  expect(fitted?.low.sd).toBeLessThan(alone?.low.sd ?? 0);
  // The made-up station's lows around that date: 9 - 8.5 cos(2 pi (283 - 20)/365.25) - 4 = 6.6.
  const between = [alone?.low.mean ?? 0, 6.6].sort((a, b) => a - b);
  expect(fitted?.low.mean).toBeGreaterThan(between[0] ?? 0);
  expect(fitted?.low.mean).toBeLessThan(between[1] ?? 0);
});
