import fc from 'fast-check';
import { expect, test } from 'vitest';
import { laterTimes } from '../../dashboard/laterTimes.ts';
import { timeOfDay } from '../../dashboard/times.ts';

const at = (iso: string) =>
  laterTimes(Date.parse(iso), 'Europe/Dublin').map(
    ({ when, until }) => `${when} ${new Date(until).toISOString().slice(0, 16)}`,
  );

test.for([
  {
    hour: 'the morning',
    now: '2025-11-03T06:31:00Z',
    offers: ['hour 2025-11-03T07:31', 'evening 2025-11-03T18:00', 'tomorrow 2025-11-04T06:30'],
  },
  {
    hour: 'late evening, with no evening left',
    now: '2025-11-03T21:00:00Z',
    offers: ['hour 2025-11-03T22:00', 'tomorrow 2025-11-04T06:30'],
  },
  {
    hour: 'the night, when morning is today',
    now: '2025-11-03T02:00:00Z',
    offers: ['hour 2025-11-03T03:00', 'morning 2025-11-03T06:30', 'evening 2025-11-03T18:00'],
  },
  {
    hour: 'the evening before clocks go back',
    now: '2025-10-25T20:00:00Z',
    offers: ['hour 2025-10-25T21:00', 'tomorrow 2025-10-26T06:30'],
  },
])('in $hour a task can be put off to sensible times', ({ now, offers }) => {
  expect(at(now)).toEqual(offers);
});

test('every offer lies ahead, soonest first, and mornings are at half past six on the wall', () => {
  const instants = fc.integer({ min: Date.UTC(2020, 0), max: Date.UTC(2035, 0) });
  const zones = fc.constantFrom('Europe/Dublin', 'Australia/Lord_Howe', 'America/New_York');
  fc.assert(
    fc.property(instants, zones, (now, zone) => {
      const offers = laterTimes(now, zone);
      const ordered = offers.every(({ until }, i) => until > (offers[i - 1]?.until ?? now));
      const mornings = offers.filter(({ when }) => when === 'tomorrow' || when === 'morning');
      return (
        ordered &&
        mornings.length === 1 &&
        mornings.every(({ until }) => timeOfDay(until, zone) === '06:30')
      );
    }),
  );
});
