import { expect, test } from 'vitest';
import { taskKey } from '../../../rules/decide/index.ts';
import { instant, MINUTE } from '../../../rules/units.ts';
import { lookAtRoom as look, now } from './lookAtRoom.ts';
import type { Course } from './makeSnapshot.ts';

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

test('the time constant is learned from a stop that was seen, door shut', () => {
  // Newton's law with 4 h, from 3 °C, begun five and a half hours ago, 90 minutes long.
  const air: Course = (ago) => {
    const t = 330 - ago;
    if (t < 0 || t > 90) return 3;
    return 20 - 17 * Math.exp(-t / 240);
  };
  const power: Course = (ago) => (ago <= 330 && ago > 240 ? 0 : 450);
  expect(look({ air, power }).room.holdOver.tauHours).toBeCloseTo(4, 6);
  expect(look({ air, power, door: (ago) => (ago === 300 ? 1 : 0) }).room.holdOver.tauHours).toBe(6);
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
