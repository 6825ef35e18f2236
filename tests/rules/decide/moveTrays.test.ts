import { expect, test } from 'vitest';
import { title, why } from '../../../hub/words/en.ts';
import { type Decision, taskKey } from '../../../rules/decide/index.ts';
import { HOUR, instant } from '../../../rules/units.ts';
import { at } from './makeSnapshot.ts';
import {
  daysOf,
  type HourCurve,
  moves,
  stand,
  swing,
  type TrayWish,
  trayFarm,
} from './trayFarm.ts';

const DAY = 24 * HOUR;
const FIRST = '2025-06-11'; // ten days up to the day before 21 June
/** Within the band all day, but for what a day of its own adds. */
const mild = swing(23, 4);
/** Over 32 °C from ten to eight: a closed house in the sun. */
const hot: HourCurve = (day, hour) => {
  const [t, rh] = swing(27, 9)(day, hour) ?? [0, 0];
  return [t + 0.6 * Math.sin(2.1 * day), rh];
};
const days = (curve: HourCurve, open: boolean | null = null) => daysOf(curve, FIRST, 10, { open });
const better: TrayWish = { here: days(hot), there: days(mild) };
const only = (wish: Partial<TrayWish> = {}): Decision => {
  const [decision] = moves(trayFarm({ ...better, ...wish }));
  if (decision === undefined) throw new Error('Expected a decision, got none');
  return decision;
};
const value = (decision: Decision, what: string) =>
  decision.because.find((fact) => fact.what === what)?.value;
const verdict = (wish: Partial<TrayWish>) => only(wish).verdict;

test('trays in a clearly hotter house are asked to be carried to the better one', () => {
  const decision = only();
  expect(decision).toMatchObject({ verdict: 'act', subject: 'basil-1', place: 'long-house' });
  expect(taskKey(decision)).toBe('move-trays:long-house:basil-1');
  expect(value(decision, 'move-to')).toBe('Sun House');
  expect(Number(value(decision, 'better-at-least'))).toBeGreaterThan(0);
  expect(title({ ...decision, place: 'Long House' })).toBe(
    'Move 30 trays of Basil from Long House to Sun House',
  );
  expect(why('move-trays', decision.because)).toMatch(
    /band for 1\d\.\d\u00a0h a day more there over the last days\. It is expected to spare about [\d.]+; the carrying costs about 9\.3\.$/,
  );
});

// By hand: 30 trays, 5 min to walk and 1 min a tray make 35 min; at 16 an hour that is 9.33.
test('what it spares is harmful hours × days × share × worth, and stands against the carrying', () => {
  const decision = only();
  const hours = Number(value(decision, 'harmful-hours-fewer'));
  const worth = 30 * 0.35 * 30; // trays, kg a tray, money a kg: makeSnapshot's basil
  expect(hours).toBeGreaterThan(3);
  if (decision.verdict !== 'act') throw new Error('Expected an act');
  expect(decision.saves.money).toBeCloseTo(Math.min(1, 0.002 * hours * 14) * worth, 1);
  expect(decision.minutes).toBe(35);
  const told = only({ stands: [stand({ minutes: 90 })] });
  expect(told).toMatchObject({ verdict: 'act', minutes: 90 });
});

test('equal places, and places that are better by chance alone, ask for nothing', () => {
  expect(verdict({ there: days(hot) })).toBe('leave');
  const lucky: HourCurve = (day, hour) => (day % 3 === 0 ? mild : hot)(day, hour);
  expect(verdict({ there: days(lucky) })).toBe('leave');
});

test('nothing is carried to a place without room, nor where nobody told what it holds', () => {
  expect(verdict({ capacity: 29 })).toBe('leave');
  expect(verdict({ capacity: 40, others: 11 })).toBe('leave');
  expect(verdict({ capacity: 40, others: 10 })).toBe('act');
  expect(only({ capacity: null })).toMatchObject({
    verdict: 'unknown',
    missing: ['room-in-the-place'],
  });
});

test('trays with mould, trays near to ready, and a saving below the carrying stay', () => {
  expect(value(only({ stands: [stand({ mouldy: true })] }), 'mould-seen')).toBe('yes');
  expect(verdict({ stands: [stand({ mouldy: true })] })).toBe('leave');
  expect(verdict({ stands: [stand({ daysLeft: 4 })] })).toBe('leave');
  expect(verdict({ stands: [stand({ daysLeft: 5 })] })).toBe('act');
  expect(verdict({ stands: [stand({ minutes: 60 * 60 })] })).toBe('leave');
  expect(only({ stands: [stand({ daysLeft: null })] })).toMatchObject({
    verdict: 'unknown',
    missing: ['days-to-ready'],
  });
});

test('where nobody keeps batches it is the trays there, by the farm file', () => {
  const decision = only({ stands: [stand({ batch: null, daysLeft: null })] });
  expect(decision).toMatchObject({ verdict: 'act', subject: null, doBy: null });
  expect(title({ ...decision, place: 'Long House' })).toBe(
    'Move the trays there, Basil, from Long House to Sun House',
  );
});

test('a place that is too cold tonight, or was too hot or cold where this one was not, is not safe', () => {
  const cold: HourCurve = (day, hour) => {
    const read = mild(day, hour) ?? [0, 0];
    return day === 4 && hour === 3 ? [10.5, 60] : read;
  };
  expect(verdict({ there: days(cold) })).toBe('leave');
  const flash: HourCurve = (day, hour) =>
    day === 4 && hour === 15 ? [41, 40] : (mild(day, hour) ?? null);
  expect(verdict({ there: days(flash) })).toBe('leave');
});

test('too few days known in both is not known, never fine', () => {
  const silent: HourCurve = (day, hour) => (day < 6 ? null : mild(day, hour));
  expect(only({ there: days(silent) })).toMatchObject({
    verdict: 'unknown',
    missing: ['days-in-both-places'],
  });
});

test('a house whose vents were shut while it was cooler outside is opened first', () => {
  const outside = daysOf(swing(18, 5), FIRST, 10);
  const shut = only({ vents: true, here: days(hot, false), outside });
  expect(shut.verdict).toBe('leave');
  expect(shut.because.map(({ what }) => what)).toContain('open-up-first');
  // Open all the while, and hot all the same: carrying is what is left.
  expect(verdict({ vents: true, here: days(hot, true), outside })).toBe('act');
  // Outside as hot as inside: opening would not have done.
  expect(verdict({ vents: true, here: days(hot, false), outside: days(hot) })).toBe('act');
});

test('shade that was put up is given three days to show what it does, unless nobody will shade', () => {
  const said = (shadedDays: number, notShaded = false) =>
    only({ shade: { shadedDays, notShaded } });
  expect(said(1).verdict).toBe('leave');
  expect(said(2).because.map(({ what }) => what)).toContain('shade-first');
  expect(said(3).verdict).toBe('act');
  expect(said(2, true).verdict).toBe('act');
});

test('once asked it is asked for the same place, until it is hardly better any more', () => {
  const near = { minutes: 5 };
  const asked = stand({ ...near, askedTo: 'sun-house' });
  const free = stand(near);
  // 1.5 h a day better: not enough to ask, enough to go on asking.
  const bit = (hours: number): HourCurve => {
    return (day, hour) => (hour >= 12 && hour < 12 + hours ? [33.5, 50] : mild(day, hour));
  };
  const wish = { here: days(bit(1)), there: days(mild), stands: [free] };
  const few = { here: days(bit(0)), there: days(mild) };
  expect(verdict(wish)).toBe('act'); // 2 h: one in the band more, one hot fewer
  const half: HourCurve = (day, hour) => (day % 4 === 0 ? mild : bit(1))(day, hour);
  expect(verdict({ ...wish, here: days(half) })).toBe('leave');
  expect(verdict({ ...wish, here: days(half), stands: [asked] })).toBe('act');
  expect(verdict({ ...few, stands: [asked] })).toBe('leave');
});

test('trays that were carried are not carried again for a week, nor back for three', () => {
  const now = at('2025-06-21T09:00');
  const ago = (n: number) => instant(now - n * DAY);
  const rested = (n: number, from: string) =>
    verdict({
      stands: [stand({ movedAt: ago(n), left: [{ place: from, at: ago(n) }] })],
    });
  expect(rested(6, 'far-house')).toBe('leave');
  expect(rested(8, 'far-house')).toBe('act');
  expect(rested(20, 'sun-house')).toBe('leave');
  expect(rested(22, 'sun-house')).toBe('act');
});

test('two batches that both fit alone never fill a place beyond what it holds', () => {
  const pair = [
    stand({ batch: 'a', trays: 15 }),
    stand({ batch: 'b', trays: 15 }),
    stand({ batch: 'c', trays: 15, askedTo: 'sun-house' }),
  ];
  const acts = moves(trayFarm({ ...better, stands: pair, capacity: 34 })).filter(
    (one) => one.verdict === 'act',
  );
  expect(acts.map(({ subject }) => subject).sort()).toEqual(['a', 'c']);
});
