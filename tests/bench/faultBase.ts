import {
  copyFileSync,
  existsSync,
  mkdtempSync,
  readFileSync,
  renameSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pino } from 'pino';
import { steppedClock } from '../../hub/clock.ts';
import type { RawReading } from '../../hub/intake/index.ts';
import { joinCore } from '../../hub/main/core.ts';
import { importFarm } from '../../hub/main/farm/farmKept.ts';
import { openStore } from '../../hub/store/index.ts';
import { createTrial, type TrialMinute, type TrialState } from '../../simulators/coolRoomTrial.ts';
import { createChance } from '../../simulators/seed.ts';

// The days before a fault: one store a seed, filled through intake, from which each of its trials
// begins with a copy, and the room as it stood then.

export const MINUTE = 60_000;
export const HOUR = 60 * MINUTE;
export const DAY = 24 * HOUR;
const BEGIN = Date.parse('2026-05-20T00:00:00Z');
const LEARN = 15 * DAY;
export const LOOK = 5 * MINUTE;
/** Looks begin this long before the fault, so that what stands by then is seen to be false. */
const BEFORE = 6 * HOUR;

export const quiet = pino({ level: 'error' }, pino.destination(2));

/** What hangs in the room besides the probe in its air. */
export const fitted = {
  air: [],
  meter: ['power'],
  contact: ['door'],
  coil: ['temperature'],
  all: ['power', 'door', 'temperature'],
} as const satisfies Readonly<Record<string, readonly string[]>>;
export type Fitted = keyof typeof fitted;

export const farmOf = (
  probes: Fitted,
) => `farm: { name: Trials (invented), zone: UTC, lat: 52, lon: -7, money: EUR, wage: 15 }
places:
  - { id: outside, name: Outside, kind: outdoor }
  - { id: room, name: Cool room, kind: cool-room, setPoint: 3, limit: 5, value: 400 }
probes:
  - { id: mast, place: outside, spot: air, every: 5m }
  - { id: room-air, place: room, spot: air, every: 1m }
${fitted[probes].map((name) => `  - { id: room-${name}, place: room, spot: unit, every: 1m }`).join('\n')}
`;

/** When the fault of this seed begins: at any minute of the first day after the days of learning. */
export const onsetOf = (seed: number) =>
  BEGIN + LEARN + Math.floor(1440 * createChance(seed, 'trial onset').uniform(1)) * MINUTE;
/** When the looks begin. */
export const looksFrom = (seed: number) => Math.floor((onsetOf(seed) - BEFORE) / LOOK) * LOOK;

export function* readingsOf(
  minute: TrialMinute,
  doorWas: number,
): Generator<RawReading & { t: number }> {
  const { t, room, air, coil, outside } = minute;
  const read = (probe: string, quantity: RawReading['quantity'], value: number) => ({
    ...{ probe, quantity, t, value },
  });
  yield read('room-air', 'temperature', air);
  yield read('room-temperature', 'temperature', coil);
  yield read('room-power', 'power', Math.round(room.power * 10) / 10);
  // A contact speaks when it changes, and now and then to be heard.
  if (room.door > 0 !== doorWas > 0 || t % (10 * MINUTE) === 0) {
    yield read('room-door', 'door', room.door > 0 ? 1 : 0);
  }
  if (t % LOOK === 0) yield read('mast', 'temperature', Math.round(outside * 10) / 10);
}

// In memory where the machine has a folder for it: these stores are thrown away, and there are many.
// Processes that share the work share the folder; the one that made it takes it away.
const given = process.env.DEWPOST_TRIALS;
export const folder =
  given ?? mkdtempSync(join(existsSync('/dev/shm') ? '/dev/shm' : tmpdir(), 'dewpost-trials-'));
if (given === undefined) {
  process.on('exit', () => rmSync(folder, { recursive: true, force: true }));
}

export type Base = { readonly file: string; readonly state: TrialState };

/** The store of a seed after its days of learning, all probes read and none placed. */
function baseOf(seed: number, openings: number): Base {
  const file = join(folder, `base-${seed}-${openings}.db`);
  const told = `${file}.json`;
  if (existsSync(told)) return { file, state: JSON.parse(readFileSync(told, 'utf8')) };
  const until = looksFrom(seed);
  const making = `${file}.${process.pid}`;
  const store = openStore(making);
  const clock = steppedClock(until);
  importFarm(store, farmOf('air'), 0);
  const core = joinCore({ store, clock, log: quiet });
  const trial = createTrial({ seed, fault: 'none', from: until + DAY, openings });
  trial.beginAt(BEGIN);
  let batch: RawReading[] = [];
  let door = 0;
  const write = () => {
    core.intake.receiveReadings(batch, until, (error) => {
      if (error) throw error;
    });
    core.intake.flush();
    batch = [];
  };
  for (let t = BEGIN; t < until; t += MINUTE) {
    const minute = trial.step();
    batch.push(...readingsOf(minute, door));
    door = minute.room.door;
    if (minute.t % DAY === 0) write();
  }
  write();
  core.snapshots.fold();
  core.close();
  renameSync(making, file);
  const state = trial.state();
  writeFileSync(`${told}.${process.pid}`, JSON.stringify(state));
  renameSync(`${told}.${process.pid}`, told); // last: whoever sees it finds the store whole
  return { file, state };
}

let copies = 0;

/** A copy of a seed's store for one trial, the room as it stood, and what takes the copy away. */
export function copyOfBase(seed: number, openings: number): Base & { readonly drop: () => void } {
  const base = baseOf(seed, openings);
  const file = join(folder, `trial-${process.pid}-${copies++}.db`);
  copyFileSync(base.file, file);
  const drop = () => {
    for (const end of ['', '-wal', '-shm']) rmSync(`${file}${end}`, { force: true });
  };
  return { file, state: base.state, drop };
}
