import fc from 'fast-check';
import { expect, test } from 'vitest';
import { damageShare } from '../../../rules/frost/index.ts';
import { celsius } from '../../../rules/units.ts';

const surely = (mean: number) => ({ mean: celsius(mean), sd: 0.001, df: 1000 });

// Tables of critical temperatures give what takes 10 % and what takes 90 % of the flowers, 2 K apart.
test.for([
  [-1.1, 0.1],
  [-2.1, 0.5],
  [-3.1, 0.9],
  [2, 0],
  [-9, 1],
] as const)(
  'a night of %d °C takes a share of %d where damage begins at -1.1 °C',
  ([low, share]) => {
    expect(Math.abs(damageShare(surely(low), -1.1) - share)).toBeLessThan(0.051); // a twentieth is one part
  },
);

test('a colder night never takes less, and a share is from 0 to 1', () => {
  const any = fc.double({ min: -15, max: 15, noNaN: true });
  const spread = fc.double({ min: 0.3, max: 5, noNaN: true });
  fc.assert(
    fc.property(any, any, spread, (a, b, sd) => {
      const [cold, mild] = [Math.min(a, b), Math.max(a, b)].map((mean) =>
        damageShare({ mean: celsius(mean), sd, df: 20 }, -1.1),
      ) as [number, number];
      return cold >= mild - 1e-12 && mild >= 0 && cold <= 1 + 1e-12;
    }),
  );
});
