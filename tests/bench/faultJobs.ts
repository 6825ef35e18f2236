import type { TrialFault } from '../../simulators/coolRoomTrial.ts';
import type { Fitted } from './faultBase.ts';
import { runTrial, type TrialJob, type TrialResult } from './faultTrial.ts';

// Which trials make the table, and how long each may go on.

/** One line of the table: the same trial in the rooms of all seeds. */
export type Row = Omit<TrialJob, 'seed'>;

export const faults = [
  'power-cut',
  'unit-stopped',
  'fan-stopped',
  'refrigerant',
  'defrost-stuck',
  'door-open',
  'door-ajar',
  'set-in-fahrenheit',
  'set-in-celsius',
  'set-warmer',
  'set-colder',
  'probe-stuck',
] as const satisfies readonly TrialFault[];
export const harmless = [
  'defrosts',
  'long-defrost',
  'warm-load',
  'hot-day',
] as const satisfies readonly TrialFault[];

/** Hours that a fault is watched for, and that a room without one is. */
const HOURS: Partial<Record<TrialFault, number>> = {
  refrigerant: 72,
  'fan-stopped': 48,
  'door-ajar': 48,
  defrosts: 36,
  'long-defrost': 12,
  'warm-load': 24,
  'hot-day': 36,
  none: 30 * 24,
};
const USUAL_HOURS = 10;
/** These are told without waking anybody: what they are called in the end is asked for. */
const WATCHED_ON: readonly TrialFault[] = ['set-warmer', 'set-colder'];

/** What each way of fitting a room can be asked about. */
const asked: Readonly<Record<Fitted, readonly TrialFault[]>> = {
  air: [...faults, ...harmless],
  meter: ['power-cut', 'unit-stopped', 'refrigerant', 'defrost-stuck', 'set-in-celsius'],
  contact: ['door-open', 'door-ajar'],
  coil: ['power-cut', 'unit-stopped', 'fan-stopped', 'refrigerant', 'defrost-stuck'],
  // With everything fitted only what one probe alone cannot tell is asked again.
  all: [
    'power-cut',
    'unit-stopped',
    'fan-stopped',
    'refrigerant',
    'door-open',
    'probe-stuck',
    'warm-load',
    'hot-day',
  ],
};

const QUIET = 8;
const BUSY = 20;

const rowsOf = (fitted: Fitted): Row[] =>
  asked[fitted].map((fault) => ({ fault, fitted, openings: QUIET }));

export const rows: readonly Row[] = [
  ...(['air', 'meter', 'contact', 'coil'] as const).flatMap(rowsOf),
  { fault: 'none', fitted: 'air', openings: QUIET },
  { fault: 'none', fitted: 'air', openings: BUSY },
  ...rowsOf('all'),
];

export const nameOf = ({ fault, fitted, openings }: Row) =>
  `${fitted}-${fault}${openings === BUSY ? '-busy' : ''}`;

export const runJob = (job: TrialJob): TrialResult =>
  runTrial(job, HOURS[job.fault] ?? USUAL_HOURS, !WATCHED_ON.includes(job.fault));
