import { expect, test } from 'vitest';
import {
  type CoolRoom,
  type CoolRoomMinute,
  firstCoolRoom,
  coolRoomKind as kind,
  nextCoolRoom,
} from '../../simulators/coolRoom.ts';

const MINUTE = 60_000;
const begins = Date.parse('2026-04-01T01:00:00Z'); // between two defrosts

function run(minutes: number, what: (minute: number) => Partial<CoolRoomMinute> = () => ({})) {
  let room = firstCoolRoom(begins, kind);
  const all: CoolRoom[] = [];
  for (let minute = 1; minute <= minutes; minute++) {
    const t = begins + minute * MINUTE;
    room = nextCoolRoom(room, kind, { t, around: 14, supply: true, door: 0, ...what(minute) });
    all.push(room);
  }
  return all;
}

test('shut and supplied, the air saws between cutting in and cutting out', () => {
  const all = run(280).slice(60);
  const air = all.map((room) => room.air);
  const edge = 1; // K: the bulb lags the air, and a cold coil goes on cooling after the compressor
  expect(Math.min(...air)).toBeGreaterThan(kind.setPoint - kind.differential / 2 - edge);
  expect(Math.max(...air)).toBeLessThan(kind.setPoint + kind.differential / 2 + edge);
  const starts = all.filter((room, at) => room.compressor && !all[at - 1]?.compressor).length;
  expect(starts).toBeGreaterThan(2);
});

test('without supply the power is exactly zero and the meter stands still', () => {
  const all = run(200, (minute) => ({ supply: minute <= 100 }));
  const off = all.slice(100);
  expect(new Set(off.map(({ power }) => power))).toEqual(new Set([0]));
  expect(new Set(off.map(({ energy }) => energy)).size).toBe(1);
  expect(all.slice(0, 100).every(({ power }) => power >= kind.standing)).toBe(true);
});

test('with supply but a stopped compressor the controller still draws its few watts', () => {
  const all = run(240, () => ({ strength: 0 }));
  expect(new Set(all.map(({ power }) => power))).toEqual(new Set([kind.standing]));
  expect(all.at(-1)?.air).toBeGreaterThan(kind.setPoint + 1);
});

test('with the supply off the room warms without a break, produce behind air', () => {
  const off = run(400, (minute) => ({ supply: minute <= 60 })).slice(61);
  for (const [at, room] of off.entries()) {
    const last = off[at - 1];
    if (!last || at <= 30) continue; // the air may still be colder than the produce
    expect(room.produce).toBeGreaterThan(last.produce);
    expect(room.air).toBeGreaterThan(last.air);
    expect(room.air).toBeGreaterThan(room.produce);
  }
  expect(off.at(-1)?.air).toBeGreaterThan(4.5);
  expect(off.at(-1)?.air).toBeLessThan(14);
});

test('heat that came in less heat taken out is what air, walls, produce and coil kept', () => {
  const all = run(700, (minute) => ({
    supply: minute < 300 || minute > 420,
    door: minute % 90 ? 0 : 1,
  }));
  const [first, last] = [all[0], all.at(-1)];
  if (!first || !last) throw new Error('Expected a run of some minutes, got none');
  const kept =
    1000 * kind.airHeat * (last.air - first.air) +
    1000 * kind.produceHeat * (last.produce - first.produce) +
    1000 * kind.wallHeat * (last.wall - first.wall) +
    1000 * kind.coilHeat * (last.coil - first.coil);
  const net = all.slice(1).reduce((sum, { gained, taken }) => sum + gained - taken, 0);
  expect(Math.abs(kept - net)).toBeLessThan(1); // J, of some tens of millions
});

test('an open door warms the air faster than a stopped unit does', () => {
  const after = (what: (minute: number) => Partial<CoolRoomMinute>) => {
    const all = run(100, (minute) => (minute > 90 ? what(minute) : {}));
    return (all.at(-1)?.air ?? 0) - (all.at(-11)?.air ?? 0);
  };
  const door = after(() => ({ door: 1, supply: false }));
  const stopped = after(() => ({ supply: false }));
  expect(door).toBeGreaterThan(3 * Math.max(0.05, stopped));
});

test('the meter counts the power drawn', () => {
  const all = run(600);
  const drawn = all.slice(1).reduce((sum, { power }) => sum + power / 60_000, 0);
  expect((all.at(-1)?.energy ?? 0) - (all[0]?.energy ?? 0)).toBeCloseTo(drawn, 9);
});
