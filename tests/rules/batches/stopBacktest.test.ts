import { expect, test } from 'vitest';
import { type PastAutumn, stopBacktest, type TriedPatch } from '../../../rules/batches/index.ts';
import { frostDateQuantile, frostHistory, frostWithin } from '../../../rules/frost/index.ts';
import { createChance } from '../../../simulators/seed.ts';

// Autumns made up from a distribution that is known: N(130, 9) season days. Invented.
const MEAN = 130;
const SD = 9;
const draw = (name: string, n: number) => {
  const chance = createChance(11, name);
  return Array.from({ length: n }, (_, index) => Math.round(MEAN + SD * chance.normal(index)));
};
const autumns = (frosts: readonly (number | null)[], warmth = 12): PastAutumn[] =>
  frosts.map((frost, index) => ({
    season: 1990 + index,
    frost,
    units: Array.from({ length: 366 }, () => warmth),
  }));
const patch: TriedPatch = {
  ...{ mass: 5, flowerUnits: 120, from: 62, to: 183 },
  ...{ rotWet: 0.05, rotDry: 0.01, wetChance: 0.4, margin: 6, perPicking: 4, perDay: 1 },
};
const tally = (rows: readonly { outcome: string }[], outcome: string) =>
  rows.filter((each) => each.outcome === outcome).length;

test('one date in ten falls before the date that is said to have a chance of one in ten', () => {
  // By definition of a quantile; 1500 histories of thirty seasons, standard error 0.008.
  let before = 0;
  const trials = 1500;
  for (let trial = 0; trial < trials; trial += 1) {
    const dates = draw(`trial ${trial}`, 31);
    const early = frostDateQuantile(dates.slice(0, 30), 0.1) ?? 0;
    if ((dates[30] ?? 0) < early) before += 1;
  }
  expect(before / trials).toBeGreaterThan(0.07);
  expect(before / trials).toBeLessThan(0.13);
});

test('thirty made-up autumns give back the odds they were drawn from', () => {
  // P(frost within 14 days of day 123 | none yet) under N(130, 9): [F(137) - F(123)]/[1 - F(123)]
  // = (0.78166 - 0.21834)/0.78166 = 0.7207, from a table of the normal curve.
  const history = frostHistory(
    autumns(draw('thirty', 30)).map(({ season, frost }) => ({
      ...{ season, day: frost, frost: true, missing: 0 },
    })),
  );
  expect(Math.abs((frostWithin(history, 123, 14) ?? 0) - 0.7207)).toBeLessThan(0.12);
});

test('an autumn is judged by the others alone: its own frost changes nothing of its stop', () => {
  const dates = draw('alone', 20);
  const one = [...stopBacktest(autumns(dates), patch)];
  const later = [...stopBacktest(autumns([183, ...dates.slice(1)]), patch)];
  if (one[0]?.outcome !== 'late') expect(later[0]?.stop).toBe(one[0]?.stop);
  expect(later[0]?.averageDay).toBe(one[0]?.averageDay);
  expect(one).toHaveLength(20);
});

test('holding that costs nothing is held until the frost; holding dearer than fruit stops at once', () => {
  const dates = draw('holding', 12);
  const free = [...stopBacktest(autumns(dates), { ...patch, perDay: 0, perPicking: 0 })];
  expect(tally(free, 'late')).toBe(12);
  const dear = [...stopBacktest(autumns(dates), { ...patch, perDay: 60 })];
  expect(tally(dear, 'early')).toBe(12);
  expect(dear.every(({ stop }) => stop === 62)).toBe(true);
});

test('where the frost comes on the same day each year the rule stops just before it', () => {
  // Tender fruit ripens weekly, holding costs something: the last picking before day 130 is the end.
  const same = autumns(Array(12).fill(130));
  const rows = [...stopBacktest(same, patch)];
  expect(tally(rows, 'near')).toBe(12);
  // The plain rule waits for the mean date, which is the frost itself.
  expect(
    tally(
      rows.map(({ average }) => average),
      'late',
    ),
  ).toBe(12);
  for (const { money, average, foresight } of rows) {
    expect(money).toBeGreaterThan(average.money);
    expect(money).toBeLessThanOrEqual(foresight + 1e-9);
  }
});

test('nobody does better than who knew the date', () => {
  for (const { money, average, foresight } of stopBacktest(autumns(draw('best', 25)), patch)) {
    expect(money).toBeLessThanOrEqual(foresight + 1e-9);
    expect(average.money).toBeLessThanOrEqual(foresight + 1e-9);
  }
});

test('autumns without a frost are told apart, and fewer than nine are refused', () => {
  const rows = [
    ...stopBacktest(autumns([...draw('some', 9), null, null]), { ...patch, perDay: 0 }),
  ];
  expect(tally(rows, 'no-frost')).toBe(2);
  expect(() => [...stopBacktest(autumns(draw('few', 8)), patch)]).toThrow(RangeError);
});
