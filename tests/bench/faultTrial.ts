import { steppedClock } from '../../hub/clock.ts';
import { joinCore } from '../../hub/main/core.ts';
import { importFarm } from '../../hub/main/farm/farmKept.ts';
import { openStore } from '../../hub/store/index.ts';
import type { Evidence } from '../../rules/decide/index.ts';
import {
  createTrial,
  type TrialFault,
  type TrialMinute,
  type TrialState,
} from '../../simulators/coolRoomTrial.ts';
import {
  copyOfBase,
  DAY,
  type Fitted,
  farmOf,
  fitted,
  HOUR,
  LOOK,
  looksFrom,
  MINUTE,
  onsetOf,
  quiet,
  readingsOf,
} from './faultBase.ts';

// One cool room, one fault, and the whole hub: readings go through intake and store as they come,
// a look every five minutes and whenever a reading crosses a limit, tasks through patience. What is
// asked for is what a person would have seen, at the minute they would have seen it.

export type TrialJob = {
  readonly seed: number;
  readonly fault: TrialFault;
  readonly fitted: Fitted;
  /** Door openings of a working day: 8 is a quiet room, 20 a busy one. */
  readonly openings: number;
};

export type TrialResult = TrialJob & {
  /** Minutes from the fault to the first task; null when none came in time. */
  readonly minutes: number | null;
  /** The same from the minute on at which the unit did otherwise than it would have without the fault. */
  readonly shown: number | null;
  readonly task: string | null;
  /** Minutes to the first alarm that wakes somebody. */
  readonly alarm: number | null;
  readonly cause: string | null;
  readonly sure: string | null;
  readonly among: readonly string[];
  /** The cause told last, while it was watched on. */
  readonly causeAtEnd: string | null;
  /** K by which the middle of the produce had warmed by then. */
  readonly warmed: number | null;
  /** Tasks opened while nothing was wrong, and of these those of a door that did stand open. */
  readonly falseTasks: readonly string[];
  /** Days without a fault that were looked at. */
  readonly quietDays: number;
  /** Times the same task was opened again. */
  readonly again: number;
};

const HARMLESS: readonly TrialFault[] = [
  'warm-load',
  'hot-day',
  'defrosts',
  'long-defrost',
  'none',
];
export const isHarmless = (fault: TrialFault) => HARMLESS.includes(fault);

const told = ({ because }: { readonly because: readonly Evidence[] }) =>
  because
    .filter(({ what }) => what !== 'drop-in-risk' && what !== 'cycle-bottom-above')
    .map(({ what, value, limit }) => `${what} ${value}${limit === null ? '' : `/${limit}`}`)
    .join(', ');

/** What the produce would have been without the fault, and whether the unit did otherwise by now. */
function makeTwin(seed: number, onset: number, openings: number, state: TrialState) {
  const twin = createTrial({ seed, fault: 'none', from: onset, openings });
  twin.resume(state);
  let differs: number | null = null;
  return {
    step(now: TrialMinute) {
      const { room } = twin.step();
      const here = now.room;
      const same = room.compressor === here.compressor && room.supply === here.supply;
      if (now.t > onset && (!same || room.defrost !== here.defrost)) differs ??= now.t;
      return room.produce;
    },
    differsSince: () => differs,
  };
}

/** Runs one fault of one seed until its first alarm, or for `hours`. */
export function runTrial(job: TrialJob, hours: number, stopAtAlarm = true): TrialResult {
  const { seed, fault, openings } = job;
  const onset = onsetOf(seed);
  const until = looksFrom(seed);
  const base = copyOfBase(seed, openings);
  const store = openStore(base.file);
  const clock = steppedClock(until);
  importFarm(store, farmOf(job.fitted), until);
  let crossed = false;
  const onCrossing = () => {
    crossed = true;
  };
  const core = joinCore({ store, clock, log: quiet, onCrossing });
  const trial = createTrial({ seed, fault, from: onset, openings });
  trial.resume(base.state);
  const twin = makeTwin(seed, onset, openings, base.state);
  let door = base.state.room.door;
  let healthy = base.state.room.produce;
  const placed = new Set(['mast', 'room-air', ...fitted[job.fitted].map((name) => `room-${name}`)]);
  const seen = new Set<string>();
  const others = new Set<string>();
  const kinds = new Map<string, number>();
  const falseTasks: string[] = [];
  const found: { -readonly [Key in keyof TrialResult]?: TrialResult[Key] } = {};
  let openFor = 0;
  const benign = isHarmless(fault);
  const ofDoor = fault === 'door-open' || fault === 'door-ajar';

  const look = (now: TrialMinute) => {
    core.look();
    const looked = core.lastLook();
    if (!looked || looked.failure) throw new Error(`Expected a look, got ${looked?.failure}`);
    const after = now.t >= onset ? (now.t - onset) / MINUTE : null;
    const room = looked.outlook.coolRooms[0];
    if (after !== null && room?.cause) found.causeAtEnd = room.cause;
    for (const task of looked.open) {
      // A door that people left open meanwhile is another matter.
      const another = !benign && !ofDoor && task.kind === 'shut-door' && openFor >= 5;
      if (another) others.add(task.id);
      if (others.has(task.id)) continue;
      if (task.alarm !== null && after !== null) found.alarm ??= after;
      // Somebody who was told of an open door just before the fault is told of this one too.
      const stands = ofDoor && after !== null && task.kind === 'shut-door';
      if (seen.has(task.id) && !(stands && found.minutes === undefined)) continue;
      seen.add(task.id);
      kinds.set(task.key, (kinds.get(task.key) ?? 0) + 1);
      if (after === null || benign) {
        const open = openFor >= (task.kind === 'shut-door' ? 5 : 15);
        const truth = open ? ' while it stood open' : '';
        const wakes = task.alarm === null ? '' : '!';
        const when = new Date(now.t).toISOString();
        falseTasks.push(`${task.kind}${wakes}${truth} ${when} ${told(task)}`);
        if (after === null) continue;
      }
      if (found.minutes !== undefined) continue;
      const differs = twin.differsSince();
      Object.assign(found, {
        minutes: after,
        shown: differs === null ? null : (now.t - differs) / MINUTE,
        task: task.kind,
        cause: room?.cause ?? null,
        sure: room?.sure ?? null,
        among: [...(room?.among ?? [])],
        warmed: now.room.produce - healthy,
      });
    }
  };
  const end = onset + hours * HOUR;
  for (let t = until; t < end; t += MINUTE) {
    const now = trial.step();
    healthy = twin.step(now);
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
    if (stopAtAlarm && !benign && found.alarm !== undefined) break;
  }
  core.close();
  base.drop();
  return {
    ...job,
    minutes: found.minutes ?? null,
    shown: found.shown ?? null,
    task: found.task ?? null,
    alarm: found.alarm ?? null,
    cause: found.cause ?? null,
    sure: found.sure ?? null,
    among: found.among ?? [],
    causeAtEnd: found.causeAtEnd ?? null,
    warmed: found.warmed ?? null,
    falseTasks,
    quietDays: (benign ? end - until : onset - until) / DAY,
    again: [...kinds.values()].filter((count) => count > 1).length,
  };
}
