import { describe, expect, test } from 'vitest';
import {
  coilSays,
  cycleTurns,
  defrostDue,
  excursions,
  findDefrosts,
  learnCycle,
  lostBottom,
  pullDown,
  type RoomDay,
  roomDay,
  roomHabits,
  sameValue,
  slowerBy,
  smoothTrace,
  type Trace,
} from '../../../rules/cooler/index.ts';
import { instant, MINUTE } from '../../../rules/units.ts';

// Invented traces, a reading each minute; what is expected of each was worked out by hand.

const start = Date.UTC(2026, 5, 1);
const DAY = 24 * 60;
const HOLE = 10 * MINUTE;

const trace = (minutes: number, at: (minute: number) => number): Trace => ({
  t: Array.from({ length: minutes }, (_, minute) => instant(start + minute * MINUTE)),
  value: Array.from({ length: minutes }, (_, minute) => at(minute)),
});

/** 2 to 4 °C: 20 minutes up, 10 minutes down. */
const cycle = (minute: number) => {
  const phase = minute % 30;
  return phase < 20 ? 2 + phase / 10 : 4 - (phase - 20) / 5;
};
/** The same with a defrost of 18 minutes at each sixth hour: up by 0.15 K a minute, back by 0.3. */
const defrosting = (minute: number) => {
  const since = minute % 360;
  if (since < 18) return 4 + 0.15 * since;
  if (since < 33) return 6.7 - 0.3 * (since - 18);
  return cycle(minute);
};

test('the cycle is learned from its turns', () => {
  const learned = learnCycle(cycleTurns(trace(DAY, cycle), HOLE));
  expect(learned?.top).toBeCloseTo(4, 6);
  expect(learned?.bottom).toBeCloseTo(2, 6);
  expect(learned?.riseMinutes).toBe(20);
  expect(learned?.fallMinutes).toBe(10);
  expect(learned?.fallingShare).toBeCloseTo(1 / 3, 2);
});

test('noise alone is no cycle, and neither is a room that never turns', () => {
  const noise = trace(DAY, (minute) => 3 + 0.05 * Math.sin(minute));
  expect(learnCycle(cycleTurns(noise, HOLE))).toBeNull();
  expect(
    learnCycle(
      cycleTurns(
        trace(DAY, (minute) => minute / 100),
        HOLE,
      ),
    ),
  ).toBeNull();
});

test('a hole begins the turns anew: nobody saw what was in it', () => {
  const whole = trace(300, cycle);
  const holed = {
    t: whole.t.filter((_, i) => i < 100 || i > 130),
    value: whole.value.filter((_, i) => i < 100 || i > 130),
  };
  expect(cycleTurns(holed, HOLE).length).toBeLessThan(cycleTurns(whole, HOLE).length);
});

const above = { line: 4.5, steep: 1, hole: HOLE };

describe('the clock of a stretch above the cycle', () => {
  test('runs on while nothing cools, and the rise is slow', () => {
    const [one] = excursions(
      trace(60, (m) => 4 + 0.05 * m),
      above,
    );
    expect(one).toMatchObject({ ended: false, steep: false, falling: false });
    // Above 4.5 from minute 11 on
    expect(one?.stalledSince).toBe(start + 11 * MINUTE);
  });
  test('begins anew with each step down', () => {
    const [one] = excursions(
      trace(60, (m) => (m < 20 ? 4 + 0.2 * m : 8 - 0.05 * (m - 20))),
      above,
    );
    expect(one).toMatchObject({ falling: true, ended: false });
    expect((start + 59 * MINUTE - (one?.stalledSince ?? 0)) / MINUTE).toBeLessThanOrEqual(4);
  });
  test('a door that stays open is steep and does not dip; one that was shut does', () => {
    const open = excursions(
      trace(40, (m) => 3 + 5 * (1 - Math.exp(-m / 6))),
      above,
    )[0];
    expect(open?.steep).toBe(true);
    expect(open?.dip).toBe(0);
    const shut = excursions(
      trace(40, (m) => (m < 10 ? 3 + 0.5 * m : Math.max(6, 8 - 0.2 * (m - 10)))),
      above,
    )[0];
    expect(shut?.dip).toBeCloseTo(2, 6);
  });
});

test('the way from top to bottom is timed, and a load that is being cooled is not held against it', () => {
  const levels = { top: 4, bottom: 2, line: 4.3 };
  const never = trace(120, (m) => (m < 20 ? 2 + m / 10 : 3.9));
  const pull = lostBottom(never, levels, HOLE);
  expect(pull.since).toBe(start + 18 * MINUTE);
  expect(pull.minutes).toBe(101);
  const cooling = trace(180, (m) => (m < 20 ? 2 + m / 10 : 9 - (m - 20) / 60));
  expect(lostBottom(cooling, levels, HOLE).minutes).toBeLessThan(35); // the first half hour only
  expect(lostBottom(trace(300, cycle), levels, HOLE).longest.within).toBeLessThanOrEqual(12);
});

test('defrosts are found by the hours at which they come back, with chance doors between them', () => {
  const bumps = Array.from({ length: 10 }, (_, day) =>
    [0, 360, 720, 1080, 200 + 61 * day].map((minute, i) => ({
      at: instant(start + (day * DAY + minute + (i < 4 ? (day * 7) % 5 : 0)) * MINUTE),
      rise: i < 4 ? 15 : 5,
      steep: i === 4,
    })),
  ).flat();
  const found = findDefrosts(bumps, 10);
  expect(found?.at.map((minute) => Math.round(minute / 60))).toEqual([0, 6, 12, 18]);
  expect(found?.minutes).toBe(15);
  expect(defrostDue(found, instant(start + (DAY * 20 + 363) * MINUTE))).toBe(true);
  expect(defrostDue(found, instant(start + (DAY * 20 + 500) * MINUTE))).toBe(false);
  expect(findDefrosts(bumps, 2)).toBeNull();
});

const dayOf = (at: (minute: number) => number, day = 0): RoomDay => {
  const { t, value } = trace(DAY, at);
  const shift = day * DAY * MINUTE;
  return roomDay(
    { t: t.map((each) => instant(each + shift)), value },
    { from: instant(start + shift), to: instant(start + shift + DAY * MINUTE), every: 1 },
    {
      meanOutside: 16,
      warmestOutside: 22,
      power: null,
      coil: null,
      calls: null,
      tauFits: [],
      kilowattHours: 6,
    },
  );
};
const settings = { setPoint: 3, every: 1 };

test('limits are the room’s own: what it does on good days is never held against it', () => {
  const days = Array.from({ length: 8 }, (_, day) => dayOf(defrosting, day));
  const habits = roomHabits(days, settings);
  expect(habits.learned).toBe(true);
  expect(habits.defrosts?.at).toHaveLength(4);
  for (const { bumps, longestPull } of days) {
    for (const { at, longestRise } of bumps) {
      const spared = defrostDue(habits.defrosts, at);
      expect(spared || longestRise < habits.patience.slow).toBe(true);
    }
    expect(longestPull.out).toBeLessThan(habits.pull.out);
    expect(longestPull.within).toBeLessThan(habits.pull.within);
  }
});

test('one odd day among many teaches nothing, and a room without days has defaults', () => {
  const days = Array.from({ length: 8 }, (_, day) => dayOf(defrosting, day));
  const usual = roomHabits(days, settings);
  const odd = dayOf((m) => (m > 400 && m < 900 ? 3.9 : defrosting(m)), 8);
  expect(roomHabits([...days, odd], settings).pull).toEqual(usual.pull);
  const none = roomHabits([], settings);
  expect(none).toMatchObject({ learned: false, top: 4, bottom: 2, line: 4.5, same: null });
});

test('a hotter day than any learned is given more time, by the strength the unit has left over', () => {
  const days = Array.from({ length: 8 }, (_, day) => dayOf(defrosting, day));
  const habits = {
    ...roomHabits(days, settings),
    top: 4,
    bottom: 2,
    duty: { share: 0.3, gap: 13 },
  };
  // By hand: warmest learned 22, inside 3: share 0.3 x 19/13 = 0.438; at 27 °C 0.3 x 24/13 = 0.554;
  // (1 - 0.438) / (1 - 0.554) = 1.259
  expect(slowerBy(habits, 27)).toBeCloseTo(1.259, 3);
  expect(slowerBy(habits, 20)).toBe(1);
  expect(slowerBy(habits, null)).toBe(1);
});

test('a load being cooled is told with the time it takes', () => {
  // From 9 °C towards 2.8 °C with a time constant of an hour: at 4.3 °C after ln(6.2/1.5) h = 85 min.
  const air = trace(90, (m) => (m < 10 ? 3 + 0.6 * m : 2.8 + 6.2 * Math.exp(-(m - 10) / 60)));
  const smooth = smoothTrace(air, start, start + 60 * MINUTE);
  const now = excursions(smooth, { ...above, line: 4.3 }).at(-1);
  if (now === undefined) throw new Error('Expected a stretch above the line, got none');
  const told = pullDown(smooth, now, 4.3, 2.8);
  expect(told?.peak).toBeCloseTo(9, 0);
  expect(((told?.backAt ?? 0) - start) / MINUTE).toBeCloseTo(95, -1);
});

test('the same value again and again is timed', () => {
  const stuck = sameValue(
    trace(60, (m) => Math.min(m, 20)),
    HOLE,
  );
  expect(stuck.since).toBe(start + 20 * MINUTE);
  expect(stuck.longest).toBe(0);
});

test('the coil tells whether the unit cools, and whether air goes over it', () => {
  const air = trace(30, () => 3);
  const usual = { lowest: -12, belowAir: 11 };
  expect(
    coilSays(
      trace(30, () => -8),
      air,
      usual,
    ),
  ).toMatchObject({ cools: true, idleSince: null });
  const idle = coilSays(
    trace(30, (m) => (m < 20 ? -8 : 2)),
    air,
    usual,
  );
  expect(idle).toMatchObject({ cools: false, idleSince: start + 20 * MINUTE });
  const starved = coilSays(
    trace(30, (m) => (m < 20 ? -8 : -25)),
    air,
    usual,
  );
  expect(starved?.starvedSince).toBe(start + 20 * MINUTE);
});
