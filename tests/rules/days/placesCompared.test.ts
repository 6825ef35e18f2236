import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  airingWouldDo,
  type BatchHarm,
  comparePlaces,
  diseaseHours,
  harmPerHour,
  movingSpares,
  type PlaceDay,
  type PlaceRule,
  placeHours,
  placeTally,
  saysOf,
} from '../../../rules/days/index.ts';
import { diseasesOf } from '../../../rules/disease/index.ts';
import { meanInterval } from '../../../rules/statistics/index.ts';
import { truth } from '../../truth/index.ts';
import { circumstances, tenMinutes } from '../disease/circumstances.ts';
import { at } from '../wetness/series.ts';

const rule: PlaceRule = {
  ...{ band: [18, 28], heatLimit: 32, chill: 12 },
  wet: { at: 90, below: 87, maxGapMinutes: 60 },
};
const day = { from: at(0), to: at(24) };
type Each = (hour: number) => readonly [number, number] | null;
const placeDay = (each: Each, name = '2026-06-01', open: boolean | null = null): PlaceDay => ({
  ...{ day: name, disease: null },
  ...placeHours(tenMinutes(25, each, -3), rule, day, () => open),
});
const tallyOf = (each: Each) => {
  const tally = placeTally([placeDay(each)]);
  if (tally === null) throw new Error('Expected a tally, got none');
  return tally;
};

test.for(
  truth('days/placeHours.csv', [
    ...(['night_c', 'night_pct', 'day_c', 'day_pct', 'day_hours'] as const),
    ...(['in_band', 'hot', 'cold', 'wet', 'hurt'] as const),
  ]),
)(
  '$day_hours h of $day_c °C and $day_pct % after a night of $night_c °C and $night_pct %',
  (row) => {
    const tally = tallyOf((hour) =>
      hour >= 8 && hour < 8 + row.day_hours
        ? [row.day_c, row.day_pct]
        : [row.night_c, row.night_pct],
    );
    const parts = ['inBand', 'hot', 'cold', 'wet', 'hurt'] as const;
    const wanted = [row.in_band, row.hot, row.cold, row.wet, row.hurt];
    parts.forEach((part, i) => {
      expect(tally[part][0], part).toBeCloseTo(wanted[i] ?? Number.NaN, 6);
      expect(tally[part][1], part).toBeCloseTo(wanted[i] ?? Number.NaN, 6);
    });
    expect(tally.unknown).toBe(0);
  },
);

test('every hour is one of five things, whatever the weather and the gaps', () => {
  const any = fc.array(
    fc.option(
      fc.tuple(
        fc.double({ min: -5, max: 45, noNaN: true }),
        fc.double({ min: 20, max: 100, noNaN: true }),
      ),
    ),
    { minLength: 28, maxLength: 28 },
  );
  fc.assert(
    fc.property(any, (hours) => {
      const { hours: found } = placeDay((hour) => hours[Math.floor(hour) + 3] ?? null);
      for (const { known, inBand, hot, cold, wetInBand, wet, hurt } of found) {
        expect(inBand + hot + cold + wetInBand).toBeCloseTo(known, 9);
        for (const part of [known, wet, hurt]) expect(part).toBeLessThanOrEqual(1 + 1e-9);
      }
    }),
    { numRuns: 60 },
  );
});

test('hours that nobody knows may have been anything, and a day with too many of them does not count', () => {
  const hole = (length: number) =>
    placeDay((hour) => (hour >= 10 && hour < 10 + length ? null : [22, 60]));
  const four = placeTally([hole(4)]);
  expect(four?.unknown).toBeCloseTo(4, 0);
  expect(four?.hot).toEqual([0, four?.unknown]);
  expect(four?.inBand[1]).toBeCloseTo(24, 6);
  expect(placeTally([hole(8)])).toBeNull();
  expect(placeTally([hole(8), placeDay(() => [22, 60], '2026-06-02')])).toMatchObject({
    days: 1,
    leftOut: ['2026-06-01'],
  });
  expect(placeTally([])).toBeNull();
});

test('a band upside down is refused in a sentence', () => {
  expect(() => placeHours([], { ...rule, band: [28, 18] }, day)).toThrow(
    'Expected upper end of the band from 28 to 60 °C, got 18',
  );
});

const named = (n: number) => `2026-06-${String(n + 1).padStart(2, '0')}`;
const run = (each: (n: number) => Each, count = 10) =>
  Array.from({ length: count }, (_, n) => placeDay(each(n), named(n)));

test('two places are compared over hours that both know: a probe silent in the heat looks no cooler', () => {
  const sunny: Each = (hour) => (hour >= 12 && hour < 15 ? [35, 40] : [22, 60]);
  const silent: Each = (hour) => (hour >= 12 && hour < 15 ? null : [22, 60]);
  const same = comparePlaces(
    run(() => sunny),
    run(() => silent),
  );
  expect(same.score?.mean).toBeCloseTo(0, 6);
  expect(saysOf(same)).toBe('no-difference');
  const other = comparePlaces(
    run(() => sunny),
    run(() => () => [22, 60]),
  );
  expect(other.hot?.mean).toBeCloseTo(-3, 6);
  expect(other.score?.mean).toBeCloseTo(6, 6); // three hours more in the band, three hot ones fewer
  expect(saysOf(other)).toBe('better');
});

test('turned round, a comparison says the opposite', () => {
  const warm =
    (n: number): Each =>
    (hour) =>
      hour >= 12 && hour < 15 + (n % 3) ? [30, 60] : [22, 60];
  const mild =
    (n: number): Each =>
    (hour) =>
      hour >= 12 && hour < 13 + (n % 2) ? [30, 60] : [22, 60];
  const [there, back] = [comparePlaces(run(warm), run(mild)), comparePlaces(run(mild), run(warm))];
  expect(there.score?.mean).toBeCloseTo(-(back.score?.mean ?? 0), 9);
  expect(there.score?.low).toBeCloseTo(-(back.score?.high ?? 0), 9);
  expect([saysOf(there), saysOf(back)]).toEqual(['better', 'worse']);
});

test('days known in one place only are left out and named; under five nobody can say', () => {
  const all = run(() => () => [22, 60]);
  const some = all.filter((_, n) => n >= 6);
  const difference = comparePlaces(all, some);
  expect(difference).toMatchObject({ days: 4, score: null });
  expect(difference.leftOut).toEqual([0, 1, 2, 3, 4, 5].map(named));
  expect(saysOf(difference)).toBe('unknown');
});

test.for(truth('statistics/meanInterval.csv', ['a', 'b', 'c', 'd', 'confidence', 'low', 'high']))(
  'the mean of $a, $b, $c, $d lies from $low to $high at $confidence',
  ({ a, b, c, d, confidence, low, high }) => {
    const found = meanInterval([a, b, c, d], confidence);
    expect(found?.low).toBeCloseTo(low, 6);
    expect(found?.high).toBeCloseTo(high, 6);
  },
);

test('a mean of one or two has no interval, and of none there is no mean', () => {
  expect(meanInterval([], 0.95)).toBeNull();
  expect(meanInterval([3, 5], 0.95)).toEqual({ n: 2, mean: 4, low: null, high: null });
});

test('what carrying spares, by hand', () => {
  const share = { mean: 0.002, low: 0.001, high: 0.004, from: 'guess' as const, batches: 0 };
  const told = { trays: 20, perTray: 0.5, price: 18, daysLeft: 10, harmMore: -3, share };
  const spares = movingSpares({ ...told, minutes: 30, wage: 16 });
  // 20 × 0.5 kg × 18 = 180; 3 h × 10 d × 0.2 % = 6 %: 10.80. Carrying: half an hour at 16 = 8.
  expect(spares.money).toBeCloseTo(10.8, 9);
  expect(spares.kg).toBeCloseTo(0.6, 9);
  expect(spares.moneyBetween?.[0]).toBeCloseTo(5.4, 9);
  expect(spares.moneyBetween?.[1]).toBeCloseTo(21.6, 9);
  expect(spares.cost).toBe(8);
  expect(spares.paidIn).toBeCloseTo(8 / 1.08, 9);
  const more = { ...told, minutes: 30, wage: 16 };
  expect(movingSpares({ ...more, harmMore: 3 }).money).toBe(0);
  expect(movingSpares({ ...more, harmMore: -60, daysLeft: 60 }).share).toBe(1);
  expect(movingSpares({ ...more, price: null })).toMatchObject({ money: null, paidIn: null });
});

test('what an hour of harm costs is a wide guess, and said to be one, until twelve batches tell', () => {
  const of = (n: number, slope: number): BatchHarm[] =>
    Array.from({ length: n }, (_, i) => {
      const harmfulHours = 10 * (i % 4);
      return { harmfulHours, lostShare: 0.02 + slope * harmfulHours + 0.002 * (i % 3) };
    });
  expect(harmPerHour(of(11, 0.004))).toMatchObject({ from: 'guess', mean: 0.002, batches: 11 });
  const own = harmPerHour(of(24, 0.004));
  expect(own.from).toBe('own');
  expect(own.mean).toBeCloseTo(0.004, 4);
  expect(own.low).toBeLessThan(own.mean);
  expect(own.high).toBeGreaterThan(own.mean);
  // All went through the same: no line can be drawn.
  expect(harmPerHour(Array(20).fill({ harmfulHours: 5, lostShare: 0.1 })).from).toBe('guess');
  // What thrives in bad hours is not a gain: never below nothing.
  expect(harmPerHour(of(24, -0.0004)).mean).toBe(0);
});

test('airing would do where it was cooler outside and nobody had opened', () => {
  const hot = (open: boolean | null) => [
    placeDay((h) => (h >= 11 && h < 16 ? [34, 50] : [22, 60]), named(0), open),
  ];
  const out = (t: number) => [placeDay(() => [t, 60], named(0))];
  expect(airingWouldDo(hot(null), out(20), 'heat', 28)).toMatchObject({
    ...{ badHours: 5, wouldHelp: 5, wouldDo: true },
  });
  expect(airingWouldDo(hot(true), out(20), 'heat', 28)).toMatchObject({
    ...{ openAlready: 5, wouldHelp: 0, wouldDo: false },
  });
  expect(airingWouldDo(hot(false), out(30), 'heat', 28).wouldDo).toBe(false);
  expect(airingWouldDo(hot(false), [], 'heat', 28).wouldDo).toBe(false);
});

test('airing dries wet leaves by day where outside holds less water, whatever the humidities', () => {
  const wet = [placeDay((h) => (h < 12 ? [16, 95] : [22, 60]), named(0))];
  // 95 % at 16 °C is 1.73 kPa; 100 % at 8 °C is 1.07 kPa: drier, by the tables of FAO-56.
  const cold = [placeDay(() => [8, 100], named(0))];
  expect(airingWouldDo(wet, cold, 'wet', 28)).toMatchObject({ badHours: 4, wouldDo: true });
  const warm = [placeDay(() => [20, 95], named(0))];
  expect(airingWouldDo(wet, warm, 'wet', 28).wouldDo).toBe(false);
});

// Basil downy mildew gets in from 4 h of unbroken wetness at 5 to 28 °C (Univ. of Massachusetts).
test('disease hours are the wet hours of days on which one of the crop’s diseases could get in', () => {
  const diseases = diseasesOf(['basil-downy-mildew'], []);
  const night = (hours: number, t = 16) =>
    circumstances(tenMinutes(24, (hour) => (hour >= 10 && hour < 10 + hours ? [t, 95] : [20, 60])));
  const long = diseaseHours(night(6), diseases);
  expect(long?.hours[0]).toBeCloseTo(6, 0);
  expect(long?.of).toEqual(['basil-downy-mildew']);
  expect(diseaseHours(night(2), diseases)).toMatchObject({ hours: [0, 0], of: [] });
  expect(diseaseHours(night(6), [])).toBeNull();
});

test('a silent night may have suited a disease: at the least none, at the most all of it', () => {
  const silent = circumstances(
    tenMinutes(24, (hour) => (hour >= 8 && hour < 18 ? null : [18, 60])),
  );
  const found = diseaseHours(silent, diseasesOf(['basil-downy-mildew'], []));
  expect(found?.hours[0]).toBe(0);
  expect(found?.hours[1]).toBeGreaterThan(8);
});
