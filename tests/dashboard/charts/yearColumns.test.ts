import { expect, test } from 'vitest';
import { yearColumns, yearFacts } from '../../../dashboard/charts/yearColumns.ts';
import type { Day } from '../../../hub/contract/index.ts';

const day = (
  name: string,
  min: number | null,
  max: number | null,
  wetHours: number | null,
): Day => ({
  day: name,
  min,
  max,
  mean: min === null || max === null ? null : (min + max) / 2,
  wetHours,
  unknownHours: 0,
  longestSpellHours: null,
  degreeDays: null,
  botrytisIndex: null,
});

test('a day the hub did not give is a hole in every column', () => {
  const columns = yearColumns([day('2025-02-27', 1, 5, 3), day('2025-03-01', -2, 4, null)]);
  expect(columns.days).toEqual(['2025-02-27', '2025-02-28', '2025-03-01']);
  expect(columns.low).toEqual([1, null, -2]);
  expect(columns.mean).toEqual([3, null, 1]);
  expect(columns.t[1]).toBe(Date.parse('2025-02-28T00:00:00Z') / 1000);
});

test('the words about a year count the holes and take no zero for them', () => {
  const facts = yearFacts(
    yearColumns([day('2025-02-27', 1, 5, 3), day('2025-03-01', -2, 4, null)]),
  );
  expect(facts).toEqual({
    known: 2,
    missing: 1,
    coldest: { value: -2, day: '2025-03-01' },
    warmest: { value: 5, day: '2025-02-27' },
    wetHours: 3,
  });
});

test('a year without a day says so in every fact', () => {
  expect(yearFacts(yearColumns([]))).toEqual({
    known: 0,
    missing: 0,
    coldest: null,
    warmest: null,
    wetHours: null,
  });
});
