import fc from 'fast-check';
import { linearRegression, linearRegressionLine } from 'simple-statistics';
import { expect, test } from 'vitest';
import {
  bandOf,
  baseRateBefore,
  fitChosen,
  forecastScores,
  plausibleNights,
  pooledLow,
  predictChosen,
  type ScoredForecast,
  sourceRecord,
  sourceWeight,
} from '../../../rules/frost/index.ts';
import { fitLine, leaveOneOutRmse, valueAt } from '../../../rules/frost/leastSquares.ts';

// Nights whose low hangs on two of three clues; the third is noise without any hold on it.
const noise = (i: number, step: number) => ((i * step) % 17) / 17 - 0.5;
const nights = Array.from({ length: 40 }, (_, i) => {
  const clues = { last: noise(i, 5) * 8, dew: noise(i, 7) * 6, idle: noise(i, 11) * 5 };
  return { clues, y: 1 + 0.6 * clues.last + 0.5 * clues.dew + noise(i, 3) * 0.4 };
});
const choice = { base: ['last'], pool: ['last', 'dew', 'idle'], fewest: 10 } as const;

test('a clue is taken in only where it lowers the leave-one-out error', () => {
  const model = fitChosen<'last' | 'dew' | 'idle'>(nights, choice);
  expect(model?.chosen).toEqual(['last', 'dew']);
  expect(model?.line.slopes[0]).toBeCloseTo(0.6, 1);
  expect(model?.line.slopes[1]).toBeCloseTo(0.5, 1);
  // On lows that hang on nothing, nothing is taken in beside what always is.
  const idle = nights.map((night, i) => ({ ...night, y: noise(i, 13) }));
  expect(fitChosen<'last' | 'dew' | 'idle'>(idle, choice)?.chosen).toEqual(['last']);
});

test('with one clue the line is that of another library', () => {
  const { m, b } = linearRegression(nights.map(({ clues, y }) => [clues.last, y]));
  const model = fitChosen<'last' | 'dew' | 'idle'>(nights, {
    base: ['last'],
    pool: [],
    fewest: 10,
  });
  expect(model?.line.slopes[0]).toBeCloseTo(m, 9);
  expect(model?.line.intercept).toBeCloseTo(b, 9);
  const said = model && predictChosen(model, { last: 3, dew: null, idle: null });
  expect(said?.mean).toBeCloseTo(linearRegressionLine({ m, b })(3), 9);
});

test('a clue that is not known tonight makes no forecast, and too few nights no model', () => {
  const model = fitChosen<'last' | 'dew' | 'idle'>(nights, choice);
  if (model === null) throw new Error('Expected a model, got none');
  expect(predictChosen(model, { last: 1, dew: null, idle: 0 })).toBeNull();
  expect(fitChosen<'last' | 'dew' | 'idle'>(nights.slice(0, 9), choice)).toBeNull();
});

test('a clue known on less than four nights in five is left out, however good', () => {
  const some = nights.map((night, i) =>
    i % 3 === 0 ? { ...night, clues: { ...night.clues, dew: null } } : night,
  );
  expect(fitChosen<'last' | 'dew' | 'idle'>(some, choice)?.chosen).toEqual(['last']);
});

test('with three predictors leave-one-out by leverage is what refitting without each row gives', () => {
  const rows = nights.map(({ clues, y }) => ({ x: [clues.last, clues.dew, clues.idle], y }));
  const line = fitLine(rows, 3);
  if (line === null) throw new Error('Expected a line, got none');
  const squares = rows.map((row) => {
    const rest = fitLine(
      rows.filter((other) => other !== row),
      3,
    );
    return rest === null ? Number.NaN : (row.y - valueAt(rest, row.x)) ** 2;
  });
  const rmse = Math.sqrt(squares.reduce((sum, square) => sum + square, 0) / rows.length);
  expect(leaveOneOutRmse(line, rows)).toBeCloseTo(rmse, 9);
});

test('three predictors of which one is the sum of the others make no line', () => {
  const rows = nights.map(({ clues: { last, dew }, y }) => ({ x: [last, dew, last + dew], y }));
  expect(fitLine(rows, 3)).toBeNull();
});

const row = ({ temperature, low }: { temperature: number; low: number }) => ({
  x: [temperature],
  y: low,
});
const usual = Array.from({ length: 30 }, (_, i) => ({
  temperature: i % 9,
  low: -4 + 0.6 * (i % 9) + noise(i, 7),
}));

test('a night that no weather explains does not teach; an ordinary one does', () => {
  const glitch = { temperature: 5, low: -25 };
  expect(plausibleNights([...usual, glitch], row)).toEqual(usual);
  expect(plausibleNights(usual, row)).toEqual(usual);
});

test('of few nights none is left out, and of many never more than one in ten', () => {
  const wild = Array.from({ length: 8 }, (_, i) => ({ temperature: i, low: -30 - i * i }));
  expect(plausibleNights(usual.slice(0, 10), row)).toHaveLength(10);
  expect(plausibleNights([...usual, ...wild], row).length).toBeGreaterThanOrEqual(38 - 3);
});

test('a source is corrected by what it erred before, and never by the night it is held against', () => {
  // By hand: errors 2, 2, 2; corrections 0/3, 2/4, 4/5 before each: 2, 1.5, 1.2 are left.
  const said = Array.from({ length: 3 }, () => ({ said: 0, low: 2 }));
  expect(sourceRecord(said)).toEqual({ nights: 3, correction: 1, error: null });
  const ten = Array.from({ length: 10 }, () => ({ said: 0, low: 2 }));
  const left = ten.map((_, i) => 2 - (2 * i) / (i + 3));
  const rmse = Math.sqrt(left.reduce((sum, each) => sum + each * each, 0) / 10);
  expect(sourceRecord(ten).error).toBeCloseTo(rmse, 9);
  expect(sourceRecord(ten).correction).toBeCloseTo(20 / 13, 9);
});

test('a source has no say before ten nights, nor while it errs more', () => {
  const record = (count: number, error: number) => ({ nights: count, correction: 0, error });
  expect(sourceWeight({ nights: 9, correction: 0, error: null }, 5)).toBe(0);
  expect(sourceWeight(record(60, 2.1), 2)).toBe(0);
  expect(sourceWeight(record(60, 2), 2)).toBe(0);
  // By hand: 60/80 x 4/(4 + 1) = 0.6; 10/30 x 0.8 = 0.2667
  expect(sourceWeight(record(60, 1), 2)).toBeCloseTo(0.6, 9);
  expect(sourceWeight(record(10, 1), 2)).toBeCloseTo(0.26667, 4);
  expect(() => sourceWeight(record(20, 1), -1)).toThrow(RangeError);
});

test('the say of a source grows with its record and with its skill, and is never whole', () => {
  const error = fc.double({ min: 0.1, max: 5, noNaN: true });
  fc.assert(
    fc.property(fc.integer({ min: 10, max: 500 }), error, error, (count, a, b) => {
      const weight = (n: number, e: number) =>
        sourceWeight({ nights: n, correction: 0, error: e }, 5);
      expect(weight(count, Math.min(a, b))).toBeGreaterThanOrEqual(weight(count, Math.max(a, b)));
      expect(weight(count + 1, a)).toBeGreaterThanOrEqual(weight(count, a));
      expect(weight(count, a)).toBeLessThan(1);
    }),
  );
});

test('two forecasts as one lie between them, no surer than both erring together', () => {
  const own = { mean: -2, sd: 2, df: 20 };
  const other = { mean: 0, sd: 1, df: 30 };
  expect(pooledLow(own, other, 0)).toBe(own);
  expect(pooledLow(own, other, 0.25)).toEqual({ mean: -1.5, sd: 1.75, df: 20 });
  expect(() => pooledLow(own, other, 1.1)).toThrow('Expected weight from 0 to 1');
});

const scored = (p: number, below: boolean, more: Partial<ScoredForecast> = {}): ScoredForecast => ({
  night: '2025-11-03',
  low: { mean: 0, sd: 1, df: 10 },
  p,
  at: 0,
  came: below ? -1 : 1,
  before: 1,
  baseRate: 0.3,
  ...more,
});
// Six nights of the methods' worked example (Brier 1950): BS 0.0521, against 0.3 beforehand BSS 0.8204.
const six = [
  [0.1, false],
  [0.3, false],
  [0.8, true],
  [0.6, true],
  [0.05, false],
  [0.9, true],
] as const;

test('six nights score 0.0521, and 0.8204 better than three in ten said each time', () => {
  const scores = forecastScores(six.map(([p, below]) => scored(p, below)));
  expect(scores?.brier).toBeCloseTo(0.0521, 4);
  expect(scores?.skill.climatology).toBeCloseTo(0.8204, 4);
  expect(scores?.enough).toBe(false);
  expect(scores?.happened).toBe(3);
  // "As last night" said "not below" each time: it was wrong three times in six.
  expect(scores?.skill.persistence).toBeCloseTo(1 - 0.052083 / 0.5, 4);
});

test('errors, their direction and the 80 % range are counted by hand', () => {
  // t quantile 0.9 at 10 df: 1.372 (any table): 1.3 lies inside 1.372 x 1, 1.5 does not.
  const scores = forecastScores([
    scored(0.5, false, { came: 1.3, before: 3.3 }),
    scored(0.5, false, { came: 1.5, before: null }),
  ]);
  expect(scores?.inside).toBe(1);
  expect(scores?.error).toBeCloseTo(1.4, 9);
  expect(scores?.bias).toBeCloseTo(-1.4, 9);
  expect(scores?.persistenceError).toBeCloseTo(2, 9);
  expect(forecastScores([])).toBeNull();
  expect(() => forecastScores([scored(1.2, false)])).toThrow(RangeError);
});

test('every forecast stands in one band, also the surest', () => {
  fc.assert(
    fc.property(
      fc.array(fc.tuple(fc.double({ min: 0, max: 1, noNaN: true }), fc.boolean())),
      (all) => {
        const scores = forecastScores(all.map(([p, below]) => scored(p, below)));
        if (all.length === 0) return scores === null;
        const sum = scores?.bands.reduce((n, band) => n + band.n, 0);
        return sum === all.length;
      },
    ),
  );
  expect(bandOf([scored(1, true)], 0.9, 1)).toMatchObject({ n: 1, happened: 1 });
  expect(bandOf([], 0, 0.5).between).toBeNull();
});

test('the base rate beforehand knows the nights before, of this time of the year, and no others', () => {
  const night = (name: string, low: number | null) => ({ night: name, low });
  const known = [
    night('2024-11-10', -1), // a year ago, the same weeks
    night('2024-07-10', -1), // another time of the year
    night('2025-11-01', 2),
    night('2025-11-02', null),
    night('2025-11-03', -5), // the night itself
    night('2025-11-04', -5),
  ];
  expect(baseRateBefore(known, 0, '2025-11-03')).toBeCloseTo(1.5 / 3, 9);
  expect(baseRateBefore([], 0, '2025-11-03')).toBe(0.5);
});
