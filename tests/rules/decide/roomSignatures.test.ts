import { expect, test } from 'vitest';
import { roomDay, roomHabits } from '../../../rules/cooler/index.ts';
import { instant, MINUTE } from '../../../rules/units.ts';
import { lookAtRoom as look, now } from './lookAtRoom.ts';
import type { Course } from './makeSnapshot.ts';

// Which trouble is seen, and which causes are named for it, in a room whose habits are learned: the
// signatures of the trade (door, defrost, lost power, stopped unit, slow loss, changed set point,
// warm load, probe). Common practice, no source; the traces are invented.

const DAY = 24 * 60;

/** 2 to 4 °C: 20 minutes up, 10 minutes down; a defrost of 18 minutes at each sixth hour. */
const cycle = (minute: number) => {
  const phase = ((minute % 30) + 30) % 30;
  return phase < 20 ? 2 + phase / 10 : 4 - (phase - 20) / 5;
};
const defrosting = (minute: number) => {
  if (minute % 360 < 18) return 4 + 0.15 * (minute % 360);
  if (minute % 360 < 33) return 6.7 - 0.3 * ((minute % 360) - 18);
  return cycle(minute);
};
/** What nine such days teach, the last defrost having begun so many minutes before the look. */
const learnt = (defrosted: number) => {
  const midnight = now - (now % (DAY * MINUTE));
  const into = (now - midnight) / MINUTE - defrosted;
  const first = midnight - 10 * DAY * MINUTE + (((into % 360) + 360) % 360) * MINUTE;
  const minutes = Array.from({ length: DAY }, (_, minute) => minute);
  const days = Array.from({ length: 9 }, (_, day) => {
    const from = first + day * DAY * MINUTE;
    const t = minutes.map((minute) => instant(from + minute * MINUTE));
    return roomDay(
      { t, value: minutes.map(defrosting) },
      { from: instant(from), to: instant(from + DAY * MINUTE), every: 1 },
      {
        ...{ meanOutside: 16, warmestOutside: 22, power: null, coil: null, tauFits: [] },
        ...{ calls: { startsAt: 4, stopsAt: 2.1 }, kilowattHours: 6 },
      },
    );
  });
  return roomHabits(days, { setPoint: 3, every: 1 });
};
const habits = learnt(180);
const at = (room: Parameters<typeof look>[0]) => look({ habits, every: 1, ...room });

/** The usual cycle until `began` minutes ago, at its middle by then, and `then` from there on. */
const after =
  (began: number, then: (minutes: number) => number): Course =>
  (ago) =>
    ago > began ? cycle(10 - (ago - began)) : then(began - ago);
const usual: Course = (ago) => cycle(-ago);
const running: Course = 450;

test('a room in its cycle asks for nothing', () => {
  expect(habits.learned).toBe(true);
  expect(habits.defrosts?.at).toHaveLength(4);
  expect(at({ air: usual }).acts).toEqual([]);
});

test('a steep rise that comes back within minutes is a door that was shut again: nothing', () => {
  const air = after(20, (m) => (m < 5 ? 3 + 0.7 * m : Math.max(2.2, 6.5 - 0.35 * (m - 5))));
  expect(at({ air }).acts).toEqual([]);
});

test('a steep rise that stays is the door', () => {
  const { room, said } = at({ air: after(40, (m) => 3 + 5 * (1 - Math.exp(-m / 6))) });
  expect(room).toMatchObject({ cause: 'door', among: ['door', 'unit'] });
  expect(said('shut-door')).toMatchObject({ verdict: 'act', alarm: 'door' });
});

test('a smaller one that stays, the compressor at work, is the unit or a door ajar', () => {
  const air = after(60, (m) => 3 + 2.4 * (1 - Math.exp(-m / 6)));
  const { room } = at({ air, power: running });
  expect(room).toMatchObject({ sure: 'cannot-tell', among: ['unit', 'door'] });
});

test('a rise at the learned hour, half as long again as learned, is a defrost: nothing', () => {
  const air: Course = (ago) => (ago > 20 ? cycle(20 - ago) : 3.9 + 0.15 * (20 - ago));
  const { acts, room } = at({ air, habits: learnt(20) });
  expect(acts).toEqual([]);
  expect(room.defrosting).toBe(true);
});

test('no power, where some was always drawn, is a lost supply; a planned stop is not', () => {
  const power: Course = (ago) => (ago <= 6 ? 0 : ago % 30 < 15 ? 3 : 450);
  const air = after(6, (m) => 3 + 0.05 * m);
  expect(at({ air, power }).room).toMatchObject({ cause: 'power', sure: 'sure' });
  const stop = { from: instant(now - 300 * MINUTE), to: instant(now - 10 * MINUTE) };
  const next = { from: instant(now + 20 * MINUTE), to: instant(now + 300 * MINUTE) };
  expect(at({ air, power, supply: [stop, next] }).said('run-generator').verdict).toBe('leave');
});

test('a slow rise without cycle may be power, unit, setting or door, to one probe in the air', () => {
  const { room, said } = at({ air: after(60, (m) => 20 - 17 * Math.exp(-m / 360)) });
  expect(room.sure).toBe('cannot-tell');
  expect(room.among).toEqual(['power', 'unit', 'controller', 'door']);
  expect(said('see-to-unit')).toMatchObject({ verdict: 'act', alarm: 'unit' });
});

test('a unit that does not start where it always starts is told before the air is far out', () => {
  const power: Course = (ago) => (ago <= 33 ? 3 : 450);
  const air = after(30, (m) => 3 + 0.05 * m);
  const { room, said } = at({ air, power });
  expect(room.among).toEqual(['unit', 'controller']);
  expect(said('see-to-unit').verdict).toBe('act');
});

test('a unit that stops half-way down is told within minutes', () => {
  const power: Course = (ago) => (ago <= 5 ? 3 : 450);
  const { room } = at({ air: after(5, (m) => 3.4 + 0.02 * m), power });
  expect(room.among).toEqual(['unit', 'controller']);
  const inPause: Course = (ago) => (ago <= 5 ? 3 : 450);
  expect(at({ air: after(5, (m) => 2 + 0.1 * m), power: inPause }).acts).toEqual([]);
});

test('air that rests on its way down is a slow loss, for today and not for tonight', () => {
  const air = after(70, (m) =>
    m < 10 ? 3 + 0.13 * m : Math.max(3.6 + 0.04 * Math.sin(m), 4.3 - 0.1 * (m - 10)),
  );
  const { room, said } = at({ air });
  expect(room.among).toContain('unit');
  expect(said('see-to-unit')).toMatchObject({ verdict: 'act' });
  const short = after(28, (m) =>
    m < 10 ? 3 + 0.13 * m : Math.max(3.6 + 0.04 * Math.sin(m), 4.3 - 0.1 * (m - 10)),
  );
  expect(at({ air: short }).acts).toEqual([]);
});

test.for([
  { by: 1, wakes: null },
  { by: -1.5, wakes: null },
  { by: 3, wakes: 'unit' }, // its middle is above the limit of 5 °C
  { by: -3.2, wakes: 'unit' }, // below freezing
])(
  'a whole cycle that lies $by K elsewhere is a changed setting, and wakes only beyond a limit',
  ({ by, wakes }) => {
    const air: Course = (ago) => cycle(-ago) + (ago <= 130 ? by : 0);
    const { room, said } = at({ air });
    expect(room).toMatchObject({ cause: 'controller', among: ['controller'] });
    expect(said('see-to-unit')).toMatchObject({ verdict: 'act', alarm: wakes });
  },
);

test('a cycle that moved and then ends is a stop again, and so is one out of shape', () => {
  const air: Course = (ago) =>
    ago > 70 ? cycle(-ago) + (ago <= 200 ? 1 : 0) : 4.5 + 0.03 * (70 - ago);
  expect(at({ air }).room.cause).toBe('unclear');
  const slow: Course = (ago) => 5.2 + 0.8 * Math.sin(ago / 14);
  expect(at({ air: slow }).room.cause).not.toBe('controller');
});

test('a warm load that comes down evenly asks for nothing', () => {
  const air = after(90, (m) => (m < 8 ? 3 + 0.6 * m : 2.5 + 5.3 * Math.exp(-(m - 8) / 90)));
  const { acts, room } = at({ air });
  expect(acts).toEqual([]);
  expect(room.pullDown).not.toBeNull();
});

test('one value again and again is the probe, and no alarm about the room', () => {
  const { room, said } = at({ air: after(90, () => 3.5) });
  expect(room.cause).toBe('probe');
  expect(said('see-to-unit').verdict).toBe('leave');
});
