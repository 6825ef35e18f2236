import type { Kelvin, Minutes } from '../units.ts';

// The evidence for each cause of trouble in a cool room. Thresholds are common practice, no source.

/** What has been seen of a room; null is not known, never "no". */
export type RoomFacts = {
  /** Steepest rise of the air in 5 minutes, K. */
  readonly riseIn5Minutes: Kelvin | null;
  /** Minutes from the peak until the air was back on its way down; Infinity while it is not. */
  readonly minutesToFall: Minutes | null;
  /** Whether the door's contact said open; null without a contact. */
  readonly doorOpen: boolean | null;
  /** Whether humidity jumped with the air; null without a probe. */
  readonly humidityJumped: boolean | null;
  readonly staysUp: boolean | null;
  readonly compressorRuns: boolean | null;
  /** Whether a defrost was due by the interval learned here. */
  readonly defrostDue: boolean | null;
  readonly riseMinutes: Minutes | null;
  /** Length of a defrost learned here. */
  readonly defrostMinutes: Minutes | null;
  readonly recovers: boolean | null;
  /** Minutes the supply-present input has been off; an idle compressor is not enough. */
  readonly supplyOffMinutes: Minutes | null;
  readonly plannedOff: boolean;
  /** r2 of the fit of fitTimeConstant to the rise. */
  readonly logLinearR2: number | null;
  /** Whether the air still goes up and down. */
  readonly cycles: boolean | null;
  /** Minutes without compressor current while above set point + differential, supply present. */
  readonly idleWhileWarmMinutes: Minutes | null;
  /** Change of the running share in 3 days at equal outside less inside, 0..1. */
  readonly dutyRise: number | null;
  /** Running share over the last 3 hours. */
  readonly dutyOf3Hours: number | null;
  readonly bottomsCreepUp: boolean | null;
  readonly bandMoved: boolean | null;
  readonly shapeKept: boolean | null;
  readonly dutyFell: boolean | null;
  /** Whether a put-away was logged at the step. */
  readonly putAway: boolean | null;
  readonly stepDecays: boolean | null;
  /** What readingFlags and seriesFlags found wrong with the room's probe. */
  readonly sensorFlags: readonly string[];
};

export type Fault =
  | 'door'
  | 'door-ajar'
  | 'defrost'
  | 'power-loss'
  | 'unit-stopped'
  | 'slow-failure'
  | 'set-point-change'
  | 'warm-load'
  | 'sensor';

export type Check = {
  /** Term that hub/words turns into a label. */
  readonly what: string;
  readonly value: number | boolean | string | null;
  readonly unit: string;
  readonly limit: number | boolean | null;
  /** null: not known. */
  readonly holds: boolean | null;
};

const DOOR_RISE = 1; // K in 5 minutes; a stopped unit makes a fifth to a twentieth of it
const DOOR_FALLS_WITHIN = 30; // minutes from the peak
const DEFROST_LENGTH = 1.5; // times the length learned
const SUPPLY_HOLD = 5; // minutes
const LOG_LINEAR = 0.98; // r2
const UNIT_HOLD = 10; // minutes
const DUTY_RISE = 0.15; // of the running share in 3 days
const DUTY_MOST = 0.9; // running share over 3 hours

const atLeast = (what: string, value: number | null, limit: number, unit: string): Check => ({
  what,
  value,
  unit,
  limit,
  holds: value === null ? null : value >= limit,
});
const within = (what: string, value: number | null, limit: number | null, unit: string): Check => ({
  what,
  value,
  unit,
  limit,
  holds: value === null || limit === null ? null : value <= limit,
});
const is = (what: string, value: boolean | null, limit = true): Check => ({
  what,
  value,
  unit: '',
  limit,
  holds: value === null ? null : value === limit,
});
/** One of several that is enough: true if any holds, unknown if none does and one is not known. */
const anyOf = (checks: readonly Check[]): boolean | null =>
  checks.some(({ holds }) => holds === true)
    ? true
    : checks.some(({ holds }) => holds === null)
      ? null
      : false;

/** A contact or probe that is not fitted can neither agree nor disagree. */
const ifFitted = (what: string, value: boolean | null): readonly Check[] =>
  value === null ? [] : [is(what, value)];

export type Signature = {
  readonly fault: Fault;
  readonly checks: readonly Check[];
  /** null: not known. */
  readonly holds: boolean | null;
};

function signature(fault: Fault, all: readonly Check[], either: readonly Check[] = []): Signature {
  const holds = [...all.map((check) => check.holds), ...(either.length > 0 ? [anyOf(either)] : [])];
  return {
    fault,
    checks: [...all, ...either],
    holds: holds.includes(false) ? false : holds.includes(null) ? null : true,
  };
}

/** The evidence for and against each cause. */
export function signatureChecks(facts: RoomFacts): readonly Signature[] {
  const onset = atLeast('rise-in-5-minutes', facts.riseIn5Minutes, DOOR_RISE, 'K');
  const { defrostMinutes } = facts;
  const longest = defrostMinutes === null ? null : DEFROST_LENGTH * defrostMinutes;
  const notPlanned = is('planned-off', facts.plannedOff, false);
  const loss = [
    atLeast('supply-off', facts.supplyOffMinutes, SUPPLY_HOLD, 'min'),
    // The straight logarithm counts only where the air no longer cycles.
    {
      ...atLeast('log-linear-rise', facts.logLinearR2, LOG_LINEAR, ''),
      holds: bothHold(
        atLeast('', facts.logLinearR2, LOG_LINEAR, '').holds,
        is('', facts.cycles, false).holds,
      ),
    },
  ];
  const fading = [
    atLeast('duty-rise', facts.dutyRise, DUTY_RISE, ''),
    {
      ...atLeast('duty', facts.dutyOf3Hours, DUTY_MOST, ''),
      holds: over(facts.dutyOf3Hours, DUTY_MOST),
    },
    is('bottoms-creep-up', facts.bottomsCreepUp),
  ];
  return [
    signature('door', [
      onset,
      ...ifFitted('door-open', facts.doorOpen),
      ...ifFitted('humidity-jumped', facts.humidityJumped),
      within('minutes-to-fall', facts.minutesToFall, DOOR_FALLS_WITHIN, 'min'),
    ]),
    signature('door-ajar', [
      onset,
      is('stays-up', facts.staysUp),
      is('compressor-runs', facts.compressorRuns),
    ]),
    signature('defrost', [
      is('defrost-due', facts.defrostDue),
      within('rise-minutes', facts.riseMinutes, longest, 'min'),
      is('recovers', facts.recovers),
    ]),
    signature('power-loss', [notPlanned], loss),
    signature('unit-stopped', [
      atLeast('idle-while-warm', facts.idleWhileWarmMinutes, UNIT_HOLD, 'min'),
    ]),
    signature('slow-failure', [], fading),
    signature('set-point-change', [
      is('band-moved', facts.bandMoved),
      is('shape-kept', facts.shapeKept),
      is('duty-fell', facts.dutyFell),
    ]),
    signature('warm-load', [is('put-away', facts.putAway), is('step-decays', facts.stepDecays)]),
    signature('sensor', [
      {
        what: 'sensor-flags',
        value: facts.sensorFlags.join(' '),
        unit: '',
        limit: null,
        holds: facts.sensorFlags.length > 0,
      },
    ]),
  ];
}

const over = (value: number | null, limit: number) => (value === null ? null : value > limit);

const bothHold = (a: boolean | null, b: boolean | null): boolean | null =>
  a === false || b === false ? false : a === null || b === null ? null : true;
