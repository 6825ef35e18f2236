import type { TrialFault } from '../../simulators/coolRoomTrial.ts';
import { type Fitted, runTrial, type TrialResult } from './faultTrial.ts';

// Which trials make the table, and how long each may go on.

export type Job = {
  readonly seed: number;
  readonly fault: TrialFault;
  readonly fitted: Fitted;
  /** Door openings of a working day: 8 is a quiet room, 20 a busy one. */
  readonly openings: number;
};

export const faults = [
  'power-cut',
  'unit-stopped',
  'fan-stopped',
  'refrigerant',
  'door-open',
  'door-ajar',
  'set-in-fahrenheit',
  'set-in-celsius',
  'probe-stuck',
] as const satisfies readonly TrialFault[];
export const harmless = ['warm-load', 'hot-day'] as const satisfies readonly TrialFault[];

/** Hours that a fault is watched for, and that a quiet room is. */
const HOURS: Partial<Record<TrialFault, number>> = {
  refrigerant: 72,
  'fan-stopped': 48,
  'door-ajar': 48,
  'warm-load': 24,
  'hot-day': 36,
  none: 30 * 24,
};
const USUAL_HOURS = 10;

/** What each way of fitting a room can be asked about. */
export const asked: Readonly<Record<Fitted, readonly TrialFault[]>> = {
  air: [...faults, ...harmless, 'none'],
  meter: ['power-cut', 'unit-stopped', 'set-in-celsius'],
  contact: ['door-open', 'door-ajar'],
  coil: ['power-cut', 'unit-stopped', 'fan-stopped', 'refrigerant'],
  all: [...faults, ...harmless],
};

/** Jobs of one seed stay together: they begin from one store. */
export const jobsOf = (seeds: readonly number[]): Job[] =>
  seeds.flatMap((seed) =>
    (Object.keys(asked) as Fitted[]).flatMap((fitted) =>
      asked[fitted].map((fault) => ({ seed, fault, fitted, openings: 8 })),
    ),
  );

export const runJob = (job: Job): TrialResult =>
  runTrial(job, HOURS[job.fault] ?? USUAL_HOURS, job.openings);
