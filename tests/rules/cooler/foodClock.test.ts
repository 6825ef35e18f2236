import fc from 'fast-check';
import { expect, test } from 'vitest';
import { exposureClock, foodLimits } from '../../../rules/cooler/index.ts';
import { instant, MINUTE } from '../../../rules/units.ts';
import { anySeries, series } from './minutes.ts';

const gapCase = series([
  [0, 4],
  [10, 6],
  [20, 6],
  [80, 6],
  [90, 4],
]);
const clock = {
  cutAt: instant(0),
  now: instant(90 * MINUTE),
  limit: 5,
  clockMinutes: 240,
  of: 'air',
  gapMaxMinutes: 30,
} as const;

test('the food clock says 20 min above, 60 unknown, worst 80, and asks the officer last', () => {
  const facts = exposureClock(gapCase, clock);
  expect([facts.above, facts.unknown, facts.worst, facts.below].map(Math.round)).toEqual([
    20, 60, 80, 10,
  ]);
  expect(facts.leftAtWorst).toBeCloseTo(160, 9);
  expect(facts.leftAtBest).toBeCloseTo(220, 9);
  expect(facts.say).toEqual(['take-core-reading', 'not-a-recorder', 'ask-officer']);
  expect(exposureClock(gapCase, { ...clock, of: 'product' }).say).not.toContain(
    'take-core-reading',
  );
});

test('time before the first reading and after the last is possibly above', () => {
  const facts = exposureClock(gapCase.slice(1, 3), { ...clock, now: instant(50 * MINUTE) });
  expect([facts.above, facts.unknown].map(Math.round)).toEqual([10, 40]);
  expect(exposureClock([], clock)).toMatchObject({ above: 0, unknown: 90, worst: 90 });
});

test('cooling again does not turn the clock back, and it never runs below 0', () => {
  fc.assert(
    fc.property(anySeries, fc.integer({ min: 1, max: 600 }), (readings, more) => {
      const end = readings.at(-1)?.t ?? instant(0);
      const now = instant(end + 90 * MINUTE);
      const later = instant(end + more * MINUTE);
      const cold = { t: later, value: 2 };
      const before = exposureClock(readings, { ...clock, now: end });
      const after = exposureClock([...readings, cold], {
        ...clock,
        now: instant(Math.max(now, later)),
      });
      return (
        after.above >= before.above - 1e-9 && after.leftAtWorst >= 0 && after.worst >= after.above
      );
    }),
  );
  expect(() => exposureClock([], { ...clock, now: instant(-1) })).toThrow(
    'Expected time since cutting',
  );
});

test.for([
  // FDA, Food Standards Agency, FSANZ, WHO, as the table names them.
  ['united-states', 5, null, null],
  ['england-wales-northern-ireland', 8, 4, 'discard'],
  ['australia', 5, 2, 'use-or-chill'],
  ['australia', 5, 4, 'discard'],
  ['world-health-organization', 5, 2, null],
] as const)('%s prints %s °C and %s h', ([where, limit, hours, then]) => {
  const rows = foodLimits.filter((row) => row.where === where);
  expect(rows.map((row) => [row.limit, row.clock, row.then])).toContainEqual([limit, hours, then]);
  expect(rows.every(({ source }) => source.length > 5)).toBe(true);
});
