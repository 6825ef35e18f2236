import fc from 'fast-check';
import { expect, test } from 'vitest';
import { anthracnoseFruitIncidence, botrytisFruitIncidence } from '../../../rules/disease/index.ts';
import { celsius, hours } from '../../../rules/units.ts';
import { truth } from '../../truth/index.ts';

const models = { botrytisFruitIncidence, anthracnoseFruitIncidence };
const anyT = fc.double({ min: -10, max: 45, noNaN: true }).map(celsius);
const anyW = fc.double({ min: 0, max: 300, noNaN: true }).map(hours);

test.for(truth('disease/botrytis.csv', ['air_c', 'h6', 'h9', 'h12', 'h24', 'h36']))(
  'grey mould at $air_c °C: 6, 9, 12, 24 and 36 wet hours',
  ({ air_c, h6, h9, h12, h24, h36 }) => {
    for (const [wet, share] of [
      [6, h6],
      [9, h9],
      [12, h12],
      [24, h24],
      [36, h36],
    ] as const) {
      expect(Math.abs(botrytisFruitIncidence(celsius(air_c), hours(wet)) - share)).toBeLessThan(
        6e-5,
      );
    }
  },
);

test.for(truth('disease/anthracnose.csv', ['air_c', 'h6', 'h12', 'h24', 'h36']))(
  'anthracnose at $air_c °C: 6, 12, 24 and 36 wet hours',
  ({ air_c, h6, h12, h24, h36 }) => {
    for (const [wet, share] of [
      [6, h6],
      [12, h12],
      [24, h24],
      [36, h36],
    ] as const) {
      const index = anthracnoseFruitIncidence(celsius(air_c), hours(wet));
      expect(Math.abs(index - share)).toBeLessThan(6e-5);
    }
  },
);

test('grey mould likes about 20 °C best, as its source says', () => {
  const at = (t: number) => botrytisFruitIncidence(celsius(t), hours(12));
  for (const t of [5, 10, 15, 18, 23, 26, 30]) expect(at(t)).toBeLessThan(at(20.4));
});

test('outside its temperatures a disease does not infect', () => {
  expect(botrytisFruitIncidence(celsius(4.9), hours(20))).toBe(0);
  expect(botrytisFruitIncidence(celsius(30.1), hours(20))).toBe(0);
  expect(anthracnoseFruitIncidence(celsius(8), hours(24))).toBe(0);
  expect(anthracnoseFruitIncidence(celsius(35.1), hours(24))).toBe(0);
});

test.for(Object.entries(models))('%s: no wetness, no infection', ([, model]) => {
  fc.assert(fc.property(anyT, (t) => model(t, hours(0)) === 0));
});

test.for(Object.entries(models))(
  '%s: a longer wet spell never lowers it, and it is a share',
  ([, model]) => {
    fc.assert(
      fc.property(anyT, anyW, anyW, (t, a, b) => {
        const short = model(t, hours(Math.min(a, b)));
        const long = model(t, hours(Math.max(a, b)));
        return short >= 0 && short <= long && long <= 1;
      }),
    );
  },
);

test.for(Object.entries(models))(
  '%s: impossible spells are refused in one sentence',
  ([, model]) => {
    expect(() => model(celsius(20), hours(-1))).toThrow(
      'Expected wet hours from 0 to 8784 h, got -1',
    );
    expect(() => model(celsius(20), hours(Number.NaN))).toThrow(RangeError);
    expect(() => model(celsius(85), hours(5))).toThrow(
      'Expected mean temperature of the wet spell from -40 to 60 °C, got 85',
    );
  },
);
