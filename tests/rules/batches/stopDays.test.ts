import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  bestStop,
  climateCalendar,
  climateUnits,
  type FruitPatch,
  stopChanges,
  stopDays,
} from '../../../rules/batches/index.ts';
import { dayAt } from '../../../rules/heat/index.ts';

// The worked example of the method sheet, 8.3.
const example: FruitPatch = {
  cohorts: [
    { mass: 6, units: 18 },
    { mass: 5, units: 45 },
    { mass: 6, units: 90 },
  ],
  units: [6, 6, 5.5, 5.5, 5, 5, 5, 4.5, 4.5, 4.5, ...Array(12).fill(4)],
  killed: [0.02, 0.02, 0.03, 0.05, 0.05, 0.08, 0.08, 0.1, 0.1, 0.12, ...Array(12).fill(0.15)],
  ...{ rotWet: 0.1, rotDry: 0.02, wetChance: 0.3, margin: 6, perPicking: 12, perDay: 1 },
};

const share = fc.double({ min: 0, max: 1, noNaN: true });
const anyPatch: fc.Arbitrary<FruitPatch> = fc
  .record({
    cohorts: fc.array(
      fc.record({
        mass: fc.double({ min: 0, max: 50, noNaN: true }),
        units: fc.double({ min: 0, max: 300, noNaN: true }),
        rotsFrom: fc.integer({ min: 0, max: 30 }),
      }),
      { maxLength: 5 },
    ),
    warmth: fc.double({ min: 0, max: 15, noNaN: true }),
    kill: fc.double({ min: 0, max: 0.3, noNaN: true }),
    rot: fc.tuple(share, share, share),
    money: fc.tuple(
      fc.double({ min: -5, max: 20, noNaN: true }),
      fc.double({ min: 0, max: 20, noNaN: true }),
      fc.double({ min: 0, max: 5, noNaN: true }),
    ),
  })
  .map(({ cohorts, warmth, kill, rot, money }) => ({
    cohorts: cohorts.sort((a, b) => a.units - b.units),
    units: Array(30).fill(warmth),
    killed: Array(30).fill(kill),
    ...{ rotWet: rot[0], rotDry: rot[1], wetChance: rot[2] },
    ...{ margin: money[0], perPicking: money[1], perDay: money[2] },
  }));

test('the worked example: best on day 4 with 11.9921, day 9 nearly as good with 11.6091', () => {
  const plan = stopDays(example);
  expect(plan).toMatchObject({ best: 4, from: 4, to: 4, nearly: 9, reason: 'rest-not-worth' });
  expect(plan.value).toBeCloseTo(11.9921, 4);
  expect(plan.days[4]?.value).toBeCloseTo(11.9921, 4);
  expect(plan.days[9]?.value).toBeCloseTo(11.6091, 4);
  expect(plan.days[20]?.value).toBeCloseTo(0.8724, 4);
  expect(plan.days[4]?.survives).toBeCloseTo(0.885, 4);
  expect(plan.days[4]?.sound).toBeCloseTo(0.8353, 4);
  expect(plan.days[9]?.ripe).toBe(5);
});

test('what is still to gain is what the best day would add, and nothing after it', () => {
  const { days } = stopDays(example);
  expect(days[0]?.toGain).toBeCloseTo(11.9921, 4); // nothing is made by stopping today
  expect(days[4]?.toGain).toBe(0);
  // On day 5 a day's holding is paid, and day 9 is the best that is left: 11.6091 - 10.9921.
  expect(days[5]?.toGain).toBeCloseTo(11.6091 - 10.9921, 3);
});

test('what is lost by the first night: frost and rot of all that hangs, and a day’s holding', () => {
  // 17 kg at 6 each, 2 % frost, 4.4 % rot, by hand: 102 (1 - 0.98 x 0.956) + 1.
  expect(stopDays(example).days[1]?.lost).toBeCloseTo(102 * (1 - 0.98 * 0.956) + 1, 9);
});

test('the plan agrees with the best stop, whatever the patch', () => {
  fc.assert(
    fc.property(anyPatch, (patch) => {
      const plan = stopDays(patch);
      const best = bestStop(patch);
      const near = (a: number, b: number) => Math.abs(a - b) < 1e-6;
      return (
        plan.best === (best.day ?? 0) &&
        near(plan.value, best.value) &&
        plan.from <= plan.best &&
        plan.best <= plan.to &&
        plan.days.every(({ toGain, lost }) => toGain >= 0 && lost >= 0) &&
        plan.days.every((day, at) => at === 0 || day.lost >= (plan.days[at - 1]?.lost ?? 0) - 1e-9)
      );
    }),
    { numRuns: 300 },
  );
});

test('reasons: nothing counted, nothing worth it, all picked out', () => {
  expect(stopDays({ ...example, cohorts: [] }).reason).toBe('nothing-left');
  expect(stopDays({ ...example, margin: 0.1 })).toMatchObject({ reason: 'not-worth', best: 0 });
  const one = { ...example, cohorts: [{ mass: 6, units: 18 }] };
  expect(stopDays(one).reason).toBe('picked-out');
});

test('a window ends a fortnight after the best day where holding costs nothing', () => {
  const one = { ...example, cohorts: [{ mass: 6, units: 6 }], perDay: 0 };
  expect(stopDays(one)).toMatchObject({ best: 1, from: 1, to: 15 });
});

test('a cohort of another stage has its own nights, and green fruit does not rot yet', () => {
  const tender = [{ mass: 6, units: 18, killed: Array(22).fill(1) }];
  expect(bestStop({ ...example, cohorts: tender }).value).toBe(0);
  const green = bestStop({ ...example, cohorts: [{ mass: 6, units: 18, rotsFrom: 3 }] });
  expect(green.stops[0]?.sound).toBeCloseTo(0.956, 9); // one day of the four
  expect(() => bestStop({ ...example, cohorts: [{ mass: 6, units: 18, killed: [0.1] }] })).toThrow(
    RangeError,
  );
});

test('each change named is one: on its near side the day is the same, on its far side another', () => {
  const found = stopChanges(example, 2);
  expect(found.map(({ what }) => what)).toContain('price-below');
  const at = (change: Partial<FruitPatch>) => bestStop({ ...example, ...change }).day ?? 0;
  for (const { what, value, best } of found) {
    if (what === 'frost-sooner') {
      const killed = example.killed.map((_, night) => example.killed[Math.min(21, night + value)]);
      expect(at({ killed: killed as number[] })).toBe(best);
      expect(best).not.toBe(4);
      continue;
    }
    const way = what === 'price-below' ? -1 : 1;
    const put = (number: number) =>
      what === 'wetter' ? at({ wetChance: number }) : at({ margin: number - 2 });
    expect(put(value + way * 1e-3), what).toBe(best);
    expect(put(value - way * 1e-3), what).toBe(4);
  }
});

test('a calendar of a record gives what asking for each date alone gives', () => {
  const days = fc.array(
    fc.record({
      day: fc.integer({ min: 10_000, max: 20_000 }).map(dayAt),
      value: fc.option(fc.integer({ min: 0, max: 20 })),
    }),
    { maxLength: 60 },
  );
  fc.assert(
    fc.property(days, fc.integer({ min: 10_000, max: 20_000 }).map(dayAt), (record, date) => {
      const made = climateCalendar(record)(date);
      const asked = climateUnits(
        record.map(({ day, value }) => ({ day, degreeDays: value })),
        date,
      );
      return made === null || asked === null ? made === asked : Math.abs(made - asked) < 1e-9;
    }),
  );
});
