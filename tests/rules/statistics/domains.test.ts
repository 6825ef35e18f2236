import { expect, test } from 'vitest';
import {
  bootstrapInterval,
  effectiveSampleSize,
  ewmaAutocorrelationFactor,
  ewmaChart,
  leastFisherP,
  poissonCdf,
  poissonChance,
  poissonLimits,
  studentCdf,
  studentQuantile,
  wilson,
} from '../../../rules/statistics/index.ts';

const eight = [1, 2, 3, 4, 5, 6, 7, 8];
const chart = { target: 0, sd: 1, lambda: 1 };
type Call = (value: number) => unknown;
const wilsonAt: Call = (confidence) => wilson(3, 10, confidence);
const limitsAt: Call = (confidence) => poissonLimits(10, confidence);
const bootstrapAt: Call = (confidence) =>
  bootstrapInterval(eight, null, { confidence, draws: 99 })?.estimate;
const bootstrapOf: Call = (draws) => bootstrapInterval(eight, null, { draws })?.estimate;
const limitAtWidth: Call = (width) => ewmaChart([0], { ...chart, width })[0]?.high;

// What comes out at each bound: SciPy 1.17 (t, poisson, chi2 quantiles halved, binomtest with
// method wilson), or by hand where that is said.
test.for<[string, Call, at: number, out: number | number[], beyond: number]>([
  // By hand: 0.5 x 0.999 kept, so sqrt(1.4995 / 0.5005), and the inverse.
  [
    'autocorrelation from -0.999 to 0.999',
    (phi) => ewmaAutocorrelationFactor(0.5, phi),
    0.999,
    Math.sqrt(1.4995 / 0.5005),
    1.00899,
  ],
  [
    'autocorrelation from -0.999 to 0.999',
    (phi) => ewmaAutocorrelationFactor(0.5, phi),
    -0.999,
    Math.sqrt(0.5005 / 1.4995),
    -1.00899,
  ],
  // By hand: 1999 x 0.001 / 1.999.
  ['autocorrelation from 0 to 0.999', (phi) => effectiveSampleSize(1999, phi), 0.999, 1, 1.00899],
  ['confidence from 0.5 to 0.9999', bootstrapAt, 0.5, 4.5, 0.495],
  ['confidence from 0.5 to 0.9999', bootstrapAt, 0.9999, 4.5, 1.009899],
  ['draws from 99 to 1000000', bootstrapOf, 99, 4.5, 98],
  ['draws from 99 to 1000000', bootstrapOf, 100, 4.5, 1_010_000],
  ['width from 5e-324 to 100', limitAtWidth, 100, 100, 101],
  // By hand: 501 tables of 500 against 1, the least being one of them.
  ['lots from 1 to 500', (lots) => leastFisherP(lots, 1), 500, 1 / 501, 505],
  ['lots from 1 to 500', (lots) => leastFisherP(1, lots), 500, 1 / 501, 505],
  [
    'events from 0 to 1000000',
    (events) => poissonChance(events, 1_000_000),
    1_000_000,
    0.0003989422468833,
    1_010_000,
  ],
  [
    'mean number of events from 0 to 1000000',
    (mean) => poissonChance(1_000_000, mean),
    1_000_000,
    0.0003989422468833,
    1_010_000,
  ],
  [
    'events from 0 to 1000000',
    (events) => poissonCdf(events, 1_000_000),
    1_000_000,
    0.5002659614862837,
    1_010_000,
  ],
  [
    'events from 0 to 100000',
    (events) => poissonLimits(events),
    100_000,
    [99_381.15266374472, 100_621.74473974388],
    101_000,
  ],
  ['confidence from 0.5 to 0.9999', limitsAt, 0.5, [7.725886769523864, 13.019632514082504], 0.495],
  [
    'confidence from 0.5 to 0.9999',
    limitsAt,
    0.9999,
    [2.017777063266118, 28.807435491078444],
    1.009899,
  ],
  [
    'confidence from 0.5 to 0.9999',
    wilsonAt,
    0.5,
    [0.2127148628403787, 0.40469074938748906],
    0.495,
  ],
  [
    'confidence from 0.5 to 0.9999',
    wilsonAt,
    0.9999,
    [0.044986759701802825, 0.7958833955577103],
    1.009899,
  ],
  [
    'degrees of freedom from 0.1 to Infinity',
    (df) => studentCdf(-2, df),
    0.1,
    0.38917711390163795,
    0.099,
  ],
  [
    'degrees of freedom from 0.1 to Infinity',
    (df) => studentQuantile(0.6, df),
    0.1,
    1.5129761706778602,
    0.099,
  ],
])('%s: the bound counts, beyond it is refused', ([sentence, call, at, out, beyond]) => {
  const found = [call(at)].flat();
  [out].flat().forEach((value, index) => {
    expect(Number(found[index]) / value).toBeCloseTo(1, 8);
  });
  expect(() => call(beyond)).toThrow(new RangeError(`Expected ${sentence}, got ${beyond}`));
});
