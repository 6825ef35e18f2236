import fc from 'fast-check';
import { permutationsHeap } from 'simple-statistics';
import { expect, test } from 'vitest';
import { type BlockCase, blockPermutation, holm } from '../../../rules/statistics/index.ts';
import { truth } from '../../truth/index.ts';

/** `11 00;-- 10`: blocks, in each its cases as exposed and lost; `--` for not known. */
const casesOf = (text: string): BlockCase[] =>
  text.split(';').flatMap((row, block) =>
    row.split(' ').flatMap((cell, slot) =>
      cell === '--'
        ? []
        : [
            {
              block: `w${block}`,
              slot: `p${slot}`,
              exposed: cell[0] === '1',
              lost: cell[1] === '1',
            },
          ],
    ),
  );

test.for(truth('statistics/blockPermutation.csv', ['p', 'difference'], ['cases']))(
  '$cases has chance $p',
  ({ p, cases }) => {
    expect(blockPermutation(casesOf(cases))).toBeCloseTo(p, 7);
  },
);

test('with one case in each block it is the share of orders that a library counts', () => {
  const bits = fc.array(fc.tuple(fc.boolean(), fc.boolean()), { minLength: 2, maxLength: 5 });
  fc.assert(
    fc.property(bits, (rows) => {
      const [on, lost] = [rows.map(([e]) => e), rows.map(([, l]) => l)];
      const difference = (losses: readonly boolean[]) => {
        const share = (wanted: boolean) => {
          const own = losses.filter((_, i) => on[i] === wanted);
          return own.filter(Boolean).length / own.length;
        };
        return share(true) - share(false);
      };
      const found = blockPermutation(
        rows.map(([exposed, gone], i) => ({ block: `${i}`, slot: 'a', exposed, lost: gone })),
      );
      if (on.every(Boolean) || !on.some(Boolean)) return found === null;
      const orders = permutationsHeap([...lost]) as boolean[][];
      const limit = Math.abs(difference(lost)) - 1e-9;
      const share =
        orders.filter((order) => Math.abs(difference(order)) >= limit).length / orders.length;
      return Math.abs((found ?? 9) - share) < 1e-12;
    }),
    { numRuns: 60 },
  );
});

test('many blocks are drawn, by the same seed: the share is near the exact one', () => {
  // All 4 exposed of 12 lost and none of the others: 1 in 495 choices of four, by hand.
  const cases = Array.from({ length: 12 }, (_, i) => ({
    ...{ block: `${i}`, slot: 'a', exposed: i < 4, lost: i < 4 },
  }));
  const p = blockPermutation(cases) ?? 9;
  expect(p).toBeCloseTo(1 / 495, 2);
  expect(p).toBeGreaterThan(0.0005);
  expect(p).toBeLessThan(0.004);
  expect(blockPermutation(cases)).toBe(p);
});

test('three places under one weather are not three witnesses', () => {
  const one = (slots: number) =>
    ['11', '11', '11', '00', '00', '00'].map((cell) => Array(slots).fill(cell).join(' ')).join(';');
  expect(blockPermutation(casesOf(one(3)))).toBe(blockPermutation(casesOf(one(1))));
});

test('with nothing exposed, or all, there is nothing to compare', () => {
  expect(blockPermutation(casesOf('11;10'))).toBeNull();
  expect(blockPermutation(casesOf('00;01'))).toBeNull();
  expect(blockPermutation([])).toBeNull();
});

const adjusted = truth('statistics/holm.csv', ['comparisons', 'p', 'adjusted']);
test.for([15, 4])('%i comparisons are adjusted as printed', (comparisons) => {
  const rows = adjusted.filter((row) => row.comparisons === comparisons);
  const found = holm(rows.map(({ p }) => p));
  for (const [i, row] of rows.entries()) expect(found[i]).toBeCloseTo(row.adjusted, 7);
});

test('an adjusted chance is never below its own, never above 1, and keeps the order', () => {
  const chances = fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { maxLength: 20 });
  fc.assert(
    fc.property(chances, (list) => {
      const found = holm(list);
      const inOrder = list.map((p, i) => [p, found[i] ?? -1] as const).sort(([a], [b]) => a - b);
      return inOrder.every(([p, q], i) => q >= p && q <= 1 && q >= (inOrder[i - 1]?.[1] ?? 0));
    }),
  );
  expect(holm([0.01])).toEqual([0.01]);
  expect(() => holm([0.2, null as unknown as number])).toThrow(
    'Expected chance from 0 to 1, got NaN',
  );
});
