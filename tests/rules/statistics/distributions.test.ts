import fc from 'fast-check';
import { cumulativeStdNormalProbability } from 'simple-statistics';
import { expect, test } from 'vitest';
import { normalCdf, studentCdf, studentQuantile } from '../../../rules/statistics/index.ts';
import { truth } from '../../truth/index.ts';

const anyDf = fc.double({ min: 1, max: 500, noNaN: true });
const anyT = fc.double({ min: -40, max: 40, noNaN: true });

test.for(truth('statistics/student.csv', ['t', 'df', 'p']))(
  'Student t below $t with $df degrees of freedom has chance $p',
  ({ t, df, p }) => {
    expect(Math.abs(studentCdf(t, df) - p)).toBeLessThan(6e-7);
    expect(Math.abs(studentQuantile(p, df) - t)).toBeLessThan(5e-6);
  },
);

test.for(truth('statistics/normal.csv', ['z', 'p']))(
  'a normal value is below $z with chance $p',
  ({ z, p }) => {
    expect(Math.abs(normalCdf(z) - p)).toBeLessThan(6e-7);
    expect(Math.abs(studentCdf(z, Number.POSITIVE_INFINITY) - p)).toBeLessThan(6e-7);
    expect(Math.abs(studentQuantile(p, Number.POSITIVE_INFINITY) - z)).toBeLessThan(5e-5);
  },
);

test('the normal curve agrees with the simple-statistics table', () => {
  for (let z = -3; z <= 3; z += 0.25) {
    expect(Math.abs(normalCdf(z) - cumulativeStdNormalProbability(z))).toBeLessThan(5.1e-5); // that table has four decimals
  }
});

test('the tail far out keeps its digits', () => {
  // Q(6) = 9.8659e-10 and Q(10) = 7.6199e-24: SciPy 1.17 (stats.norm.sf).
  expect(normalCdf(-6) / 9.865876450376946e-10).toBeCloseTo(1, 9);
  expect(normalCdf(-10) / 7.61985302416052e-24).toBeCloseTo(1, 9);
});

test('one degree of freedom is the Cauchy distribution', () => {
  fc.assert(
    fc.property(anyT, (t) => Math.abs(studentCdf(t, 1) - (0.5 + Math.atan(t) / Math.PI)) < 1e-12),
  );
});

test('two degrees of freedom have a closed form', () => {
  fc.assert(
    fc.property(anyT, (t) => {
      const closed = 0.5 + t / (2 * Math.sqrt(2 + t * t));
      return Math.abs(studentCdf(t, 2) - closed) < 1e-12;
    }),
  );
});

test('a larger value is never less likely to stand above the variable', () => {
  fc.assert(
    fc.property(anyT, anyT, anyDf, (a, b, df) => {
      const [low, high] = a <= b ? [a, b] : [b, a];
      return studentCdf(low, df) <= studentCdf(high, df) + 1e-14;
    }),
  );
});

test('the distribution is even about zero', () => {
  fc.assert(
    fc.property(
      anyT,
      anyDf,
      (t, df) => Math.abs(studentCdf(t, df) + studentCdf(-t, df) - 1) < 1e-13,
    ),
  );
});

test('the quantile turns the distribution round', () => {
  fc.assert(
    fc.property(fc.double({ min: 1e-6, max: 1 - 1e-6, noNaN: true }), anyDf, (p, df) => {
      return Math.abs(studentCdf(studentQuantile(p, df), df) - p) < 1e-10;
    }),
  );
});

test('chances and degrees of freedom that mean nothing are refused', () => {
  expect(() => studentQuantile(0, 5)).toThrow(
    'Expected probability from above 0 to below 1, got 0',
  );
  expect(() => studentQuantile(1, 5)).toThrow(RangeError);
  expect(() => studentQuantile(Number.NaN, 5)).toThrow(RangeError);
  expect(() => studentCdf(1, 0)).toThrow(RangeError);
  expect(() => studentCdf(Number.NaN, 5)).toThrow(RangeError);
  expect(() => normalCdf(Number.NaN)).toThrow(RangeError);
});
