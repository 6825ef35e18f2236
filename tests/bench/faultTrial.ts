import { copyFileSync, existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pino } from 'pino';
import { steppedClock } from '../../hub/clock.ts';
import type { RawReading } from '../../hub/intake/index.ts';
import { joinCore } from '../../hub/main/core.ts';
import { importFarm } from '../../hub/main/farmKept.ts';
import { openStore } from '../../hub/store/index.ts';
import type { Evidence } from '../../rules/decide/index.ts';
import { createTrial, type TrialFault, type TrialMinute } from '../../simulators/coolRoomTrial.ts';
import { createChance } from '../../simulators/seed.ts';

// One cool room, one fault, and the whole hub: readings go through intake and store as they come,
// a look every five minutes and whenever a reading crosses a limit, tasks through patience. What is
// asked for is what a person would have seen, at the minute they would have seen it.

// In memory where the machine has a folder for it: these stores are thrown away, and there are many.
const folder = mkdtempSync(join(existsSync('/dev/shm') ? '/dev/shm' : tmpdir(), 'dewpost-trials-'));
process.on('exit', () => rmSync(folder, { recursive: true, force: true }));
const quiet = pino({ level: 'error' }, pino.destination(2));

export const MINUTE = 60_000;
export const HOUR = 60 * MINUTE;
export const DAY = 24 * HOUR;
const BEGIN = Date.parse('2026-05-20T00:00:00Z');
const LEARN = 15 * DAY;
const LOOK = 5 * MINUTE;
/** Looks begin this long before the fault, so that what stands by then is seen to be false. */
const BEFORE = 6 * HOUR;

/** What hangs in the room besides the probe in its air. */
export const fitted = {
  air: [],
  meter: ['power'],
  contact: ['door'],
  coil: ['temperature'],
  all: ['power', 'door', 'temperature'],
} as const satisfies Readonly<Record<string, readonly string[]>>;
export type Fitted = keyof typeof fitted;

export type TrialResult = {
  readonly seed: number;
  readonly fault: TrialFault;
  readonly fitted: Fitted;
  /** Minutes from the fault to the first task; null when none came in time. */
  readonly minutes: number | null;
  readonly task: string | null;
  /** Minutes to the first alarm that wakes somebody. */
  readonly alarm: number | null;
  readonly cause: string | null;
  readonly sure: string | null;
  readonly among: readonly string[];
  /** K by which the middle of the produce had warmed by then. */
  readonly warmed: number | null;
  /** Tasks opened while nothing was wrong, and of these those of a door that did stand open. */
  readonly falseTasks: readonly string[];
  /** Days without a fault that were looked at. */
  readonly quietDays: number;
  /** Times the same task was opened again. */
  readonly again: number;
};

const farmOf = (
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

function* readingsOf(minute: TrialMinute, doorWas: number): Generator<RawReading & { t: number }> {
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

/** The newest base: seeds come one after another, and one store is enough to keep. */
let base: { readonly key: string; readonly file: string } | null = null;

/** The store of a seed after its days of learning, all probes read and none placed. */
function baseOf(seed: number, until: number, openings: number): string {
  const key = `trial-${seed}-${openings}`;
  if (base?.key === key) return base.file;
  if (base !== null) rmSync(base.file, { force: true });
  const file = join(folder, `${key}.db`);
  const store = openStore(file);
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
  base = { key, file };
  return file;
}

const told = ({ because }: { readonly because: readonly Evidence[] }) =>
  because
    .filter(({ what }) => what !== 'drop-in-risk' && what !== 'cycle-bottom-above')
    .map(({ what, value, limit }) => `${what} ${value}${limit === null ? '' : `/${limit}`}`)
    .join(', ');

let copies = 0;

/** Runs one fault of one seed until its first alarm, or for `hours`. */
export function runTrial(
  job: { readonly seed: number; readonly fault: TrialFault; readonly fitted: Fitted },
  hours: number,
  openings = 8,
  stopAtFound = true,
): TrialResult {
  const { seed, fault } = job;
  const onset = onsetOf(seed);
  const until = Math.floor((onset - BEFORE) / LOOK) * LOOK;
  const file = join(folder, `trial-copy-${copies++}.db`);
  copyFileSync(baseOf(seed, until, openings), file);
  const store = openStore(file);
  const clock = steppedClock(until);
  importFarm(store, farmOf(job.fitted), until);
  let crossed = false;
  const core = joinCore({
    store,
    clock,
    log: quiet,
    onCrossing: () => {
      crossed = true;
    },
  });
  const trial = createTrial({ seed, fault, from: onset, openings });
  trial.beginAt(BEGIN);
  // The same days without the fault: what the produce would have been.
  const twin = createTrial({ seed, fault: 'none', from: onset, openings });
  twin.beginAt(BEGIN);
  let door = 0;
  let minute: TrialMinute | null = null;
  for (let t = BEGIN; t < until; t += MINUTE) {
    minute = trial.step();
    twin.step();
    door = minute.room.door;
  }
  const placed = new Set(['mast', 'room-air', ...fitted[job.fitted].map((name) => `room-${name}`)]);
  const seen = new Set<string>();
  const kinds = new Map<string, number>();
  const falseTasks: string[] = [];
  const found: { -readonly [Key in keyof TrialResult]?: TrialResult[Key] } = {};
  let produceBefore = minute?.room.produce ?? 3;
  let openFor = 0;
  const benign = ['warm-load', 'hot-day', 'none'].includes(fault);

  const look = (now: TrialMinute) => {
    core.look();
    const looked = core.lastLook();
    if (!looked || looked.failure) throw new Error(`Expected a look, got ${looked?.failure}`);
    const after = now.t >= onset ? (now.t - onset) / MINUTE : null;
    for (const task of looked.open) {
      if (task.alarm !== null && after !== null) found.alarm ??= after;
      if (seen.has(task.id)) continue;
      seen.add(task.id);
      kinds.set(task.key, (kinds.get(task.key) ?? 0) + 1);
      if (after === null || benign) {
        const open = openFor >= (task.kind === 'shut-door' ? 5 : 15);
        const truth = open ? ' while it stood open' : '';
        falseTasks.push(
          `${task.kind}${task.alarm === null ? '' : '!'}${truth} ${new Date(now.t).toISOString()} ${told(task)}`,
        );
        if (after === null) continue;
      }
      if (found.minutes !== undefined) continue;
      const room = looked.outlook.coolRooms[0];
      Object.assign(found, {
        minutes: after,
        task: task.kind,
        cause: room?.cause ?? null,
        sure: room?.sure ?? null,
        among: [...(room?.among ?? [])],
        warmed: now.room.produce - produceBefore,
      });
    }
  };
  const end = onset + hours * HOUR;
  for (let t = until; t < end; t += MINUTE) {
    const now = trial.step();
    produceBefore = twin.step().room.produce;
    clock.set(now.t);
    openFor = now.room.door > 0 ? openFor + 1 : 0;
    const readings = [...readingsOf(now, door)].filter(({ probe }) => placed.has(probe));
    door = now.room.door;
    core.intake.receiveReadings(readings, now.t, (error) => {
      if (error) throw error;
    });
    core.intake.flush();
    if (crossed || now.t % LOOK === 0) look(now);
    crossed = false;
    if (stopAtFound && !benign && found.alarm !== undefined) break;
  }
  core.close();
  for (const end of ['', '-wal', '-shm']) rmSync(`${file}${end}`, { force: true });
  return {
    ...job,
    minutes: found.minutes ?? null,
    task: found.task ?? null,
    alarm: found.alarm ?? null,
    cause: found.cause ?? null,
    sure: found.sure ?? null,
    among: found.among ?? [],
    warmed: found.warmed ?? null,
    falseTasks,
    quietDays: (benign ? end - until : onset - until) / DAY,
    again: [...kinds.values()].filter((count) => count > 1).length,
  };
}
