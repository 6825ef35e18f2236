import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  anthracnose,
  basilInfection,
  brassicaDownyMildew,
  type Circumstances,
  dayOfSpells,
  diseases,
  diseasesOf,
  greyMouldFlowers,
  greyMouldLeaves,
  lateBlightInfection,
  lettuceInfection,
  trayDamp,
} from '../../../rules/disease/index.ts';
import { circumstances, day, night, piece, tenMinutes, wordOf } from './circumstances.ts';

test.for(diseases)('$id: a place without readings is unknown, never fine', (disease) => {
  const { verdict, risk, missing } = disease.judge(circumstances([]));
  expect(verdict).toBe('unknown');
  expect(risk === null || risk === 'unknown' || risk.most !== 'quiet').toBe(true);
  expect(missing.length).toBeGreaterThan(0);
});

test.for(diseases)('$id says what it is and where it is from', (disease) => {
  expect(disease.id).toMatch(/^[a-z-]+$/);
  expect(disease.of).toMatch(/^[a-z-]+$/);
  expect(disease.name).not.toBe('');
  expect(disease.source).not.toBe('');
  expect(diseases.filter(({ id }) => id === disease.id)).toHaveLength(1);
});

test.for(diseases)('$id: what it says holds evidence with its source', (disease) => {
  const known = { ...night(9, 18), outdoors: true, calendarDays: [day, day] as const };
  for (const { what, source } of disease.judge(known).because) {
    expect(what).toMatch(/^[a-z-]+$/);
    expect(source).not.toBe('');
  }
});

test.for([
  greyMouldFlowers,
  greyMouldLeaves,
  anthracnose,
  basilInfection,
  lettuceInfection,
  brassicaDownyMildew,
  lateBlightInfection,
  trayDamp,
])('$id: a longer wet spell never lowers the risk', (disease) => {
  const order = ['quiet', 'watch', 'event'];
  const rank = (known: Circumstances) => {
    const { risk } = disease.judge(known);
    return risk === null || risk === 'unknown' ? -1 : order.indexOf(risk.least);
  };
  fc.assert(
    fc.property(
      fc.integer({ min: 0, max: 15 }),
      fc.integer({ min: 0, max: 15 }),
      fc.integer({ min: 2, max: 34 }),
      (a, b, t) => {
        const [short, long] = [night(Math.min(a, b), t), night(Math.max(a, b), t)];
        return rank(short) >= 0 && rank(short) <= rank(long);
      },
    ),
    { numRuns: 40 },
  );
});

test('grey mould at flowering: the published index by class', () => {
  // At 20 °C 0.15 takes 8.1749 h and 0.50 13.7722 h, computed apart from this code.
  expect(wordOf(night(8, 20), greyMouldFlowers)).toBe('quiet');
  expect(wordOf(night(8.5, 20), greyMouldFlowers)).toBe('watch');
  expect(wordOf(night(13.5, 20), greyMouldFlowers)).toBe('watch');
  expect(wordOf(night(14, 20), greyMouldFlowers)).toBe('event');
});

test('grey mould at flowering needs open flowers, and to be told of them', () => {
  const closed = greyMouldFlowers.judge({ ...night(14, 20), flowering: false });
  expect(closed).toMatchObject({ verdict: 'no', risk: { least: 'quiet', most: 'quiet' } });
  const untold = greyMouldFlowers.judge({ ...night(14, 20), flowering: null });
  expect(untold).toMatchObject({ verdict: 'unknown', missing: ['open-flowers'] });
});

test('a spell longer than the 32 h of the experiments is marked', () => {
  const long = (length: number) =>
    circumstances(tenMinutes(24, (hour) => [15, hour < length - 24 + 12 ? 95 : 70], -12));
  const marks = (known: Circumstances) =>
    greyMouldFlowers.judge(known).because.filter(({ what }) => what === 'beyond-tested-hours');
  expect(marks(long(32))).toEqual([]);
  expect(marks(long(32.5))).toMatchObject([{ limit: 32 }]);
});

test('silence in the night makes a range, and silence for half the day unknown', () => {
  const holed = (hours: number) =>
    circumstances(
      tenMinutes(24, (hour) =>
        hour >= 15 && hour < 15 + hours ? null : [18, hour >= 8 && hour < 15 ? 95 : 70],
      ),
    );
  // 7 h wet at 18 °C, then up to 4 h more: 0.104 is quiet, 11 h are watch.
  expect(wordOf(holed(4), greyMouldFlowers)).toBe('quiet-to-watch');
  const silent = (hours: number) =>
    circumstances(tenMinutes(24, (hour) => (hour < hours ? null : [18, 70])));
  expect(wordOf(silent(12), greyMouldFlowers)).not.toBe('unknown');
  expect(wordOf(silent(12.5), greyMouldFlowers)).toBe('unknown');
  expect(greyMouldFlowers.judge(silent(12.5))).toMatchObject({
    verdict: 'unknown',
    missing: ['leaf-wetness-history'],
  });
});

test('a spell that began before noon counts from its own start; one that was over does not count', () => {
  const known = (from: number, to: number) =>
    circumstances(tenMinutes(24, (hour) => [20, hour >= from && hour < to ? 95 : 70], -20));
  expect(wordOf(known(-10, 4), greyMouldFlowers)).toBe('event');
  expect(wordOf(known(-18, -4), greyMouldFlowers)).toBe('quiet');
  expect(dayOfSpells(known(-10, 4)).wetHours.map((h) => Math.round(h * 1e6) / 1e6)).toEqual([4, 4]);
});

test('time that no piece of wetness covers is unknown time', () => {
  const known = circumstances([], { wetness: [piece('dry', 0, 14, 15)] });
  expect(dayOfSpells(known)).toMatchObject({
    wetHours: [0, 10],
    unknownHours: 10,
    tooLittleKnown: false,
  });
});

test('a crop’s diseases by the ids of the farm file; anthracnose only where confirmed', () => {
  const ids = (of: readonly string[], confirmed: readonly string[] = []) =>
    diseasesOf(of, confirmed).map(({ id }) => id);
  expect(ids(['grey-mould'])).toEqual([
    'grey-mould-flowers',
    'grey-mould-leaves',
    'grey-mould-house',
  ]);
  expect(ids(['anthracnose'])).toEqual([]);
  expect(ids(['anthracnose'], ['anthracnose'])).toEqual(['anthracnose']);
  expect(ids([])).toEqual([]);
});
