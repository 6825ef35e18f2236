import { expect, test } from 'vitest';
import { calendarOf } from '../../../hub/clock.ts';
import { supplyPlan } from '../../../hub/snapshot/supplyPlan.ts';
import { instant } from '../../../rules/units.ts';

const iso = (t: number) => new Date(t).toISOString().slice(0, 16);

test('a plan in local hours is told as instants, over a change of the clock too', () => {
  // Europe/Dublin puts its clock on at 01:00 UTC on 29 March 2026.
  const now = instant(Date.parse('2026-03-29T12:00:00Z'));
  const spans = supplyPlan(['06:00-10:00', '16:00-22:00'], calendarOf('Europe/Dublin'), now);
  const told = spans.map(({ from, to }) => `${iso(from)} ${iso(to)}`);
  expect(told).toContain('2026-03-28T06:00 2026-03-28T10:00');
  expect(told).toContain('2026-03-29T05:00 2026-03-29T09:00');
  expect(told).toContain('2026-03-29T15:00 2026-03-29T21:00');
});

test('hours over midnight are one stretch, and hours that touch are joined', () => {
  const now = instant(Date.parse('2026-06-10T12:00:00Z'));
  const spans = supplyPlan(['20:00-02:00', '02:00-04:00'], calendarOf('UTC'), now);
  expect(spans.map(({ from, to }) => `${iso(from)} ${iso(to)}`)).toContain(
    '2026-06-10T20:00 2026-06-11T04:00',
  );
  const allDay = supplyPlan(['00:00-24:00'], calendarOf('UTC'), now);
  expect(allDay).toHaveLength(1);
});
