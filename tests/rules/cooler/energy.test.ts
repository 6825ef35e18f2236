import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  counterDifference,
  dailyEnergy,
  dutyFromPower,
  dutyFromTemperature,
  energyIndex,
  energyLine,
  heatCapacity,
  heatLossCoefficient,
} from '../../../rules/cooler/index.ts';
import { instant, MINUTE } from '../../../rules/units.ts';
import { truth } from '../../truth/index.ts';

const at = (minute: number, value: number | null) => ({ t: instant(minute * MINUTE), value });

test.for(
  truth(
    'cooler/counter.csv',
    ['from', 'to', 'hours', 'modulus', 'most', 'amount'],
    ['kind', 'minimum'],
  ),
)('$from to $to in $hours h is $amount ($kind)', (row) => {
  const step = counterDifference(row);
  expect(step.amount).toBeCloseTo(row.amount, 9);
  expect(step.kind).toBe(row.kind);
  expect(step.minimum).toBe(row.minimum === 'yes');
});

test('more than can be, and no time between, are rejected', () => {
  const step = { from: 100, to: 150, hours: 1, modulus: 1e6, most: 10 };
  expect(counterDifference(step)).toEqual({ amount: null, kind: 'spike', minimum: false });
  expect(counterDifference({ ...step, from: 120_345, to: 30 }).kind).toBe('spike');
  expect(counterDifference({ ...step, hours: 0 })).toEqual({
    amount: null,
    kind: 'clock',
    minimum: false,
  });
  expect(counterDifference({ ...step, hours: -1 }).kind).toBe('clock');
  expect(counterDifference({ ...step, to: null })).toBeNull();
});

test('counting on over the end gives the same as counting on a longer counter', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 0, max: 9999 }),
      fc.integer({ min: 0, max: 99 }),
      (from, more) => {
        const to = (from + more) % 10_000;
        const step = counterDifference({ from, to, hours: 1, modulus: 10_000, most: 100 });
        return step.amount === more;
      },
    ),
  );
});

/** Minutes of a cycle: falls by 2 K in `falling`, rises in the rest of 40. */
const sawtooth = (cycles: number, falling: number) =>
  Array.from({ length: cycles * 40 }, (_, minute) => {
    const phase = minute % 40;
    const value =
      phase < falling ? 4 - (2 * phase) / falling : 2 + (2 * (phase - falling)) / (40 - falling);
    return at(minute, value);
  });

// The running median rounds the sharper side of a tooth off, so a lopsided one is less sure.
test.for([
  [14, 0.005],
  [20, 0.005],
  [10, 0.051],
  [30, 0.051],
] as const)(
  'a cycle of 40 min that falls for %s has run that share within %s',
  ([falling, hair]) => {
    const duty = dutyFromTemperature(sawtooth(8, falling), { gapMaxMinutes: 5 });
    expect(Math.abs((duty.share ?? 9) - falling / 40)).toBeLessThan(hair);
    expect(duty.estimated).toBe(true);
    expect(duty.knownShare).toBe(1);
  },
);

test('turns of 0.2 K and less are noise', () => {
  const flat = Array.from({ length: 200 }, (_, minute) =>
    at(minute, 3 + (minute % 40 < 20 ? 0 : 0.197)),
  );
  expect(dutyFromTemperature(flat, { gapMaxMinutes: 5 }).share).toBeNull();
  const turning = Array.from({ length: 200 }, (_, minute) =>
    at(minute, 3 + (minute % 40 < 20 ? 0 : 0.203)),
  );
  expect(dutyFromTemperature(turning, { gapMaxMinutes: 5 }).share).not.toBeNull();
});

test('the running median is of 5 minutes: readings 2.5 min apart are smoothed, 2.53 are not', () => {
  // 2.5 min is half of the 5; common practice, no source. One wild reading in ten is outvoted by its
  // two neighbours or, with none near enough, falls back in the one step of ten after it.
  const spiked = (seconds: number) =>
    Array.from({ length: 60 }, (_, i) => at((i * seconds) / 60, i % 10 === 5 ? 9 : 3));
  expect(dutyFromTemperature(spiked(150), { gapMaxMinutes: 5 }).share).toBeNull();
  expect(dutyFromTemperature(spiked(151.8), { gapMaxMinutes: 5 }).share).toBeCloseTo(0.1, 9);
});

test('single wild readings do not turn the smoothed air', () => {
  const wild = sawtooth(8, 14).map((reading, i) =>
    i % 40 === 25 ? { ...reading, value: 9 } : reading,
  );
  const duty = dutyFromTemperature(wild, { gapMaxMinutes: 5 });
  expect(Math.abs((duty.share ?? 9) - 0.35)).toBeLessThan(0.01);
});

test('a hole in the readings is no time of either kind', () => {
  const holed = sawtooth(8, 14).map((reading, i) =>
    i >= 80 && i < 160 ? { ...reading, value: null } : reading,
  );
  const duty = dutyFromTemperature(holed, { gapMaxMinutes: 5 });
  expect(Math.abs((duty.share ?? 9) - 0.35)).toBeLessThan(0.02);
  expect(duty.knownShare).toBeCloseTo((319 - 81) / 319, 9);
});

test('running is above half of the running power', () => {
  const readings = [at(0, 0), at(5, 550), at(10, 276), at(15, 274), at(20, 0)];
  const duty = dutyFromPower(readings, { running: 550, gapMaxMinutes: 6 });
  expect(duty).toEqual({ share: 0.5, knownShare: 1, estimated: false });
  const unknown = [at(0, 550), at(5, null), at(10, 0), at(20, 0)];
  expect(dutyFromPower(unknown, { running: 550, gapMaxMinutes: 6 })).toEqual({
    share: 1,
    knownShare: 0.25,
    estimated: false,
  });
  expect(dutyFromPower([], { running: 550, gapMaxMinutes: 6 }).share).toBeNull();
});

test('0.55 kW for 0.35 of a day are 4.62 kWh', () => {
  expect(dailyEnergy(550, 0.35)).toBeCloseTo(4.62, 9);
  expect(dailyEnergy(550, null)).toBeNull();
});

test.for(
  truth('cooler/energyIndex.csv', ['kwh', 'outside', 'inside', 'cop', 'index', 'coefficient']),
)('$kwh kWh from $outside to $inside °C: $index kWh/(d K), $coefficient W/K', (row) => {
  const day = { kilowattHours: row.kwh, outside: row.outside, inside: row.inside };
  expect(energyIndex(day)).toBeCloseTo(row.index, 6);
  expect(heatLossCoefficient({ ...day, cop: row.cop })).toBeCloseTo(row.coefficient, 5);
});

test('under 3 K of difference there is no index', () => {
  expect(energyIndex({ kilowattHours: 6, outside: 5.97, inside: 3 })).toBeNull();
  expect(energyIndex({ kilowattHours: 6, outside: 6.03, inside: 3 })).not.toBeNull();
  expect(heatLossCoefficient({ kilowattHours: 6, outside: 5, inside: 3, cop: 2 })).toBeNull();
  expect(energyIndex({ kilowattHours: null, outside: 16, inside: 3 })).toBeNull();
});

test('38.46 W/K and 6 h hold 830.8 kJ/K', () => {
  expect(heatCapacity(38.4615384615, 6)).toBeCloseTo(830.76923, 4);
});

const days = [8, 10, 12, 14, 16].map((gap, i) => ({
  gap,
  kilowattHours: [3.4, 3.9, 4.3, 4.9, 5.2][i] ?? 0,
}));

test('five days: 0.23 kWh/(d K) from 0.1933 to 0.2667, and 1.58 kWh whatever the weather', () => {
  // SciPy 1.17 (linregress, stats.t).
  const line = energyLine([
    ...days,
    { gap: null, kilowattHours: 9 },
    { gap: 30, kilowattHours: null },
  ]);
  expect(line?.slope).toBeCloseTo(0.23, 9);
  expect(line?.slopeLow).toBeCloseTo(0.1932523, 6);
  expect(line?.slopeHigh).toBeCloseTo(0.2667477, 6);
  expect(line?.intercept).toBeCloseTo(1.58, 9);
  expect(line?.residualSd).toBeCloseTo(0.0730297, 6);
  expect((line?.intercept ?? 0) + 13 * (line?.slope ?? 0)).toBeCloseTo(4.57, 9);
  expect([line?.days, line?.enough]).toEqual([5, false]);
});

test('ten days over 5 K are enough; nine, or 4.9 K, are not', () => {
  const many = (n: number, span: number) =>
    Array.from({ length: n }, (_, i) => ({
      gap: 8 + (span * i) / (n - 1),
      kilowattHours: 4 + (i % 3),
    }));
  expect(energyLine(many(10, 5))?.enough).toBe(true);
  expect(energyLine(many(9, 9))?.enough).toBe(false);
  expect(energyLine(many(10, 4.95))?.enough).toBe(false);
  expect(energyLine(days.slice(0, 2))).toBeNull();
  expect(energyLine(days.map((day) => ({ ...day, gap: 8 })))).toBeNull();
});

test('three days are the fewest that make a line', () => {
  // By hand: gaps 8, 10, 12 with 3, 4, 6 kWh have a slope of 6 / 8 and residuals 1/6, -1/3, 1/6, so
  // sd = sqrt(1/6), slope error sqrt(1/48); Student's t at 97.5 % with 1 degree of freedom: 12.7062.
  const line = energyLine([
    { gap: 8, kilowattHours: 3 },
    { gap: 10, kilowattHours: 4 },
    { gap: 12, kilowattHours: 6 },
  ]);
  expect(line?.slope).toBeCloseTo(0.75, 9);
  expect(line?.residualSd).toBeCloseTo(0.4082483, 6);
  expect((line?.slopeHigh ?? 0) - 0.75).toBeCloseTo(1.833983, 4); // 12.7062 x 0.1443376
});
