import { expect, test } from 'vitest';
import * as contract from '../../../hub/contract/index.ts';
import { frostFarm, nightsGoBy, temperatureAt } from '../frostNights.ts';
import { HOUR, servedHub } from '../smallFarm.ts';

const DAY = 24 * HOUR;
const FIRST = Date.UTC(2025, 9, 20, 12);
const NIGHTS = 36;
const iso = (t: number) => new Date(t).toISOString();

/** A hub that has lived through five weeks; one source pushes each afternoon, a degree too warm. */
async function grownHub() {
  const hub = await servedHub({ now: FIRST, farm: frostFarm() });
  const push = (t: number) => {
    if (new Date(t).getUTCHours() !== 13) return;
    const pack = Array.from({ length: 30 }, (_, i) => ({
      ...(i === 0 ? { bn: 'met:' } : {}),
      ...{ n: 'temperature', u: 'Cel', t: (t + i * HOUR) / 1000 },
      v: temperatureAt(t + i * HOUR),
    }));
    hub.core.intake.receive(
      {
        topic: 'garden/forecast/temperature',
        payload: Buffer.from(JSON.stringify(pack)),
        receivedAt: t,
        again: false,
      },
      (error) => {
        if (error) throw error;
      },
    );
    hub.core.intake.flush();
  };
  const until = FIRST + NIGHTS * DAY + 3 * HOUR;
  nightsGoBy(hub, FIRST, until, { onHour: push });
  const get = async (url: string) => {
    const reply = await hub.app.inject({ url });
    expect(hub.faults).toEqual([]);
    expect(reply.statusCode).toBe(200);
    return reply.json();
  };
  return { ...hub, get, until };
}

test('a hub keeps each forecast as issued, scores it when the night is over, and tells of it', async () => {
  const { core, store, clock, get, until } = await grownHub();

  // Kept: once a night, spot and method; through the night, and where covers wait, once an hour.
  const kept = store.forecasts.between('2025-10-01', '2025-12-31').map((body) => JSON.parse(body));
  const updates = kept.filter(({ method }) => method === 'through-the-night');
  const keys = kept.map(({ place, spot, night, method, issuedAt }) =>
    [
      place,
      spot,
      night,
      method,
      method === 'through-the-night' || core.farm().place(place)?.cover
        ? iso(issuedAt).slice(0, 13)
        : '',
    ].join(),
  );
  expect(new Set(keys).size).toBe(keys.length);
  expect(updates.length).toBeGreaterThan(200);
  expect(updates.length).toBeLessThan(3 * NIGHTS * 16);
  const before = kept.length;
  core.look();
  expect(store.forecasts.between('2025-10-01', '2025-12-31').length).toBe(before);

  const card = contract.scorecard.parse(await get('/api/learn/scorecard'));
  expect(card).toEqual(await get('/api/learn/scorecard'));
  const flower = card.spots.find(({ spot }) => spot === 'canopy');
  // Cost over loss by hand: 35/60 x 16 over 0.8 x 900.
  expect(flower?.warnFrom).toBeCloseTo(((35 / 60) * 16) / 720, 3);
  const evening = flower?.methods.find(({ method }) => method === 'evening');
  expect(evening?.n).toBeGreaterThan(20);
  expect(evening?.enough).toBe(true);
  expect(evening?.skill?.climatology).toBeGreaterThan(0);
  expect(evening?.bands.reduce((sum, { n }) => sum + n, 0)).toBe(evening?.n);
  const counted = evening?.list.filter(({ low, at }) => low < at).length;
  expect(evening?.list.filter(({ below }) => below).length).toBe(counted);
  expect(evening?.words.join(' ')).toMatch(
    /Of \d+ nights it said 70.% or more, \d+ went below −1\.1/,
  );

  // Under twenty forecasts there is the list and the mean, and nothing that needs more.
  const first = flower?.methods.find(({ method }) => method === 'wide-default');
  expect(first?.n).toBeLessThan(20);
  expect(first).toMatchObject({ enough: false, skill: null, bands: [] });
  expect(first?.list.length).toBe(first?.n);
  expect(first?.words.join(' ')).toContain('that takes 20 nights');

  // The source was a degree and more too warm for the flowers; its record is of what it said.
  const source = card.sources.find(({ spot }) => spot === 'canopy');
  expect(source).toMatchObject({ source: 'met', place: 'south-patch' });
  expect(source?.nights).toBeGreaterThan(30);
  expect(source?.error).toBeLessThan(1);
  expect(source?.words).toContain('met: ');

  // A forecast is what was said then: what came later never changes it.
  const [early] = kept.filter(({ night }) => night === '2025-11-10');
  clock.set(until + 6 * HOUR);
  core.look();
  const again = store.forecasts.between('2025-11-10', '2025-11-10').map((body) => JSON.parse(body));
  expect(again).toContainEqual(early);
});

test('tonight’s curves hold what was measured, what is expected, and what is covered', async () => {
  const hub = await servedHub({ now: FIRST, farm: frostFarm() });
  nightsGoBy(hub, FIRST, FIRST + 12 * DAY + 7 * HOUR); // 19:00, in the dark
  const reply = await hub.app.inject({ url: '/api/frost/curves' });
  const tonight = contract.frostTonight.parse(reply.json());
  expect(tonight).toEqual(reply.json());
  expect(tonight.curves.map(({ place, spot }) => `${place} ${spot}`)).toEqual([
    'south-patch canopy',
    'outside air',
    'south-patch under-cover',
  ]);
  for (const { t, temperature, fan, limits, words, low, between } of tonight.curves) {
    expect(t.length).toBe(temperature.length);
    expect(t.length).toBeGreaterThan(20);
    expect(Math.max(...t)).toBeLessThanOrEqual(tonight.now);
    expect(Math.min(...fan.map((point) => point.t))).toBeGreaterThanOrEqual(tonight.now);
    expect(between[0]).toBeLessThan(low.mean);
    expect(limits.length).toBe(1);
    expect(words).toMatch(/low about .* chance below/);
  }
  expect(tonight.curves[0]?.limits[0]).toMatchObject({ what: 'damage', at: -1.1 });
  expect(tonight.curves[1]?.limits[0]).toMatchObject({ what: 'freezing', at: 0 });
  expect(tonight.covers).toMatchObject([
    { place: 'south-patch', covered: null, nights: 0, gain: null },
  ]);
  const forecasts = (await hub.app.inject({ url: '/api/frost/tonight' })).json();
  expect(contract.nightForecast.array().parse(forecasts)).toEqual(forecasts);
});

test('a farm without a forecast has an empty page, and no fault', async () => {
  const hub = await servedHub({ now: FIRST, farm: frostFarm() });
  hub.core.look();
  const get = async (url: string) => (await hub.app.inject({ url })).json();
  expect(await get('/api/frost/curves')).toMatchObject({ curves: [] });
  expect(await get('/api/learn/scorecard')).toMatchObject({ spots: [], sources: [] });
  expect(hub.faults).toEqual([]);
});
