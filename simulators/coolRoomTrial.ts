import {
  type CoolRoom,
  type CoolRoomKind,
  coolRoomKind,
  firstCoolRoom,
  nextCoolRoom,
} from './coolRoom.ts';
import { createChance } from './seed.ts';

// One invented cool room under one invented sky, minute by minute, with something that goes wrong at
// a known minute: for asking how soon rules see it. Rooms differ by seed in size, panels, unit,
// thermostat, load and habits; all of it is ours, from no source.

const MINUTE = 60_000;
const HOUR = 60 * MINUTE;
const DAY = 24 * HOUR;

export type TrialFault =
  | 'power-cut'
  | 'unit-stopped'
  | 'fan-stopped'
  | 'refrigerant'
  | 'door-open'
  | 'door-ajar'
  | 'set-in-fahrenheit'
  | 'set-in-celsius'
  | 'set-warmer'
  | 'set-colder'
  | 'probe-stuck'
  | 'defrost-stuck'
  // What is no fault, and asks for nothing.
  | 'warm-load'
  | 'hot-day'
  | 'defrosts'
  | 'long-defrost'
  | 'none';

export type Trial = {
  readonly seed: number;
  readonly fault: TrialFault;
  /** When it begins. */
  readonly from: number;
  /** Door openings of a working day. */
  readonly openings?: number;
};

/** All that could be measured in one minute, true values. */
export type TrialMinute = {
  readonly t: number;
  readonly outside: number;
  readonly room: CoolRoom;
  /** What the probe in the air says: slower than the air, noisy, in steps; stuck when it is. */
  readonly air: number;
  readonly coil: number;
};

/** All that the next minute depends on: a trial can be taken up again from it. */
export type TrialState = {
  readonly t: number;
  readonly room: CoolRoom;
  readonly around: number;
  readonly shown: number;
  readonly stuckAt: number | null;
};

/** A room of this seed's own: every size within a quarter of the usual one. */
export function trialKind(seed: number): CoolRoomKind {
  const chance = createChance(seed, 'trial room');
  const about = (index: number, value: number, share = 0.25) =>
    value * (1 + share * (2 * chance.uniform(index) - 1));
  const base = coolRoomKind;
  return {
    ...base,
    differential: about(1, 1.6),
    airHeat: about(2, base.airHeat),
    wallHeat: about(3, base.wallHeat),
    produceHeat: about(4, base.produceHeat, 0.5),
    walls: about(5, 18),
    leak: about(6, 6, 0.5),
    cooling: about(7, 900, 0.15),
    curtain: about(8, 0.45, 0.4),
    defrostEvery: chance.uniform(9) < 0.7 ? 6 : 8,
    defrostMinutes: Math.round(about(10, 18)),
    defrostAt: Math.floor(360 * chance.uniform(11)),
  };
}

const STEPS = 0.0625; // °C, of a 12-bit one-wire thermometer (data sheet)
const NOISE = 0.1; // K
const LAG = 120; // s of the probe behind the air

export function createTrial({ seed, fault, from, openings = 8 }: Trial) {
  const kind = trialKind(seed);
  const chance = createChance(seed, 'trial sky');
  const habit = createChance(seed, 'trial habit');
  const noise = createChance(seed, 'trial noise');
  const hot = fault === 'hot-day';
  const doors = new Map<number, { from: number; to: number; load: number }[]>();

  const outsideAt = (t: number) => {
    const hour = ((t % DAY) / HOUR + 24) % 24;
    const heat = hot && t >= from - 6 * HOUR && t < from + 30 * HOUR ? 8 : 0;
    const swing = 6 * Math.sin(((hour - 9) / 24) * 2 * Math.PI);
    return 16 + swing + 2 * chance.smooth(t / HOUR, 60) + 0.3 * chance.smooth(t / HOUR, 1.5) + heat;
  };

  const pick = createChance(seed, 'trial shift');
  const warmer = 0.8 + 0.6 * pick.uniform(1); // K by which somebody turned it
  const colder = 1 + 0.6 * pick.uniform(2);
  const setTo = (on: boolean): number | undefined => {
    if (!on) return undefined;
    // 3 typed where °F are shown, and 37 °F taken for °C.
    if (fault === 'set-in-fahrenheit') return (3 - 32) / 1.8;
    if (fault === 'set-in-celsius') return 37.4;
    if (fault === 'set-warmer') return kind.setPoint + warmer;
    return fault === 'set-colder' ? kind.setPoint - colder : undefined;
  };
  // The timer's next turn takes longer, with less than half as much again.
  const long = { ...kind, defrostMinutes: Math.round(1.4 * kind.defrostMinutes) };

  /** Openings of one day: working hours, a few minutes each, now and then a van. */
  const openingsOf = (day: number) => {
    let list = doors.get(day);
    if (list) return list;
    list = [];
    const draw = (index: number) => habit.uniform(day * 256 + index);
    const count = Math.round(openings * (0.7 + 0.6 * draw(0)));
    for (let i = 0; i < count; i++) {
      const start = Math.floor(60 * (6 + 14 * draw(1 + i)));
      // Mean about three minutes; four in a hundred stand open for a quarter of an hour more.
      const length = Math.max(1, Math.round(-2.6 * Math.log(1 - draw(64 + i))));
      const long = draw(128 + i) < 0.04 ? 8 + 12 * draw(192 + i) : 0;
      list.push({ from: start, to: start + Math.min(12, length) + Math.round(long), load: 0 });
    }
    // The morning's harvest, three days in seven a large one.
    const at = Math.floor(60 * (9 + 3 * draw(250)));
    const large = draw(251) < 0.43;
    list.push({ from: at, to: at + (large ? 9 : 4), load: large ? 90 + 80 * draw(252) : 30 });
    doors.set(day, list);
    return list;
  };

  let t = from;
  let room = firstCoolRoom(from, kind);
  let around = outsideAt(from);
  let shown = room.air;
  let stuckAt: number | null = null;

  function step(): TrialMinute {
    t += MINUTE;
    const outside = outsideAt(t);
    around += (outside + 1 - around) / 60;
    const minute = Math.floor((t % DAY) / MINUTE);
    const on = t >= from;
    const is = (...names: readonly TrialFault[]) => on && names.includes(fault);
    // Nobody comes while defrosts are looked at, so that they stand alone.
    const open = is('defrosts', 'long-defrost')
      ? []
      : openingsOf(Math.floor(t / DAY)).filter((o) => minute >= o.from && minute < o.to);
    const carried = open.find((o) => o.load > 0 && minute === o.from + 1)?.load ?? 0;
    const loading = is('warm-load') && t < from + 14 * MINUTE;
    const warm = loading && t === from + 2 * MINUTE ? 380 : 0;
    const heat = carried + warm;
    room = nextCoolRoom(room, is('long-defrost') ? long : kind, {
      t,
      around,
      supply: !is('power-cut'),
      door: is('door-open') || open.length > 0 || loading ? 1 : is('door-ajar') ? 0.3 : 0,
      load: heat > 0 ? { heat, temperature: Math.max(8, outside + 3) } : undefined,
      setPoint: setTo(on),
      strength: is('unit-stopped')
        ? 0
        : is('refrigerant')
          ? Math.max(0.05, 1 - (0.5 * (t - from)) / DAY)
          : undefined,
      fan: !is('fan-stopped'),
      defrost: is('defrost-stuck') ? true : undefined,
    });
    shown += ((room.air - shown) * 60) / LAG;
    const index = Math.floor(t / MINUTE);
    const said = Math.round((shown + NOISE * noise.normal(index)) / STEPS) * STEPS;
    if (is('probe-stuck')) stuckAt ??= said;
    const coil = Math.round((room.coil + NOISE * noise.normal(-index)) / STEPS) * STEPS;
    return { t, outside, room, air: stuckAt ?? said, coil };
  }

  return {
    kind,
    /** Begins at another time than `from`: days that go before it. */
    beginAt(begin: number) {
      t = begin;
      room = firstCoolRoom(begin, kind);
      around = outsideAt(begin);
      shown = room.air;
    },
    state: (): TrialState => ({ t, room, around, shown, stuckAt }),
    /** Goes on from where a trial of the same seed was. */
    resume(state: TrialState) {
      ({ t, room, around, shown, stuckAt } = state);
    },
    step,
  };
}
