import { expectRange } from '../expectRange.ts';
import { type Instant, MINUTE } from '../units.ts';

/** A figure for how many alarms people can live with. */
export type Yardstick = {
  /** Term that hub/words turns into a label. */
  readonly what: string;
  readonly most: number;
  readonly unit: string;
  readonly for: 'control-room' | 'garden';
  readonly source: string;
};

const EEMUA = 'EEMUA 191, by open summaries';
const ISA = 'ISA-18.2 / IEC 62682, from memory';
const OURS = 'common practice, no source';

/** Control-room figures are for an operator seated at a screen; a grower is in the field. */
export const alarmYardsticks: readonly Yardstick[] = [
  { what: 'alarms-steady-good', most: 1, unit: 'per 10 min', for: 'control-room', source: EEMUA },
  { what: 'alarms-steady', most: 2, unit: 'per 10 min', for: 'control-room', source: EEMUA },
  { what: 'alarms-upset', most: 10, unit: 'in 10 min', for: 'control-room', source: EEMUA },
  { what: 'share-low', most: 80, unit: '%', for: 'control-room', source: EEMUA },
  { what: 'share-medium', most: 15, unit: '%', for: 'control-room', source: EEMUA },
  { what: 'share-high', most: 5, unit: '%', for: 'control-room', source: EEMUA },
  { what: 'alarms-acceptable', most: 150, unit: 'per day', for: 'control-room', source: ISA },
  { what: 'alarms-at-most', most: 300, unit: 'per day', for: 'control-room', source: ISA },
  { what: 'chattering-from', most: 3, unit: 'in 1 min', for: 'control-room', source: ISA },
  { what: 'stale-after', most: 24, unit: 'h', for: 'control-room', source: ISA },
  { what: 'false-urgent', most: 1, unit: 'per 30 d', for: 'garden', source: OURS },
  { what: 'notices', most: 3, unit: 'per day', for: 'garden', source: OURS },
  { what: 'second-person-after', most: 10, unit: 'min', for: 'garden', source: OURS },
  { what: 'third-person-after', most: 20, unit: 'min', for: 'garden', source: OURS },
  { what: 'shelved-usually', most: 60, unit: 'min', for: 'garden', source: OURS },
  { what: 'shelved-longest', most: 12, unit: 'h', for: 'garden', source: OURS },
  { what: 'product-shelved-longest', most: 2, unit: 'h', for: 'garden', source: OURS },
];

// Common practice, no source.
const CHATTER_CHANGES = 3;
const CHATTER_WINDOW = 30; // min
const SILENT_HUB = 5; // min; the hub's heartbeat comes each 60 s
const MISSED_REPORTS = 3;

/**
 * Whether an alarm that comes and goes is one alarm with a count: three changes in 30 minutes.
 * @param changes when it came or went
 */
export const chatters = (changes: readonly Instant[], now: Instant): boolean =>
  changes.filter((t) => t <= now && t > now - CHATTER_WINDOW * MINUTE).length >= CHATTER_CHANGES;

/** Whether the hub is to be shown as silent: no heartbeat for more than 5 minutes, or never one. */
export const hubSilent = (heartbeat: Instant | null, now: Instant): boolean =>
  heartbeat === null || now - heartbeat > SILENT_HUB * MINUTE;

/**
 * How long, in minutes, a probe may be quiet before it counts as silent: the longest time it
 * promised until its next report (SenML `ut`) where it did, else three times its report time.
 * @throws RangeError for a time outside 0..10,080 min
 */
export function silentAfterMinutes(reportsEach: number, promised: number | null = null): number {
  expectRange('report time', reportsEach, 0, 10_080, 'min');
  if (promised === null) return MISSED_REPORTS * reportsEach;
  expectRange('promised time', promised, 0, 10_080, 'min');
  return promised;
}
