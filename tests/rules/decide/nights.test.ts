import fc from 'fast-check';
import { expect, test } from 'vitest';
import { decide, type NightRecord } from '../../../rules/decide/index.ts';
import { lowSoFar } from '../../../rules/decide/lowSoFar.ts';
import { dayAfter } from '../../../rules/decide/night.ts';
import { nightLine } from '../../../rules/decide/nightLine.ts';
import { celsius, HOUR, instant, MINUTE } from '../../../rules/units.ts';
import { at, column, outside, pastNights, patch, snapshot, spot } from './makeSnapshot.ts';

// Ten example nights of Snyder & de Melo-Abreu 2005, FAO Env. & Nat. Res. Series 10, vol. 1.
const T0 = [3.2, 0.8, 0.2, 2.6, 4.4, 5.2, 2.7, 1.2, 4.5, 5.6];
const LOW = [-3.1, -5.0, -6.3, -5.4, -4.0, -2.5, -4.8, -5.0, -4.4, -3.3];
const faoNights = T0.map(
  (temperature, i): NightRecord => ({
    night: `2025-11-${String(i + 1).padStart(2, '0')}`,
    afternoon: null,
    evening: { temperature: celsius(temperature), dewPoint: null },
    low: celsius(LOW[i] ?? 0),
  }),
);

// 45° N, 0° E on 21 December: sunset 16:21:11, sunrise next day 07:35 UTC (suncalc, astronomy-engine).
const evening = at('2025-12-21T18:22');

test.for([
  // T0, mean, se, threshold, P: T0-only least squares on the FAO nights and Student's t, computed
  // by two separate programs (closed form and quadrature)
  [3.0, -4.4001, 0.7476, -4, 0.6965],
  [6.0, -2.8917, 0.8355, -2.2, 0.7841],
  [10.0, -0.8804, 1.1524, -1.1, 0.4268],
] as const)('two hours after sunset at %d °C the FAO nights give a low of %d', (row) => {
  const [t0, mean, se, threshold, p] = row;
  const bed = spot(evening, { spot: 'grass', temperature: t0, every: 1, nights: faoNights });
  const cover = { minutes: 30 as never, value: 1, damage: celsius(threshold), effect: 1 };
  const { frost } = decide(snapshot(evening, { places: [patch({ spots: [bed], cover })] }));
  expect(frost[0]).toMatchObject({ method: 'evening', nightsLearned: 10, low: { df: 8 } });
  // A minute of the night has gone by, in which it should have cooled and did not: 0.02 K
  expect(Math.abs((frost[0]?.low.mean ?? 0) - mean)).toBeLessThan(0.02);
  expect(Math.abs((frost[0]?.low.sd ?? 0) - se)).toBeLessThan(0.002);
  expect(Math.abs((frost[0]?.pBelow.p ?? 0) - p)).toBeLessThan(0.01);
});

const night = {
  name: '',
  set: instant(0),
  rise: instant(15 * HOUR),
  riseBefore: instant(-9 * HOUR),
  hours: 15,
  afternoon: instant(0),
};

test('the way down and its crossings are those published for 0.95 °C falling to -5.45 in 15 h', () => {
  const start = { t: instant(2 * HOUR), value: 0.95 };
  const line = nightLine(start, start, -5.45, night);
  // The way down: outputs printed in FAO 2005. The crossings: the same formula solved by hand
  for (const [t, value] of [
    [3, -0.825],
    [5, -2.1245],
    [10, -4.0706],
    [15, -5.45],
  ] as const) {
    expect(line.at(t * HOUR)).toBeCloseTo(value, 4);
  }
  for (const [limit, hours] of [
    [0, 2.2864],
    [-1.1, 3.3338],
    [-2.2, 5.1492],
  ] as const) {
    expect((line.crossing(limit) ?? 0) / HOUR).toBeCloseTo(hours, 4);
  }
  expect(line.crossing(-6)).toBeNull();
});

test('a curve drawn on from the middle of the night is the same curve', () => {
  const start = { t: instant(2 * HOUR), value: 0.95 };
  const whole = nightLine(start, start, -5.45, night);
  const later = { t: instant(8 * HOUR), value: whole.at(8 * HOUR) };
  const rest = nightLine(later, later, -5.45, night);
  for (const t of [9, 11.5, 14]) expect(rest.at(t * HOUR)).toBeCloseTo(whole.at(t * HOUR), 9);
});

test('readings warmer than the curve lift the low by half each update, weighed by the fall so far', () => {
  // By hand: kept -2.4 - 6.4 (1 - s) = -4.4521; refitted k = 1.4, 0.95 - 1.4 √13 = -4.0979.
  // Weighed by s = √(6/13) = 0.6794; (1 - s) x -5.45 + s x (-4.4521 - 4.0979)/2 = -4.6517
  const t = [3, 4, 5, 6, 7, 8].map((h) => instant(h * HOUR));
  const readings = { t, value: [-0.5, -1.0, -1.5, -1.9, -2.2, -2.4] };
  const now = instant(8 * HOUR);
  const last = { t: now, value: -2.4 };
  const low = lowSoFar({ mean: -5.45, sd: 0.7476, df: 8 }, 0.95, readings, night, now, last);
  expect(low.mean).toBeCloseTo(-4.6517, 3);
  expect(low.sd).toBeCloseTo(0.5486, 3); // 0.7476 √(7/13)
});

test('the low is never said to be above what was already read tonight', () => {
  const now = at('2025-12-22T05:00');
  const dip = (ago: number) => (ago > 240 && ago < 300 ? -6 : 2);
  const bed = spot(now, { spot: 'grass', temperature: dip, nights: faoNights });
  const { frost } = decide(snapshot(now, { places: [outside(bed)] }));
  expect(frost[0]?.low.mean).toBeLessThanOrEqual(-6);
});

test.for([
  ['09:30', 12, 'recent-nights'], // morning: no reading of today speaks for tonight yet
  ['15:40', 12, 'afternoon'],
  ['18:25', 12, 'evening'],
  ['09:30', 6, 'recent-nights'],
  ['15:40', 6, 'recent-nights'],
  ['18:25', 6, 'recent-nights'],
  ['09:30', 2, 'wide-default'],
  ['15:40', 2, 'wide-default'],
  ['18:25', 2, 'wide-default'],
] as const)('at %s with %d nights known the low rests on %s', ([time, nights, method]) => {
  const now = at(`2025-12-21T${time}`);
  const grass = spot(now, { spot: 'grass', temperature: 3, nights: pastNights(nights) });
  const [forecast] = decide(snapshot(now, { places: [outside(grass)] })).frost;
  expect(forecast?.method).toBe(method);
  expect(forecast?.nightsLearned).toBe(method === 'wide-default' ? 0 : nights);
});

test('the wide default says little: half its chances lie more than two degrees away', () => {
  const grass = spot(evening, { spot: 'grass', temperature: 3 });
  const [forecast] = decide(snapshot(evening, { places: [outside(grass)] })).frost;
  expect(forecast?.low.df).toBe(4);
  expect((forecast?.low.sd ?? 0) * 0.741).toBeGreaterThan(2); // t quantile 0.75, 4 df: 0.7407
});

test('a probe that has said nothing for hours, or never, gives no forecast', () => {
  const silent = spot(evening, { spot: 'grass', temperature: 3, silent: 300, nights: faoNights });
  const empty = spot(evening, { spot: 'air', humidity: 80 });
  expect(decide(snapshot(evening, { places: [outside(silent, empty)] })).frost).toEqual([]);
});

test.for([
  ['2025-12-31T20:00', '2026-01-01'],
  ['2026-01-01T03:00', '2026-01-01'],
  ['2026-01-01T08:20', '2026-01-01'], // sunrise 07:38: the hour after it still belongs to the night
  ['2026-01-01T10:00', '2026-01-02'],
  ['2028-02-28T20:00', '2028-02-29'],
] as const)('the night at %s is named by the morning that ends it, %s', ([time, name]) => {
  const now = at(time);
  const grass = spot(now, { spot: 'grass', temperature: 3 });
  expect(decide(snapshot(now, { places: [outside(grass)] })).frost[0]?.night).toBe(name);
});

test('the calendar knows its months', () => {
  const days = ['2025-02-28', '2024-02-28', '2000-02-29', '1900-02-28', '2025-04-30', '2025-12-31'];
  for (const day of days) {
    const next = new Date(Date.parse(`${day}T00:00Z`) + 24 * HOUR).toISOString().slice(0, 10);
    expect(dayAfter(day)).toBe(next);
  }
});

test('where the sun does not rise there is no forecast, and nobody decides on one', () => {
  const grass = spot(evening, { spot: 'grass', temperature: 3, nights: faoNights });
  const out = decide(
    snapshot(evening, {
      places: [patch({ spots: [grass] })],
      farm: { lat: 70, lon: 20, wage: 16 },
    }),
  );
  expect(out.frost).toEqual([]);
  expect(out.failures).toEqual([]);
  expect(out.decisions.find(({ kind }) => kind === 'cover')).toMatchObject({
    verdict: 'unknown',
    missing: ['sun-times'],
  });
});

test('every chance lies between 0.005 and 0.995, and every fan opens around its middle', () => {
  const anyTemperature = fc.double({ min: -25, max: 35, noNaN: true });
  const anyMinute = fc.integer({ min: 0, max: 24 * 60 - 1 });
  fc.assert(
    fc.property(anyTemperature, anyMinute, fc.integer({ min: 0, max: 20 }), (warm, minute, n) => {
      const now = at('2025-10-10T00:00') + minute * MINUTE;
      const grass = spot(now, {
        spot: 'grass',
        temperature: (ago) => warm + 6 * Math.cos((Math.PI * (minute - ago - 900)) / 720),
        nights: pastNights(n),
      });
      const [forecast] = decide(snapshot(now, { places: [outside(grass)] })).frost;
      if (forecast === undefined) throw new Error('Expected a forecast, got none');
      const { p } = forecast.pBelow;
      expect(p >= 0.005 && p <= 0.995).toBe(true);
      expect(forecast.fan.length).toBeGreaterThan(0);
      for (const [i, { t, low, middle, high }] of forecast.fan.entries()) {
        expect(low <= middle && middle <= high).toBe(true);
        expect(t >= now && t > (forecast.fan[i - 1]?.t ?? 0)).toBe(true);
      }
    }),
    { numRuns: 60 },
  );
});

test('a warmer night is never more likely to freeze', () => {
  const chance = (warm: number) => {
    const grass = spot(evening, { spot: 'grass', temperature: warm, nights: faoNights });
    return decide(snapshot(evening, { places: [outside(grass)] })).frost[0]?.pBelow.p ?? -1;
  };
  for (let warm = -5; warm < 15; warm += 0.5) {
    expect(chance(warm + 0.5)).toBeLessThanOrEqual(chance(warm));
  }
});

test('a column is read as it is: the maker gives one reading every five minutes', () => {
  expect(column(evening, 1, 5, 1).t).toHaveLength(13);
});
