import fc from 'fast-check';
import { expect, test } from 'vitest';
import { harvestWindow } from '../../../rules/batches/index.ts';
import { truth } from '../../truth/index.ts';

const six = { pastDegreeDays: [142, 151, 138, 147, 155, 149], soFar: 96, perDay: 9.5 };

test.for(truth('batches/harvestWindow.csv', ['confidence', 'early', 'expected', 'late']))(
  'with confidence $confidence the batch is ready in $early to $late days',
  ({ confidence, early, expected, late }) => {
    const window = harvestWindow({ ...six, confidence });
    expect(window.early).toBeCloseTo(early, 4);
    expect(window.expected).toBeCloseTo(expected, 4);
    expect(window.late).toBeCloseTo(late, 4);
  },
);

test('one or two past batches give a wide window', () => {
  // 0.12 of the mean, twice, for one new batch: 2 x 0.12 x 100 x sqrt(2) = 33.94 units, by hand.
  const window = harvestWindow({ pastDegreeDays: [100], soFar: 0, perDay: 10, confidence: 0.8 });
  expect(window.expected).toBeCloseTo(10, 12);
  expect(window.late).toBeCloseTo(13.394, 3);
});

test('batches all alike still leave 3 % of doubt', () => {
  const window = harvestWindow({ ...six, pastDegreeDays: [147, 147, 147, 147], confidence: 0.8 });
  expect(window.late).toBeGreaterThan(window.expected ?? Number.NaN);
});

test('a batch past its units is ready now; without warmth it never will be', () => {
  expect(harvestWindow({ ...six, soFar: 300, perDay: 0, confidence: 0.8 })).toEqual({
    early: 0,
    expected: 0,
    late: 0,
  });
  expect(harvestWindow({ ...six, perDay: 0, confidence: 0.8 })).toEqual({
    early: null,
    expected: null,
    late: null,
  });
});

test('early, expected and late stand in order, and more confidence never narrows them', () => {
  const past = fc.array(fc.double({ min: 50, max: 900, noNaN: true }), {
    minLength: 1,
    maxLength: 12,
  });
  const confidence = fc.double({ min: 0.5, max: 0.99, noNaN: true });
  fc.assert(
    fc.property(
      past,
      fc.double({ min: 0, max: 900, noNaN: true }),
      confidence,
      confidence,
      (list, soFar, a, b) => {
        const window = (level: number) =>
          harvestWindow({ pastDegreeDays: list, soFar, perDay: 8, confidence: level });
        const narrow = window(Math.min(a, b));
        const wide = window(Math.max(a, b));
        const { early, expected, late } = narrow;
        return (
          early !== null &&
          expected !== null &&
          late !== null &&
          wide.early !== null &&
          wide.late !== null &&
          early <= expected &&
          expected <= late &&
          wide.early <= early + 1e-9 &&
          wide.late >= late - 1e-9
        );
      },
    ),
  );
});

test('no past batch gives no window', () => {
  expect(() => harvestWindow({ ...six, pastDegreeDays: [], confidence: 0.8 })).toThrow(
    'Expected number of past batches from 1',
  );
  expect(() => harvestWindow({ ...six, confidence: 80 })).toThrow(
    'Expected confidence from 0.5 to 0.99',
  );
});
