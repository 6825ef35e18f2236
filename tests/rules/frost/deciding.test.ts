import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  conditionalOdds,
  coolingCurve,
  crossingTime,
  frostOdds,
  probabilityBelow,
  worthActing,
} from '../../../rules/frost/index.ts';
import { normalCdf } from '../../../rules/statistics/index.ts';
import { truth } from '../../truth/index.ts';

const clear = { start: 0.95, low: -5.45, nightHours: 15 };
const firstFrosts = truth('frost/firstFrost.csv', ['day']).map(({ day }) => day);

test.for(truth('frost/coolingCurve.csv', ['hours', 'air_c']))(
  '$hours h after sunset it is $air_c °C',
  ({ hours, air_c }) => {
    expect(coolingCurve(clear, hours)).toBeCloseTo(air_c, 4);
  },
);

test('the published example in °F comes out alike', () => {
  const fahrenheit = { start: 33.7, low: 22.2, nightHours: 15 };
  expect(coolingCurve(fahrenheit, 3)).toBeCloseTo(30.5105, 4);
  expect(coolingCurve(fahrenheit, 10)).toBeCloseTo(24.6787, 4);
});

test.for(truth('frost/crossing.csv', ['threshold', 'hours']))(
  'it crosses $threshold °C $hours h after sunset',
  ({ threshold, hours }) => {
    expect(crossingTime(clear, threshold)).toBeCloseTo(hours, 4);
  },
);

test('crossing is the curve turned round', () => {
  fc.assert(
    fc.property(fc.double({ min: -5.45, max: 0.95, noNaN: true }), (threshold) => {
      const hours = crossingTime(clear, threshold);
      return hours !== null && Math.abs((coolingCurve(clear, hours) ?? 99) - threshold) < 1e-9;
    }),
  );
});

test('colder than the threshold already, never as cold, and nights without a curve', () => {
  expect(crossingTime(clear, 3)).toBe(2);
  expect(crossingTime(clear, -6)).toBeNull();
  expect(crossingTime({ ...clear, low: 2 }, 0)).toBeNull();
  expect(coolingCurve({ ...clear, nightHours: 3 }, 2.5)).toBeNull();
  expect(coolingCurve({ ...clear, nightHours: 3.02 }, 2.5)).not.toBeNull();
  expect(() => coolingCurve(clear, 16)).toThrow(
    'Expected hours after sunset from 2 to 15 h, got 16',
  );
});

test('a colder threshold is never likelier, and a probability is one', () => {
  const t = fc.double({ min: -20, max: 20, noNaN: true });
  fc.assert(
    fc.property(t, fc.double({ min: 0, max: 5, noNaN: true }), t, t, (mean, sd, a, b) => {
      const p = (threshold: number) => probabilityBelow({ mean, sd, df: 8 }, threshold);
      const [cold, warm] = [p(Math.min(a, b)), p(Math.max(a, b))];
      return cold >= 0 && cold <= warm && warm <= 1;
    }),
  );
});

test('a low without any spread is below or not', () => {
  expect(probabilityBelow({ mean: -1, sd: 0, df: 3 }, 0)).toBe(1);
  expect(probabilityBelow({ mean: 0, sd: 0, df: 3 }, 0)).toBe(0);
  expect(() => probabilityBelow({ mean: 0, sd: -1, df: 3 }, 0)).toThrow(
    'Expected spread from 0 to 100 K',
  );
});

test('covering for 15 against a loss of 90, four fifths prevented, pays from 0.2083', () => {
  // 15 / (0.8 x 90), by hand.
  const choice = { cost: 15, loss: 90, effect: 0.8 };
  expect(worthActing({ ...choice, probability: 0.2084 })).toBe(true);
  expect(worthActing({ ...choice, probability: 0.2083 })).toBe(false);
});

test('covering that costs as much as it saves is never worth it', () => {
  expect(worthActing({ probability: 1, cost: 72, loss: 90, effect: 0.8 })).toBe(false);
  expect(worthActing({ probability: 0, cost: 0, loss: 90 })).toBe(false);
  expect(() => worthActing({ probability: 1.2, cost: 1, loss: 2 })).toThrow(
    'Expected probability from 0 to 1',
  );
});

test('what is worth doing stays so when frost grows likelier', () => {
  const p = fc.double({ min: 0, max: 1, noNaN: true });
  const money = fc.double({ min: 0, max: 1000, noNaN: true });
  fc.assert(
    fc.property(p, p, money, money, (a, b, cost, loss) => {
      const worth = (probability: number) => worthActing({ probability, cost, loss });
      return !worth(Math.min(a, b)) || worth(Math.max(a, b));
    }),
  );
});

test('the first frost of the season in the week from day 101: 0.3630; from day 116: 0.7052', () => {
  expect(frostOdds(firstFrosts, { day: 101, days: 7 })).toBeCloseTo(0.363, 4);
  expect(frostOdds(firstFrosts, { day: 116, days: 7 })).toBeCloseTo(0.7052, 4);
});

test('a frost that comes around day 300 ± 12 has not come by 298: 0.4022 in a week', () => {
  // SciPy 1.17 (stats.norm); 0.2790 when one season in five has none.
  const spared = (day: number) => normalCdf((300 - day) / 12);
  const week = { now: spared(298), later: spared(305) };
  expect(conditionalOdds(week)).toBeCloseTo(0.4022, 4);
  expect(conditionalOdds({ ...week, share: 0.8 })).toBeCloseTo(0.279, 4);
});

test('eight to fourteen seasons are counted', () => {
  // Of ten, seven were still to freeze on day 101, four within the week: 4.5 of 8, by hand.
  const ten = [97, 99, 101, 102, 105, 106, 108, 113, 117, 120];
  expect(frostOdds(ten, { day: 101, days: 7 })).toBeCloseTo(4.5 / 8, 12);
  // With frost in four seasons of five: 0.8 x 0.7 x 4.5/8 over 0.2 + 0.8 x 0.7.
  expect(frostOdds(ten, { day: 101, days: 7, share: 0.8 })).toBeCloseTo(
    (0.56 * 4.5) / 8 / 0.76,
    12,
  );
});

test('too few seasons, or none as late as this, can not say', () => {
  expect(frostOdds(firstFrosts.slice(0, 7), { day: 101, days: 7 })).toBeNull();
  expect(frostOdds(firstFrosts.slice(0, 10), { day: 200, days: 7 })).toBeNull();
});

test('a longer look ahead never lowers the odds, and none ahead is none', () => {
  const days = fc.integer({ min: 0, max: 60 });
  const day = fc.integer({ min: 60, max: 121 });
  for (const list of [firstFrosts, firstFrosts.slice(0, 12)]) {
    fc.assert(
      fc.property(day, days, days, (from, a, b) => {
        const odds = (ahead: number) => frostOdds(list, { day: from, days: ahead }) ?? 9;
        const [less, more] = [odds(Math.min(a, b)), odds(Math.max(a, b))];
        return less >= 0 && less <= more && more <= 1 && Math.abs(odds(0)) < 1e-12;
      }),
    );
  }
});

test('eight seasons are enough to count', () => {
  // All eight were still to freeze, one within the week: 1.5 of 9, by hand.
  const eight = [101, 110, 111, 112, 113, 114, 115, 116];
  expect(frostOdds(eight, { day: 100, days: 7 })).toBeCloseTo(1.5 / 9, 12);
});

test('dates all alike keep the spread that rounding to days makes', () => {
  // SciPy 1.17: stats.t, 14 degrees of freedom, sd √(1/12) √(16/15).
  const same = Array<number>(15).fill(100);
  expect(frostOdds(same, { day: 99.8, days: 0.3 })).toBeCloseTo(0.50073, 6);
});

test('seasons frozen all on one day still leave a doubt, and odd dates are refused', () => {
  const same = Array<number>(15).fill(100);
  const odds = frostOdds(same, { day: 99, days: 7 });
  expect(odds).toBeGreaterThan(0.9);
  expect(() => frostOdds([400], { day: 99, days: 7 })).toThrow('Expected season day of frost');
  expect(() => frostOdds(same, { day: 99, days: -1 })).toThrow('Expected days ahead from 0 to 366');
});
