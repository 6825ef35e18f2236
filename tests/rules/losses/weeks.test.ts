import fc from 'fast-check';
import { expect, test } from 'vitest';
import { botrytisFruitIncidence } from '../../../rules/disease/index.ts';
import {
  EXPOSURE_DAYS,
  type ExposureDay,
  exposureLimits,
  isLost,
  LOSS_LIMIT,
  type LossCase,
  weekComparisons,
  weekExposure,
  weeksNeeded,
} from '../../../rules/losses/index.ts';
import { celsius, hours } from '../../../rules/units.ts';
import { truth } from '../../truth/index.ts';

test('limits are what their sources say', () => {
  expect(EXPOSURE_DAYS).toBe(7);
  expect(LOSS_LIMIT).toBe(0.1);
  // 4.268 / 0.31015, the rate at its peak of 20.42 °C: Bulger, Ellis & Madden 1987, in Python.
  expect(exposureLimits['wet-spell'].limit).toBeCloseTo(13.76093, 4);
  expect(exposureLimits['wet-hours'].limit).toBe(49); // 7 h a day, Yunis et al. 1994
  expect(exposureLimits['infection-index'].limit).toBe(0.5);
  const ours = ['hot-hours', 'cold-hours', 'cool-room-hours'] as const;
  expect(ours.map((what) => exposureLimits[what].limit)).toEqual([3, 3, 2]);
});

const day = (wet: number, unknown = 0, spell = wet, index = 0): ExposureDay => ({
  ...{ min: 8, max: 24, wetHours: wet, unknownHours: unknown },
  ...{ longestSpellHours: spell, botrytisIndex: index },
});
const none = { hot: null, cold: null };

test('a week that is known has one value for each exposure', () => {
  const days = [day(5), day(8, 0, 12, 0.3), day(0), day(2), day(3), day(4), day(6)];
  expect(weekExposure(days, { hot: { known: 2, unknown: 0 }, cold: null })).toEqual({
    'wet-spell': [12, 12],
    'wet-hours': [28, 28],
    'infection-index': [0.3, 0.3],
    'hot-hours': [2, 2],
  });
});

test('a gap may have been wet, and may have joined the spells beside it', () => {
  const found = weekExposure([day(5), day(4, 3), day(5)], none);
  expect(found['wet-hours']).toEqual([14, 17]);
  // Known spells of 5 h at most on both sides, and 4 wet and 3 unknown hours between.
  expect(found['wet-spell']).toEqual([5, 17]);
  // At the best temperature there was, for as long.
  expect(found['infection-index']).toEqual(
    [0, botrytisFruitIncidence(celsius(20.4218), hours(17))].map((value) =>
      expect.closeTo(value ?? 9, 4),
    ),
  );
});

test('a day nobody knows could have been anything', () => {
  const dark: ExposureDay = {
    ...{ min: null, max: null, wetHours: null, unknownHours: 24 },
    ...{ longestSpellHours: null, botrytisIndex: null },
  };
  const found = weekExposure(Array(7).fill(dark), { hot: { known: 0, unknown: 168 }, cold: null });
  expect(found['wet-hours']).toEqual([0, 168]);
  expect(found['wet-spell']).toEqual([0, 168]);
  expect(found['hot-hours']).toEqual([0, 168]);
  expect(found['infection-index']?.[1]).toBeGreaterThan(0.99);
});

test('more that is not known never narrows what may have been', () => {
  const oneDay = fc.record({
    ...{ min: fc.constant(8), max: fc.constant(24) },
    wetHours: fc.double({ min: 0, max: 12, noNaN: true }),
    unknownHours: fc.constantFrom(0, 0, 1, 6),
    longestSpellHours: fc.double({ min: 0, max: 12, noNaN: true }),
    botrytisIndex: fc.double({ min: 0, max: 1, noNaN: true }),
  });
  fc.assert(
    fc.property(fc.array(oneDay, { minLength: 7, maxLength: 7 }), fc.nat(6), (days, at) => {
      const before = weekExposure(days, none);
      const worse = weekExposure(
        days.map((one, i) => (i === at ? { ...one, unknownHours: one.unknownHours + 2 } : one)),
        none,
      );
      return (['wet-spell', 'wet-hours', 'infection-index'] as const).every((what) => {
        const [a, b] = [before[what] ?? [0, 0], worse[what] ?? [0, 0]];
        return a[0] === b[0] && a[0] <= a[1] && b[1] >= a[1] - 1e-9;
      });
    }),
  );
});

test('more than a tenth is a loss; where it may be either, nobody says', () => {
  expect(isLost([0.1, 0.1])).toBe(false);
  expect(isLost([0.11, 0.11])).toBe(true);
  expect(isLost([0.05, 1])).toBeNull();
  expect(isLost([0.2, 1])).toBe(true);
  expect(isLost(null)).toBeNull();
});

const weeks = (
  exposedLost: number,
  exposedKept: number,
  otherLost: number,
  otherKept: number,
): LossCase[] => {
  const of = (n: number, wet: number, lost: number) =>
    Array.from({ length: n }, () => ({ wet, lost }));
  return [
    ...[...of(exposedLost, 60, 0.3), ...of(exposedKept, 60, 0)],
    ...[...of(otherLost, 10, 0.3), ...of(otherKept, 10, 0)],
  ].map(({ wet, lost }, i) => ({
    ...{ block: `w${i}`, slot: 'a', lost: [lost, lost] as const },
    exposure: { 'wet-hours': [wet, wet] as const },
  }));
};

test('8 of 10 wet weeks against 1 of 6 dry ones: the chance, and what five comparisons leave of it', () => {
  const cases = weeks(8, 2, 1, 5);
  const { families, tried } = weekComparisons([
    { cases, exposures: ['wet-hours', 'wet-spell', 'infection-index', 'hot-hours', 'cold-hours'] },
  ]);
  expect(tried).toBe(5);
  const [wet, spell] = families[0] ?? [];
  // Fisher: SciPy 0.0349650; interval of the difference: method sheet, after Newcombe 1998.
  expect(wet?.p).toBeCloseTo(0.034965, 6);
  expect(wet?.chance).toBe(wet?.p);
  expect(wet?.adjusted).toBeCloseTo(5 * 0.034965035, 6);
  expect(wet?.words).toBe('a-hint');
  expect(wet?.difference?.low).toBeCloseTo(0.1299, 4);
  expect(wet?.difference?.high).toBeCloseTo(0.8313, 4);
  // Wilson intervals of 8 of 10 and 1 of 6, in Python from the formula.
  expect(wet?.exposedShare?.[0]).toBeCloseTo(0.4902, 4);
  expect(wet?.exposedShare?.[1]).toBeCloseTo(0.9433, 4);
  expect(wet?.otherShare?.[0]).toBeCloseTo(0.0301, 4);
  expect(wet?.otherShare?.[1]).toBeCloseTo(0.5635, 4);
  expect(wet?.needed).toBeNull();
  // Nobody could say anything of spells: counts only, and counted among the comparisons.
  expect(spell).toMatchObject({ p: null, chance: null, adjusted: null, words: 'counts-only' });
  expect(spell?.facts.unknownLots).toBe(16);
});

test('places that share their weeks count as weeks', () => {
  const single = weeks(4, 0, 0, 4);
  const tripled = ['a', 'b', 'c'].flatMap((slot) => single.map((one) => ({ ...one, slot })));
  const [alone] = weekComparisons([{ cases: single, exposures: ['wet-hours'] }]).families[0] ?? [];
  const [all] = weekComparisons([{ cases: tripled, exposures: ['wet-hours'] }]).families[0] ?? [];
  expect(alone?.chance).toBeCloseTo(2 / 70, 6);
  expect(all?.p).toBeLessThan(1e-5); // as if there were 24 weeks
  expect(all?.chance).toBeGreaterThan(0.02); // there are eight
});

test('all families count together, and a case whose loss is not sure is left out', () => {
  const cases = weeks(8, 2, 1, 5);
  const unsure = cases.map((one, i) => (i === 0 ? { ...one, lost: [0.05, 1] as const } : one));
  const { families, tried } = weekComparisons([
    { cases: unsure, exposures: ['wet-hours'] },
    { cases: [], exposures: ['cool-room-hours'] },
  ]);
  expect(tried).toBe(2);
  expect(families[0]?.[0]?.facts).toMatchObject({ exposedLost: 7, lots: 15, unknownLots: 1 });
  expect(families[1]?.[0]).toMatchObject({ words: 'counts-only', exposedShare: null });
  expect(() =>
    weekComparisons([
      { cases: cases.map((one) => ({ ...one, lost: [2, 2] as const })), exposures: ['wet-hours'] },
    ]),
  ).toThrow('Expected share lost from 0 to 1, got 2');
});

test('a rival that stood beside it in the same weeks is named', () => {
  const cases = weeks(5, 3, 2, 6).map((one) => ({
    ...one,
    exposure: {
      ...one.exposure,
      'cold-hours': one.exposure['wet-hours']?.[0] === 60 ? ([9, 9] as const) : ([0, 0] as const),
    },
  }));
  const [found] =
    weekComparisons([{ cases, exposures: ['wet-hours', 'cold-hours'] }]).families[0] ?? [];
  expect(found?.rival).toBe('cold-hours');
});

test.for(truth('losses/weeksNeeded.csv', ['exposed', 'others', 'comparisons', 'more']))(
  '$exposed with and $others without, $comparisons comparisons: at least $more more',
  ({ exposed, others, comparisons, more }) => {
    const needed = weeksNeeded(exposed, others, comparisons);
    expect(needed?.more ?? 0).toBe(more);
    expect((needed?.exposed ?? 0) + (needed?.others ?? 0)).toBe(more);
  },
);
