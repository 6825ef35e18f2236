import fc from 'fast-check';
import { sampleRankCorrelation } from 'simple-statistics';
import { expect, test } from 'vitest';
import { spearman } from '../../../rules/statistics/index.ts';
import { truth } from '../../truth/index.ts';

test.for(truth('statistics/spearman.csv', ['rho', 'hits', 'all'], ['x', 'y']))(
  '$x with $y: rho $rho, exact chance $hits in $all',
  (row) => {
    const { rho, p } = spearman(row.x.split(' ').map(Number), row.y.split(' ').map(Number));
    expect(rho).toBeCloseTo(row.rho, 6);
    expect(p).toBeCloseTo(row.hits / row.all, 12);
  },
);

// An order of ranks with exactly this correlation, found by swapping; its chance must be the table's.
function orderWith(n: number, rho: number): number[] {
  const squares = ((1 - rho) * n * (n * n - 1)) / 6;
  const search = (left: number[], taken: number[], rest: number): number[] | null => {
    if (left.length === 0) return Math.abs(rest) < 0.5 ? taken : null;
    for (const value of left) {
      const more = rest - (value - taken.length) ** 2;
      if (more < -0.5) continue;
      const found = search(
        left.filter((other) => other !== value),
        [...taken, value],
        more,
      );
      if (found !== null) return found;
    }
    return null;
  };
  const wanted = Math.floor(squares / 2 + 0.02) * 2; // sums of squared differences are even
  const found = search(
    Array.from({ length: n }, (_, index) => index),
    [],
    wanted,
  );
  if (found === null) throw new Error(`Expected an order of ${n} with rho ${rho}, got none`);
  return found;
}

test.for(truth('statistics/spearmanCritical.csv', ['n', 'rho', 'p']))(
  '$n pairs: rho $rho has the exact chance $p',
  ({ n, rho, p }) => {
    const order = orderWith(n, rho);
    const result = spearman(
      order,
      order.map((_, index) => index),
    );
    expect(Math.abs((result.rho ?? 0) - rho)).toBeLessThan(6e-4);
    expect(Math.abs((result.p ?? 1) - p)).toBeLessThan(6e-5);
  },
);

test('ten pairs at the published critical value are drawn at about 0.049', () => {
  // 0.648 at n = 10 has 0.0490 by full enumeration; 99,999 draws come within 0.003.
  const order = orderWith(10, 0.648);
  const result = spearman(
    order,
    order.map((_, index) => index),
  );
  expect(Math.abs((result.p ?? 1) - 0.049)).toBeLessThan(0.003);
  expect(
    spearman(
      order,
      order.map((_, index) => index),
    ),
  ).toEqual(result);
});

test('rho agrees with simple-statistics where no values are equal', () => {
  const distinct = fc.uniqueArray(fc.integer({ min: -1000, max: 1000 }), {
    minLength: 3,
    maxLength: 8,
  });
  fc.assert(
    fc.property(
      distinct,
      fc.infiniteStream(fc.double({ min: 0, max: 1, noNaN: true })),
      (x, stream) => {
        const y = x.map((value, index) => ({ at: stream.next().value ?? 0, index, value }));
        const shuffled = [...y].sort((a, b) => a.at - b.at).map(({ value }) => value);
        const { rho } = spearman(x, shuffled);
        return Math.abs((rho ?? 9) - sampleRankCorrelation(x, shuffled)) < 1e-9;
      },
    ),
    { numRuns: 50 },
  );
});

test('a measure that never changes correlates with nothing', () => {
  expect(spearman([1, 1, 1], [1, 2, 3])).toEqual({ rho: null, p: null });
});

test('lists of different length are refused', () => {
  expect(() => spearman([1, 2, 3], [1, 2])).toThrow(
    'Expected length of the second list from 3 to 3',
  );
  expect(() => spearman([1, Number.NaN], [1, 2])).toThrow(RangeError);
});
