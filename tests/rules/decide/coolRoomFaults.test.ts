import { describe, expect, test } from 'vitest';
import { MINUTE } from '../../../rules/units.ts';
import { lookAtRoom as look, now } from './lookAtRoom.ts';
import type { Course } from './makeSnapshot.ts';

/** 3 ± 1 °C, `period` minutes long, of which `share` rising; 0 at the bottom. */
const sawtooth =
  (period: number, share: number, phase: number): Course =>
  (ago) => {
    const x = ((((phase - ago) % period) + period) % period) / period;
    return x < share ? 2 + (2 * x) / share : 4 - (2 * (x - share)) / (1 - share);
  };
const compressor =
  (period: number, share: number, phase: number): Course =>
  (ago) => {
    const x = ((((phase - ago) % period) + period) % period) / period;
    return x < share ? 3 : 450;
  };

describe('a room in its normal cycle asks for nothing', () => {
  test.for(
    [15, 30, 45].flatMap((period) =>
      [0.3, 0.7].flatMap((share) => [1, 5].map((every) => ({ period, share, every }))),
    ),
  )(
    '$period minutes long, $share of it rising, read every $every minutes',
    ({ period, share, every }) => {
      for (let phase = 0; phase < period; phase += 1) {
        const air = sawtooth(period, share, phase);
        const power = compressor(period, share, phase);
        expect(look({ air, every }).acts).toEqual([]);
        expect(look({ air, power, door: 0, every }).acts).toEqual([]);
        expect(look({ air, every }).room.state).toBe('holding');
      }
    },
  );
});

/** A cycle of 40 minutes, then a defrost of 18 from the top of it, then back. */
const defrost =
  (started: number): Course =>
  (ago) => {
    const t = started - ago;
    if (t < 0) return 2 + Math.abs((-t % 40) - 20) / 10;
    return t < 18 ? 4 + 0.14 * t : Math.max(2, 6.52 - 0.2 * (t - 18));
  };

test.for([1, 5])('a defrost of 18 minutes asks for nothing, read every %d minutes', (every) => {
  for (let started = 0; started < 60; started += 1) {
    // Off while it defrosts and while it warms from 2 to 4; the 20 minutes before, cooling.
    const power: Course = (ago) => {
      const t = started - ago;
      if (t >= 0) return t < 18 ? 3 : 450;
      return -t % 40 < 20 ? 3 : 450;
    };
    expect(look({ air: defrost(started), every }).acts, `started ${started}`).toEqual([]);
    expect(look({ air: defrost(started), power, every }).acts, `started ${started}`).toEqual([]);
  }
});

test('a short opening of the door that recovers asks for nothing', () => {
  for (let opened = 0; opened < 60; opened += 1) {
    const air: Course = (ago) => {
      const t = opened - ago;
      if (t < 0) return 3;
      return t < 4 ? 3 + 0.8 * t : Math.max(3, 6.2 - 0.25 * (t - 4));
    };
    const door: Course = (ago) => (opened - ago >= 0 && opened - ago < 4 ? 1 : 0);
    expect(look({ air, every: 1 }).acts, `opened ${opened}`).toEqual([]);
    expect(look({ air, door, every: 1 }).acts, `opened ${opened}`).toEqual([]);
  }
});

test('a door open for five minutes is to be shut, by its contact', () => {
  const door =
    (minutes: number): Course =>
    (ago) =>
      ago <= minutes ? 1 : 0;
  expect(look({ door: door(4), every: 1 }).said('shut-door').verdict).toBe('leave');
  const { said, room } = look({ door: door(5), every: 1 });
  expect(said('shut-door').verdict).toBe('act');
  expect(room).toMatchObject({ state: 'warming', cause: 'door' });
});

test('a door left open is known by a steep rise that stays, and wakes somebody', () => {
  const air: Course = (ago) => Math.min(9, 3 + 0.5 * Math.max(0, 16 - ago));
  const { said } = look({ air, every: 1 });
  expect(said('shut-door')).toMatchObject({ verdict: 'act', alarm: 'door' });
  // A contact that says shut is believed: then it is not the door.
  expect(look({ air, door: 0, every: 1 }).said('shut-door').verdict).toBe('leave');
});

// Newton's law, outside 20 °C, time constant 6 h: 3 °C at the stop, 5 °C after 0.7510 h, 5.6098
// after an hour: 6 ln(17/15) by hand.
const stopped =
  (minutes: number): Course =>
  (ago) =>
    ago >= minutes ? 3 : 20 - 17 * Math.exp(-(minutes - ago) / 360);

test('hold-over is 45 minutes from 3 °C to 5 °C with 20 °C outside', () => {
  expect(look({ air: 3 }).room.holdOver.tauHours).toBe(6);
  expect(look({ air: 3 }).room.holdOver.minutesToLimit).toBeCloseTo(0.751 * 60, 1);
  expect(look({ air: 3, out: null }).room.holdOver.minutesToLimit).toBeNull();
});

test('no watt at all where the controller used to draw three: the supply is off, after ten minutes', () => {
  const power: Course = (ago) => (ago <= 10 ? 0 : ago % 30 < 15 ? 3 : 450);
  const { said, room } = look({ air: stopped(10), power });
  expect(room.cause).toBe('power');
  const run = said('run-generator');
  expect(run).toMatchObject({ verdict: 'act', alarm: 'power' });
  // 35 minutes are left of the 45
  expect(((run.verdict === 'act' ? (run.doBy ?? 0) : 0) - now) / MINUTE).toBeCloseTo(35, 0);
});

test('no watt where pauses always read nothing is a pause, until the compressor misses its turn', () => {
  const power =
    (minutes: number): Course =>
    (ago) =>
      ago <= minutes || ago % 30 < 15 ? 0 : 450;
  expect(look({ air: 3, power: power(10) }).acts).toEqual([]);
  const late = look({ air: stopped(50), power: power(50) });
  expect(late.room.cause).toBe('power');
  expect(late.said('run-generator').verdict).toBe('act');
});

test('a controller that draws its few watts while the compressor misses its turn: see to the unit', () => {
  const power: Course = (ago) => (ago <= 50 || ago % 30 < 15 ? 3 : 450);
  const { said, room } = look({ air: stopped(50), power });
  expect(room).toMatchObject({ cause: 'unclear', among: ['unit', 'controller'] });
  expect(said('see-to-unit')).toMatchObject({ verdict: 'act', alarm: 'unit' });
  expect(said('run-generator').verdict).toBe('leave');
});

test('without a power probe a long rise has no name, and is seen within an hour', () => {
  const { said, room } = look({ air: stopped(58) });
  expect(room.cause).toBe('unclear');
  expect(said('see-to-unit').verdict).toBe('act');
  expect(said('run-generator')).toMatchObject({ verdict: 'unknown', missing: ['room-power'] });
});

test('a cycle shifted by two degrees is seen by its bottom, and wakes somebody once it is sure', () => {
  // 10th percentile over 120 min above set point + 0.7 K; the margin is ours
  const shifted =
    (minutes: number): Course =>
    (ago) => {
      const cycle = sawtooth(30, 0.6, 0) as (ago: number) => number;
      return cycle(ago) + (ago <= minutes ? 2 : 0);
    };
  expect(look({ air: shifted(60) }).said('see-to-unit').verdict).toBe('leave');
  expect(look({ air: shifted(125) }).said('see-to-unit')).toMatchObject({
    verdict: 'act',
    alarm: null,
  });
  const sure = look({ air: shifted(190) });
  expect(sure.said('see-to-unit')).toMatchObject({ verdict: 'act', alarm: 'unit' });
  expect(sure.room.drift).toBeCloseTo(1.2, 0);
});

test('the bottom of ten samples is their 10th percentile, type 7 of Hyndman and Fan: 3.89', () => {
  const samples = [3.9, 4.1, 4.4, 4.0, 3.8, 4.6, 4.9, 5.1, 4.3, 4.2];
  const { room } = look({ air: (ago) => samples[(ago / 12) % 10] ?? 0, every: 12 });
  expect(room.drift).toBeCloseTo(0.89, 9);
});

test('a unit that rests for hours on a cool night, the air creeping up to its start, is no fault', () => {
  const creep: Course = (ago) => 4 - ago / 400;
  expect(look({ air: creep }).room.drift).toBeGreaterThan(0.7);
  expect(look({ air: creep }).acts).toEqual([]);
});

test('under 80 % of the samples there is no drift to speak of, and it says so', () => {
  const { said, room } = look({ air: 3, hours: 1 });
  expect(room.drift).toBeNull();
  expect(said('see-to-unit')).toMatchObject({
    verdict: 'unknown',
    missing: ['room-temperature-history'],
  });
});
