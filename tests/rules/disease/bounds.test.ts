import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  anthracnoseFruitIncidence,
  anthracnoseModel,
  botrytisFruitIncidence,
  botrytisModel,
  classOfIncidence,
  hoursToIncidence,
  incidenceBounds,
  incidenceOfHours,
  infectionHours,
  infectionParameters,
  infectionProgress,
  progressBounds,
  riskWord,
} from '../../../rules/disease/index.ts';
import { celsius, hours } from '../../../rules/units.ts';
import { spellBounds } from '../../../rules/wetness/index.ts';
import { truth } from '../../truth/index.ts';
import { piece } from './circumstances.ts';

const anyT = fc.double({ min: -10, max: 45, noNaN: true });
const models = { botrytisModel, anthracnoseModel };

test.for(
  truth('disease/incidenceBounds.csv', ['air_c', 'least_h', 'most_h', 'least', 'most'], ['word']),
)('at $air_c °C, wet for $least_h to $most_h h: $least to $most, $word', (row) => {
  const pieces = [
    piece('wet', 0, row.least_h, row.air_c),
    piece('unknown', row.least_h, row.most_h, row.air_c),
  ];
  const [least, most] = incidenceBounds(spellBounds(pieces), botrytisModel);
  expect(Math.abs(least - row.least)).toBeLessThan(6e-6);
  expect(Math.abs(most - row.most)).toBeLessThan(6e-6);
  expect(riskWord({ least: classOfIncidence(least), most: classOfIncidence(most) })).toBe(row.word);
});

test.for(
  truth('disease/hoursToIncidence.csv', [
    'air_c',
    'mould_watch',
    'mould_event',
    'anthracnose_watch',
    'anthracnose_event',
  ]),
)('wet hours until 0.15 and 0.50 at $air_c °C', (row) => {
  for (const [model, level, wanted] of [
    [botrytisModel, 0.15, row.mould_watch],
    [botrytisModel, 0.5, row.mould_event],
    [anthracnoseModel, 0.15, row.anthracnose_watch],
    [anthracnoseModel, 0.5, row.anthracnose_event],
  ] as const) {
    if (wanted < 0) continue;
    const needed = hoursToIncidence(celsius(row.air_c), level, model);
    expect(Math.abs((needed ?? 0) - wanted)).toBeLessThan(6e-5);
  }
});

test('5 h at 8 °C and 5 h at 22 °C differ from 10 h at their mean', () => {
  // 0.112017 and 0.174780, computed apart from this code from the coefficients of Bulger et al. 1987.
  const wet = (length: number, temperature: number) => ({
    hours: length,
    temperature: celsius(temperature),
  });
  expect(incidenceOfHours([wet(5, 8), wet(5, 22)], botrytisModel)).toBeCloseTo(0.112017, 6);
  expect(incidenceOfHours([wet(10, 15)], botrytisModel)).toBeCloseTo(0.17478, 6);
  // Hours too cold or too hot add nothing and end nothing.
  const broken = [wet(5, 8), wet(20, 4.9), wet(20, 30.1), wet(5, 22)];
  expect(incidenceOfHours(broken, botrytisModel)).toBeCloseTo(0.112017, 6);
  expect(incidenceOfHours([wet(20, 4.9)], botrytisModel)).toBe(0);
  expect(incidenceOfHours([], botrytisModel)).toBe(0);
  expect(() => incidenceOfHours([wet(-1, 15)], botrytisModel)).toThrow(RangeError);
});

test('at a steady temperature the hourly form is the published one', () => {
  const anyW = fc.double({ min: 0.001, max: 300, noNaN: true });
  fc.assert(
    fc.property(anyT, anyW, (t, w) => {
      const one = [{ hours: w, temperature: celsius(t) }];
      const same = (a: number, b: number) => Math.abs(a - b) < 1e-12;
      return (
        same(incidenceOfHours(one, botrytisModel), botrytisFruitIncidence(celsius(t), hours(w))) &&
        same(
          incidenceOfHours(one, anthracnoseModel),
          anthracnoseFruitIncidence(celsius(t), hours(w)),
        )
      );
    }),
  );
});

test.for(Object.entries(models))('%s: no temperature is worse than its peak', ([, model]) => {
  fc.assert(
    fc.property(anyT, (t) => {
      return (
        t < model.coldest || t > model.hottest || model.rate(t) <= model.rate(model.peak) + 1e-12
      );
    }),
  );
});

test('the peaks lie at 20.42 °C and 26.515 °C', () => {
  // Found by trying every thousandth of a degree, apart from this code.
  expect(botrytisModel.peak).toBeCloseTo(20.421, 3);
  expect(anthracnoseModel.peak).toBeCloseTo(26.515, 3);
  expect(botrytisModel.testedHours).toBe(32); // abstract of Bulger, Ellis & Madden 1987
});

test.for(Object.entries(models))(
  '%s: a temperature that is only known to lie in a range gives bounds that hold it',
  ([, model]) => {
    fc.assert(
      fc.property(anyT, anyT, fc.double({ min: 0, max: 1, noNaN: true }), (a, b, share) => {
        const [low, high] = [Math.min(a, b), Math.max(a, b)];
        const inside = Math.min(high, low + share * (high - low));
        const [least, most] = incidenceBounds(spellBounds([piece('wet', 0, 9, low, high)]), model);
        const [exact] = incidenceBounds(spellBounds([piece('wet', 0, 9, inside)]), model);
        return least <= exact + 1e-12 && exact <= most + 1e-12;
      }),
    );
  },
);

test('never is null: no wet hours are enough in the cold', () => {
  expect(hoursToIncidence(celsius(4.9), 0.5, botrytisModel)).toBeNull();
  expect(hoursToIncidence(celsius(30.1), 0.5, botrytisModel)).toBeNull();
  // The level the model starts from, 0.0138, is no level to wait for.
  expect(() => hoursToIncidence(celsius(20), 0.01, botrytisModel)).toThrow(
    'Expected incidence from',
  );
  expect(() => hoursToIncidence(celsius(20), 1, botrytisModel)).toThrow('Expected incidence from');
});

test('the most wetness ever needed caps the hours, and never turns never into a number', () => {
  const lettuce = { min: 1, optimum: 15, max: 25, wetHours: 4 };
  const capped = { ...lettuce, mostWetHours: 10 };
  // 11.55 h at 5 °C, 4.95 h at 10 °C: computed apart from this code.
  expect(infectionHours(celsius(5), lettuce)).toBeCloseTo(11.554, 3);
  expect(infectionHours(celsius(5), capped)).toBe(10);
  expect(infectionHours(celsius(10), capped)).toBeCloseTo(4.95, 2);
  expect(infectionHours(celsius(25), capped)).toBeNull();
  expect(() => infectionHours(celsius(5), { ...lettuce, mostWetHours: 3 })).toThrow(
    'Expected most hours of wetness from 4 to 1000 h, got 3',
  );
  expect(() => infectionHours(celsius(5), { ...lettuce, mostWetHours: 1001 })).toThrow(RangeError);
  expect(infectionHours(celsius(5), { ...lettuce, mostWetHours: 1000 })).toBeCloseTo(11.554, 3);
});

test('limits of what infectionHours accepts', () => {
  const good = { min: 1, optimum: 15, max: 25, wetHours: 4 };
  for (const t of [-60, 80]) expect(infectionHours(celsius(t), good)).toBeNull();
  for (const t of [-60.1, 80.1]) expect(() => infectionHours(celsius(t), good)).toThrow(RangeError);
  for (const wetHours of [0.1, 1000])
    expect(infectionHours(celsius(15), { ...good, wetHours })).toBeCloseTo(wetHours, 9);
  for (const wetHours of [0.09, 1001])
    expect(() => infectionHours(celsius(15), { ...good, wetHours })).toThrow(RangeError);
  for (const min of [-60.1, 80.1])
    expect(() => infectionHours(celsius(15), { min, optimum: 85, max: 90, wetHours: 4 })).toThrow(
      'Expected lowest temperature of infection',
    );
  for (const min of [-60, 80])
    expect(() =>
      infectionHours(celsius(15), { min, optimum: 85, max: 90, wetHours: 4 }),
    ).not.toThrow();
});

test('progress at both bounds: lettuce, 3 h at 10 °C and 3 h at 15 °C is 1.3561', () => {
  // Computed apart from this code from Magarey, Sutton & Thayer 2005; 2 h and 2 h is 0.9040.
  const lettuce = infectionParameters['lettuce-downy-mildew'];
  const wet = (length: number) =>
    progressBounds(
      spellBounds([piece('wet', 0, length, 10), piece('wet', length, 2 * length, 15)]),
      lettuce,
    );
  expect(wet(3)[0]).toBeCloseTo(1.3561, 4);
  expect(wet(2)[1]).toBeCloseTo(0.904, 4);
  const half = [piece('wet', 0, 3, 10), piece('unknown', 3, 6, 15)];
  const [least, most] = progressBounds(spellBounds(half), lettuce);
  expect(least).toBeCloseTo((3 * 0.8080747) / 4, 6);
  expect(most).toBeCloseTo(1.3561, 4);
  // A dry break of 4 h starts it afresh.
  const parted = [piece('wet', 0, 3, 10), piece('dry', 3, 7, 10), piece('wet', 7, 10, 15)];
  expect(progressBounds(spellBounds(parted), lettuce)[1]).toBeCloseTo(0.75, 9);
  expect(progressBounds(spellBounds([piece('wet', 0, 9, 30)]), lettuce)).toEqual([0, 0]);
});

test('unknown in, unknown out', () => {
  expect(botrytisFruitIncidence(null, hours(5))).toBeNull();
  expect(anthracnoseFruitIncidence(celsius(5), null)).toBeNull();
  expect(infectionHours(null, infectionParameters['late-blight'])).toBeNull();
});

test('limits of a spell', () => {
  for (const t of [-40, 60]) expect(botrytisFruitIncidence(celsius(t), hours(1))).toBe(0);
  for (const t of [-40.1, 60.1])
    expect(() => botrytisFruitIncidence(celsius(t), hours(1))).toThrow(RangeError);
  expect(botrytisFruitIncidence(celsius(20), hours(8784))).toBe(1);
  expect(() => botrytisFruitIncidence(celsius(20), hours(8785))).toThrow(RangeError);
  // Each disease at the ends of its range, and just beyond.
  for (const t of [5, 30]) expect(botrytisFruitIncidence(celsius(t), hours(9))).toBeGreaterThan(0);
  for (const t of [4.99, 30.01]) expect(botrytisFruitIncidence(celsius(t), hours(9))).toBe(0);
  for (const t of [9.33, 35])
    expect(anthracnoseFruitIncidence(celsius(t), hours(9))).toBeGreaterThan(0);
  for (const t of [9.32, 35.01]) expect(anthracnoseFruitIncidence(celsius(t), hours(9))).toBe(0);
});

test('wet hours of a stretch are from 0 to 8784', () => {
  const blight = infectionParameters['late-blight'];
  const asked = (length: number) =>
    infectionProgress([{ hours: length, temperature: celsius(15) }], blight);
  expect(asked(8784)).toBeCloseTo(1464, 6);
  for (const length of [-0.1, 8784.1])
    expect(() => asked(length)).toThrow('Expected wet hours from 0 to 8784 h');
});
