import type { TrialFault } from '../../simulators/coolRoomTrial.ts';
import type { TrialResult } from './faultTrial.ts';
import { quantile } from './report.ts';

// The table of what the trials gave, for people and for the test of its short form.

export type FaultRow = {
  readonly fault: TrialFault;
  readonly fitted: string;
  readonly trials: number;
  readonly found: number;
  /** Minutes to the task: middle, 90th percentile, longest; null for none found. */
  readonly half: number | null;
  readonly ninth: number | null;
  readonly last: number | null;
  /** Middle and longest from the minute on at which the unit did otherwise than without the fault. */
  readonly shown: number | null;
  readonly lastShown: number | null;
  /** Middle of the minutes to the first alarm, and how many came to one. */
  readonly alarm: number | null;
  readonly woke: number;
  /** K that the produce had warmed by the fault at the task, the most of all. */
  readonly warmed: number | null;
  /** How many were told before the produce had warmed by a kelvin. */
  readonly underOne: number;
  /** Named right; told that it can't be told, with the right one among; none named; wrong. */
  readonly right: number;
  readonly cannotTell: number;
  readonly unnamed: number;
  readonly wrong: number;
  /** Named right by the end, where it was watched on. */
  readonly rightAtEnd: number;
};

const TRUTH: Partial<Record<TrialFault, string>> = {
  'power-cut': 'power',
  'unit-stopped': 'unit',
  'fan-stopped': 'unit',
  refrigerant: 'unit',
  'defrost-stuck': 'unit',
  'door-open': 'door',
  'door-ajar': 'door',
  'set-in-fahrenheit': 'controller',
  'set-in-celsius': 'controller',
  'set-warmer': 'controller',
  'set-colder': 'controller',
  'probe-stuck': 'probe',
};

export function faultRow(results: readonly TrialResult[]): FaultRow {
  const [first] = results;
  if (first === undefined) throw new Error('Expected at least one trial, got none');
  const minutes = results.flatMap((result) => result.minutes ?? []);
  const found = results.filter((result) => result.minutes !== null);
  const truth = TRUTH[first.fault] ?? '';
  const right = found.filter(({ cause }) => cause === truth).length;
  const cannotTell = found.filter(
    ({ cause, among }) => cause === 'unclear' && among.includes(truth),
  ).length;
  const unnamed = found.filter(({ cause }) => cause === null).length;
  const at = (share: number) => (minutes.length === 0 ? null : quantile(minutes, share));
  const warmed = found.flatMap((result) => result.warmed ?? []);
  const shown = found.flatMap((result) => result.shown ?? []);
  const alarms = results.flatMap(({ alarm }) => alarm ?? []);
  return {
    ...{ fault: first.fault, fitted: first.fitted, trials: results.length, found: found.length },
    ...{ half: at(0.5), ninth: at(0.9), last: at(1) },
    shown: shown.length === 0 ? null : quantile(shown, 0.5),
    lastShown: shown.length === 0 ? null : quantile(shown, 1),
    alarm: alarms.length === 0 ? null : quantile(alarms, 0.5),
    woke: alarms.length,
    rightAtEnd: results.filter(({ causeAtEnd }) => causeAtEnd === truth).length,
    warmed: warmed.length === 0 ? null : Math.max(...warmed),
    underOne: warmed.filter((kelvin) => kelvin < 1).length,
    ...{ right, cannotTell, unnamed, wrong: found.length - right - cannotTell - unnamed },
  };
}

const cell = (value: number | null, digits = 0) => (value === null ? '-' : value.toFixed(digits));

export function lineOf(row: FaultRow): string {
  const { fault, fitted, trials, found, half, ninth, last, warmed } = row;
  return [
    `${fault.padEnd(18)} ${fitted.padEnd(8)} found ${found}/${trials}`,
    `minutes ${cell(half)} / ${cell(ninth)} / ${cell(last)}`,
    `since it showed ${cell(row.shown)} / ${cell(row.lastShown)}`,
    `woke ${row.woke} at ${cell(row.alarm)}`,
    `produce +${cell(warmed, 2)} K, under 1 K ${row.underOne}`,
    `cause right ${row.right}, cannot tell ${row.cannotTell}, none ${row.unnamed}, wrong ${row.wrong}`,
    `right at the end ${row.rightAtEnd}`,
  ].join('  ');
}

export type FalseRow = {
  readonly days: number;
  /** Tasks, and of these the ones that woke somebody; a door that did stand open is not false. */
  readonly tasks: number;
  readonly alarms: number;
  readonly open: number;
};

export function falseRow(results: readonly TrialResult[]): FalseRow {
  const all = results.flatMap(({ falseTasks }) => falseTasks);
  const wrong = all.filter((text) => !text.includes('stood open'));
  return {
    days: results.reduce((sum, { quietDays }) => sum + quietDays, 0),
    tasks: wrong.length,
    alarms: wrong.filter((text) => text.includes('!')).length,
    open: all.length - wrong.length,
  };
}
