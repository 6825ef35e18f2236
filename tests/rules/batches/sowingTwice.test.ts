import { expect, test } from 'vitest';
import { type PlannedCrop, type PlannedPlace, sowingPlan } from '../../../rules/batches/index.ts';

// By tests/truth/batches/sowingDay.csv: units of 10.0, 9.8, 9.6 … before the delivery day, six
// batches, kept one day: sown 20 days before it is over before its day with a chance of 0.757.
const SIX = [142, 151, 138, 147, 155, 149];
const crop = (wish: Partial<PlannedCrop> = {}): PlannedCrop => ({
  ...{ id: 'basil', pastDegreeDays: SIX, perTray: [0.35], keepDays: 1 },
  ...wish,
});
const units = Array.from({ length: 40 }, (_, day) => 10 - 0.2 * (29 - day)).map((one) =>
  Math.max(0, Math.min(10, one)),
);
const house: PlannedPlace = { id: 'house', free: Array(40).fill(40), unitsOf: () => units };
const want = { delivery: 30, crop: 'basil', kilograms: 7 };

test('where one sowing can not be both ready and fresh, a second day is offered', () => {
  const [one] = sowingPlan([want], [crop()], [house]).sowings;
  expect(one).toMatchObject({ day: 10, late: false });
  expect(one?.tooEarly).toBeCloseTo(0.756747, 5);
  expect(one?.second ?? 0).toBeGreaterThan(10);
  const [kept] = sowingPlan([want], [crop({ keepDays: 3 })], [house]).sowings;
  expect(kept).toMatchObject({ day: 10, second: null });
});

test('once the first half stands, the rest is sown on the second day', () => {
  const [first] = sowingPlan([want], [crop()], [house]).sowings;
  const [rest] = sowingPlan([{ ...want, kilograms: 3.5, begun: true }], [crop()], [house]).sowings;
  expect(rest).toMatchObject({ day: first?.second, trays: 10, second: null });
  expect(rest?.ready ?? 0).toBeLessThan(first?.ready ?? 0);
});

test.for([
  { delivery: 14, day: 4, late: false },
  { delivery: 10, day: 0, late: false },
  { delivery: 9, day: 0, late: true },
  { delivery: 8, day: 0, late: true },
])('told 8 to 10 days, for day $delivery it is sown on day $day', ({ delivery, day, late }) => {
  const told = crop({ pastDegreeDays: [], told: [8, 10] });
  const { sowings } = sowingPlan([{ ...want, delivery }], [told], [house]);
  expect(sowings).toEqual([expect.objectContaining({ day, late, ready: null, tooEarly: null })]);
});

test('told days that no longer fit are too late', () => {
  const told = crop({ pastDegreeDays: [], told: [8, 10] });
  const { sowings, shortfalls } = sowingPlan([{ ...want, delivery: 7 }], [told], [house]);
  expect(sowings).toEqual([]);
  expect(shortfalls[0]?.reason).toBe('too-late');
});
