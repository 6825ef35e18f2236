import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  handbookRate,
  keepingLife,
  lifeUsed,
  lifeUsedCooling,
  q10From,
  q10Rate,
  remainingLife,
  remainingLifePiecewise,
  remainingLifeSpread,
  TYPICAL_Q10,
} from '../../../rules/cooler/index.ts';
import { truth } from '../../truth/index.ts';

const lot = { reference: 0, life: 10 };
const history = [
  { hours: 6, temperature: 20 },
  { hours: 48, temperature: 3 },
];
const warmth = fc.double({ min: 0, max: 35, noNaN: true });

test.for(truth('cooler/q10.csv', ['rate1', 't1', 'rate2', 't2', 'q10']))(
  '$rate1 at $t1 °C and $rate2 at $t2 °C: Q10 $q10',
  ({ rate1, t1, rate2, t2, q10 }) => {
    expect(q10From(rate1, t1, rate2, t2)).toBeCloseTo(q10, 8);
  },
);

test('a Q10 put in comes out again, whichever way the rates are given', () => {
  fc.assert(
    fc.property(fc.double({ min: 1, max: 10, noNaN: true }), warmth, warmth, (q10, a, b) => {
      if (Math.abs(a - b) < 0.1) return true;
      const found = q10From(q10Rate(a, q10), a, q10Rate(b, q10), b);
      return Math.abs(found / q10 - 1) < 1e-9;
    }),
  );
  expect(() => q10From(1, 5, 2, 5)).toThrow('Expected temperatures that differ, got 5 twice');
  expect(q10From(1, null, 2, 5)).toBeNull();
});

test('with Q10 3 produce ages 1.3904, 1.7321 and 9 times as fast at 3, 5 and 20 °C', () => {
  // By hand: 3^0.3, 3^0.5, 3^2.
  expect(q10Rate(3, 3)).toBeCloseTo(1.390389, 6);
  expect(q10Rate(5, 3)).toBeCloseTo(1.7320508, 7);
  expect(q10Rate(20, 3)).toBeCloseTo(9, 12);
  expect(q10Rate(20, 3, 20)).toBe(1);
});

test.for(truth('cooler/handbookRate.csv', ['temperature', 'rate']))(
  'at $temperature °C the handbook has $rate times the respiration of 0 °C',
  ({ temperature, rate }) => {
    expect(handbookRate(temperature)).toBeCloseTo(rate, 6);
  },
);

test('the handbook prints relative life of 100, 33, 13, 7 and 4', () => {
  const life = [0, 10, 20, 30, 40].map((t) => Math.round(100 / handbookRate(t)));
  expect(life).toEqual([100, 33, 13, 7, 4]);
  expect(() => handbookRate(41)).toThrow('Expected temperature from 0 to 40 °C, got 41');
});

test('typical Q10 by decade is what the handbook prints', () => {
  // USDA Handbook 66, Saltveit: 2.5-4.0, 2.0-2.5, 1.5-2.0, 1.0-1.5.
  expect(TYPICAL_Q10.map(({ from, to }) => [from, to])).toEqual([
    [0, 10],
    [10, 20],
    [20, 30],
    [30, 40],
  ]);
  expect(TYPICAL_Q10.map(({ least, most }) => [least, most])).toEqual([
    [2.5, 4],
    [2, 2.5],
    [1.5, 2],
    [1, 1.5],
  ]);
});

test.for(truth('cooler/lifeLeft.csv', ['q10', 'used_h', 'left_d']))(
  'Q10 $q10 (0: piecewise): $used_h h used, $left_d d left',
  ({ q10, used_h, left_d }) => {
    const rate = q10 === 0 ? handbookRate : (t: number) => q10Rate(t, q10);
    expect(lifeUsed(history, rate)).toBeCloseTo(used_h, 5);
    const left =
      q10 === 0 ? remainingLifePiecewise(lot, history) : remainingLife({ ...lot, q10 }, history);
    expect(left).toBeCloseTo(left_d, 5);
  },
);

test('the spread of that lot is 3.6 to 4.4 days', () => {
  const { least, most } = remainingLifeSpread(lot, history);
  expect(least).toBeCloseTo(3.573979, 5); // cooler/lifeLeft.csv
  expect(most).toBeCloseTo(4.409611, 5);
});

test('the spread holds each of its parts, also for another reference', () => {
  fc.assert(
    fc.property(warmth, warmth, (t, reference) => {
      const crop = { reference, life: 10 };
      const past = [{ hours: 20, temperature: t }];
      const { least, most } = remainingLifeSpread(crop, past, reference);
      const piecewise = remainingLifePiecewise(crop, past, reference);
      return least <= piecewise && piecewise <= most && least >= 0;
    }),
  );
});

test('splitting the hours of a history changes no life', () => {
  fc.assert(
    fc.property(warmth, fc.double({ min: 0, max: 1, noNaN: true }), (temperature, share) => {
      const whole = remainingLifePiecewise(lot, [{ hours: 30, temperature }], 3);
      const parts = [
        { hours: 30 * share, temperature },
        { hours: 30 * (1 - share), temperature },
      ];
      return Math.abs(remainingLifePiecewise(lot, parts, 3) - whole) < 1e-9;
    }),
  );
});

test.for(truth('cooler/lifeUsedCooling.csv', ['tau_h', 'used_h']))(
  'cooling with a constant of $tau_h h uses $used_h reference hours',
  ({ tau_h, used_h }) => {
    const cooling = { from: 20, room: 3, produceTauHours: tau_h, hours: 24, q10: 3, reference: 0 };
    expect(lifeUsedCooling(cooling)).toBeCloseTo(used_h, 4);
    expect(lifeUsedCooling({ ...cooling, from: null })).toBeNull();
  },
);

const lettuce = { ...lot, q10: 3, freezesAt: -0.2, chillMin: null };
const basil = { reference: 15, life: 12, q10: 3, freezesAt: null, chillMin: 12 };

test('unknown hours are reckoned as last known and as outdoors, and both are said', () => {
  const gap = [history[0], { hours: 48, temperature: null }].filter((part) => part !== undefined);
  const life = keepingLife(lettuce, gap, { at: 3, outdoors: 3 });
  expect(life.unknownHours).toBe(48);
  expect(life.asOutdoors).toBeCloseTo(3.573979, 5); // cooler/lifeLeft.csv: as if the 48 h were at 3 °C
  expect(life.asLastKnown).toBe(0); // 54 h at 20 °C are 486 of 240
  expect(keepingLife(lettuce, gap, { at: 3 }).asOutdoors).toBeNull();
});

test('with nothing known first, only outdoors can be said; with all known both are the same', () => {
  const first = [{ hours: 5, temperature: null }];
  const life = keepingLife(lettuce, first, { at: 0, outdoors: 10 });
  expect(life.asLastKnown).toBeNull();
  expect(life.asOutdoors).toBeCloseTo((240 - 15) / 24, 9);
  const known = keepingLife(lettuce, history, { at: 3 });
  expect(known.asLastKnown).toBeCloseTo(3.573979, 5);
  expect(known.asOutdoors).toBe(known.asLastKnown);
});

test('frozen or chilled produce has no life to give', () => {
  const cold = [{ hours: 1, temperature: -0.21 }];
  expect(keepingLife(lettuce, cold, { at: 3 })).toMatchObject({
    risk: 'freezing',
    asLastKnown: null,
  });
  const cool = [{ hours: 1, temperature: -0.19 }];
  expect(keepingLife(lettuce, cool, { at: 3 }).asLastKnown).toBeCloseTo(
    (240 - 1) / 1.390389 / 24,
    5,
  );
  expect(keepingLife(basil, [], { at: 11.9 })).toMatchObject({
    risk: 'chilling',
    asOutdoors: null,
  });
  expect(keepingLife(basil, [], { at: 12 }).risk).toBeNull();
  expect(keepingLife({ ...lettuce, freezesAt: null }, cold, { at: 3 }).risk).toBe('freezing');
});
