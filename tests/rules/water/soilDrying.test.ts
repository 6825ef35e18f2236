import fc from 'fast-check';
import { expect, test } from 'vitest';
import { HOUR, instant } from '../../../rules/units.ts';
import { soilDrying } from '../../../rules/water/index.ts';
import { truth } from '../../truth/index.ts';

const START = 1_750_000_000_000;
const every = (values: readonly number[], hours = 4) =>
  values.map((value, i) => ({ t: instant(START + i * hours * HOUR), value }));
const columns = ['m0', 'm4', 'm8', 'm12', 'm16', 'm20', 'm24', 'limit', 'perDay', 'dryAt'] as const;

test.for(truth('water/drying.csv', [...columns]))(
  'from $m0 to $m24 % it dries by $perDay a day and is at $limit after $dryAt hours',
  ({ m0, m4, m8, m12, m16, m20, m24, limit, perDay, dryAt }) => {
    const found = soilDrying(every([m0, m4, m8, m12, m16, m20, m24]), limit);
    expect(Math.abs((found?.perDay ?? 0) - perDay)).toBeLessThan(5e-6);
    expect(Math.abs(((found?.dryAt ?? 0) - START) / HOUR - dryAt)).toBeLessThan(5e-6);
  },
);

test('soil that gets wetter, or was watered less than six hours ago, tells no pace', () => {
  expect(soilDrying(every([20, 22, 24, 26]), 15)).toBeNull();
  expect(soilDrying(every([26, 24, 22, 30, 29]), 15)).toBeNull();
  expect(soilDrying(every([26, 24, 22, 30, 29, 28.4]), 15)?.perDay).toBeGreaterThan(0);
  expect(soilDrying([], 15)).toBeNull();
  expect(soilDrying(every([25, 25, 25]), 15)).toEqual({ perDay: 0, dryAt: null });
});

test('what is no share of soil is refused', () => {
  expect(() => soilDrying(every([20, 120]), 15)).toThrow('Expected soil moisture from 0 to 100 %');
  expect(() => soilDrying(every([20]), -1)).toThrow('Expected limit of soil moisture from 0');
});

test('a lower limit is never reached sooner', () => {
  const share = fc.double({ min: 0, max: 100, noNaN: true });
  fc.assert(
    fc.property(fc.array(share, { minLength: 2, maxLength: 30 }), share, share, (values, a, b) => {
      const [low, high] = [Math.min(a, b), Math.max(a, b)];
      const [later, sooner] = [
        soilDrying(every(values, 1), low),
        soilDrying(every(values, 1), high),
      ];
      if (later?.dryAt == null || sooner?.dryAt == null) return;
      expect(later.dryAt).toBeGreaterThanOrEqual(sooner.dryAt);
    }),
  );
});
