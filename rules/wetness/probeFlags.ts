import { HOUR, type Instant, instant, MINUTE } from '../units.ts';
import type { Window } from './wetPieces.ts';
import type { AirRead } from './wetSign.ts';

// All ours, from no source. Polymer probes kept damp for days read high by up to a few percent, and
// recover when dried (from memory).
const CREEPS_AT = 98; // %
const CREEPS_AFTER = 48 * HOUR;
const RECOVERS_BELOW = 90; // %
const DAMP_AT = 99.5; // %
const DAMP_AFTER = 12 * HOUR;
const HOT_APART = 4; // K between two probes of one place
const TOGETHER = 10 * MINUTE; // readings of two probes that are compared

/**
 * A run of humidity at `from` % or more that nothing under `until` % has broken, when it has
 * lasted longer than `longer`; null otherwise. Silent time neither breaks nor proves it: a run is
 * reckoned between its own readings.
 */
function highSince(
  readings: readonly AirRead[],
  { at, below, longer }: { readonly at: number; readonly below: number; readonly longer: number },
): Instant | null {
  let since: number | null = null;
  let last = 0;
  for (const { t, humidity } of readings) {
    if (humidity === null) continue;
    if (humidity < below) since = null;
    else if (humidity >= at) {
      since ??= t;
      last = t;
    }
  }
  return since !== null && last - since > longer ? instant(since) : null;
}

/**
 * Since when a humidity probe is possibly creeping: 98 % or more for over 48 h without a dip
 * below 90. null when it is not. Such a probe reads high until it has been dried.
 */
export const possiblyCreeping = (readings: readonly AirRead[]): Instant | null =>
  highSince(readings, { at: CREEPS_AT, below: RECOVERS_BELOW, longer: CREEPS_AFTER });

/**
 * Since when a probe has been saturated, 99.5 % or more for over 12 h without a lower reading; null
 * when it is not. The time still counts as wet; the probe itself may be wet.
 */
export const dampProbe = (readings: readonly AirRead[]): Instant | null =>
  highSince(readings, { at: DAMP_AT, below: DAMP_AT, longer: DAMP_AFTER });

/**
 * Which of two probes of one place may stand in the sun: the warmer one, when any two readings less
 * than 10 min apart in the middle of the day (10:00 to 16:00) differ by more than 4 K. null when
 * neither. A heat task is still raised; wetness is taken from the cooler probe.
 */
export function sunStruck(
  a: readonly AirRead[],
  b: readonly AirRead[],
  midday: Window,
): 'first' | 'second' | null {
  for (const one of a) {
    if (one.temperature === null || one.t < midday.from || one.t > midday.to) continue;
    for (const other of b) {
      if (other.temperature === null || Math.abs(other.t - one.t) > TOGETHER) continue;
      const apart = one.temperature - other.temperature;
      if (Math.abs(apart) > HOT_APART) return apart > 0 ? 'first' : 'second';
    }
  }
  return null;
}
