import { expect, test } from 'vitest';
import { roomHabits } from '../../../rules/cooler/index.ts';
import { taskKey } from '../../../rules/decide/index.ts';
import { hours, instant, MINUTE } from '../../../rules/units.ts';
import { lookAtRoom as look, now } from './lookAtRoom.ts';
import type { Course } from './makeSnapshot.ts';

const unlearned = roomHabits([], { setPoint: 3, every: 1 });

test('air over the limit for most of an hour: move the produce, before it reaches the limit itself', () => {
  const { said, room } = look({ air: (ago) => (ago > 35 ? 3 : 6) });
  expect(room.state).toBe('warm');
  const move = said('move-produce');
  if (move.verdict !== 'act' || move.doBy === null) throw new Error('Expected act with a deadline');
  expect(move.alarm).toBe('warm');
  expect(room.produceEstimate).toBeGreaterThan(3);
  expect(room.produceEstimate).toBeLessThan(5);
  expect(move.doBy).toBeGreaterThan(now);
  expect(move.saves.money).toBeGreaterThan(0);
});

test('a crate already over the limit was due when the air went over', () => {
  const { said } = look({ air: (ago) => (ago > 35 ? 3 : 6), product: 5.5 });
  const move = said('move-produce');
  expect(move.verdict === 'act' && move.doBy).toBe(now - 35 * MINUTE);
});

test('once asked, produce stays asked until the air is clearly inside the limit', () => {
  const standing = [taskKey({ kind: 'move-produce', place: 'cool-room', subject: null })];
  const verdict = (air: number, keys: string[]) =>
    look({ air: (ago) => (ago > 120 ? 3 : air), door: 0, standing: keys }).said('move-produce')
      .verdict;
  expect(verdict(4.8, standing)).toBe('act');
  expect(verdict(4.5, standing)).not.toBe('act');
});

test('time above the limit, and time nobody saw, are told apart', () => {
  // By hand, straight lines between readings: from 3 to 6 °C in 5 minutes, a third of it above 5.
  const { room } = look({ air: (ago) => (ago >= 60 && ago <= 120 ? 6 : 3), hours: 12 });
  expect(room.aboveLimit.hours).toBeCloseTo(1 + 2 * ((5 / 60) * (1 / 3)), 2);
  expect(room.aboveLimit.unknownHours).toBeCloseTo(12, 1);
  expect(room.aboveLimit.since).toBeNull();
});

test('a silent probe makes the room unknown: never fine, and nothing is asked of it', () => {
  const { room, said, acts } = look({ air: 3, silent: 20 });
  expect(room).toMatchObject({ state: 'unknown', temperature: null, cause: null });
  expect(room.asOf).toBe(instant(now - 20 * MINUTE));
  for (const kind of ['shut-door', 'run-generator', 'see-to-unit', 'move-produce']) {
    expect(said(kind).verdict, kind).toBe('unknown');
  }
  expect(acts).toEqual([]);
});

test('hold-over goes by the time constants learned here, and its range by how far they lie apart', () => {
  const habits = { ...unlearned, tauFits: [4, 5, 4.5].map(hours) };
  const { holdOver } = look({ air: 3, habits }).room;
  expect(holdOver.tauHours).toBe(4.5);
  expect(holdOver.learnedFrom).toBe(3);
  // Newton's law by hand: 4.5 h ln(17/15) = 33.8 min, and a tenth less and more: the mean distance
  // from the middle, 0.33 h of 4.5, is less than a tenth.
  expect(holdOver.minutesToLimit).toBeCloseTo(33.8, 1);
  expect(holdOver.shortest).toBeCloseTo(0.9 * 33.794, 1);
  expect(holdOver.longest).toBeCloseTo(1.1 * 33.794, 1);
});

test('a stop by plan is no fault, and asks for the set only when the room does not last until it runs', () => {
  const air = (ago: number) => 3 + (60 - Math.min(60, ago)) / 60; // 4 °C now, an hour into the stop
  const until = (minutes: number) => [
    { from: instant(now - 300 * MINUTE), to: instant(now - 60 * MINUTE) },
    { from: instant(now + minutes * MINUTE), to: instant(now + 600 * MINUTE) },
  ];
  // By hand: at most 20 °C outside, 6 h less four tenths: 3.6 h ln(16/15) = 14 minutes are sure.
  const short = look({ air, supply: until(10) });
  expect(short.acts).toEqual([]);
  expect(short.room).toMatchObject({ cause: null, plan: { on: false } });
  const long = look({ air, supply: until(200) });
  expect(long.acts).toEqual(['run-generator']);
  const run = long.said('run-generator');
  expect(((run.verdict === 'act' ? (run.doBy ?? 0) : 0) - now) / MINUTE).toBeCloseTo(13.9, 1);
});

test('energy and running share are those of the last day', () => {
  // By hand: 0.55 kW x 0.35 x 24 = 4.62 kWh a day
  const power: Course = (ago) => (ago % 100 < 35 ? 550 : 0);
  const { energy } = look({ power }).room;
  expect(energy.dutyCycle).toBeCloseTo(0.35, 1);
  expect(Math.abs((energy.kWhPerDay ?? 0) - 4.62)).toBeLessThan(0.15);
  expect(look({}).room.energy).toEqual({ kWhPerDay: null, dutyCycle: null });
});

test('a probe that reports each ten minutes, told as five, is slow and not full of holes', () => {
  const { room } = look({ air: 3, every: 10, told: 5 });
  expect(room.state).toBe('holding');
  expect(room.drift).toBeCloseTo(0, 9);
  expect(room.aboveLimit.unknownHours).toBe(0);
});
