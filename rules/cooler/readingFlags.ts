import type { Instant } from '../units.ts';
import { MINUTE } from '../units.ts';
import { isPowerOnValue } from './ds18b20.ts';
import { type SensorKind, sensorKinds } from './sensorKinds.ts';

// What is wrong with one reading. A rejected one is stored with its flags, raw as it came, and the
// time it stood for becomes unknown.

export type ReadingFlag =
  | 'not-known'
  | 'power-on-value'
  | 'no-sensor'
  | 'poor-supply'
  | 'out-of-range'
  | 'site-range'
  | 'over-100'
  | 'future'
  | 'not-later'
  | 'before-build';

// Codes of libraries and not of the part: no answer, and raw 0x07FF. From memory.
const NO_ANSWER = -127; // °C
const STARVED = 127.9375; // °C

// Common practice, no source.
const ROOM = { least: -10, most: 40 } as const; // °C
const OVER_100 = 102; // %: a wet capacitive probe
const AHEAD = 2; // minutes a clock may be in the future

export type ReadingToJudge = {
  readonly value: number | null;
  readonly kind: SensorKind;
  /** Last good value of the same probe; null for none. */
  readonly lastGood: number | null;
  readonly firstSinceRestart: boolean;
  readonly t: Instant;
  /** Time of the reading before it; null for none. */
  readonly before: Instant | null;
  readonly now: Instant;
  /** When the software was built: no reading is older. */
  readonly builtAt: Instant;
};

/** Flags that a reading may carry and still be used: capped at 100 %. */
export const HARMLESS: readonly ReadingFlag[] = ['over-100'];

/**
 * Everything wrong with a reading; none for a good one. All but those of HARMLESS reject it.
 * Source: each probe's data sheet (sensorKinds); site limits are common practice, no source.
 */
export function readingFlags(reading: ReadingToJudge): readonly ReadingFlag[] {
  const { value, kind, lastGood, firstSinceRestart } = reading;
  if (value === null || Number.isNaN(value)) return ['not-known', ...clockFlags(reading)];
  const flags: ReadingFlag[] = [];
  if (kind.quantity === 'temperature') {
    if (value === NO_ANSWER) flags.push('no-sensor');
    if (value === STARVED) flags.push('poor-supply');
    if (Math.abs(value) < 300 && isPowerOnOf(kind, value, lastGood, firstSinceRestart)) {
      flags.push('power-on-value');
    }
    if (value < kind.least || value > kind.most) flags.push('out-of-range');
    if (value < ROOM.least || value > ROOM.most) flags.push('site-range');
  } else {
    if (value > kind.most && value <= OVER_100) flags.push('over-100');
    else if (value < kind.least || value > kind.most) flags.push('out-of-range');
  }
  return [...flags, ...clockFlags(reading)];
}

// Only that part has the value in its register; 85 °C from another probe is what it says.
const isPowerOnOf = (kind: SensorKind, value: number, lastGood: number | null, first: boolean) =>
  kind === sensorKinds.ds18b20 && isPowerOnValue(value, lastGood, first);

function clockFlags({ t, before, now, builtAt }: ReadingToJudge): ReadingFlag[] {
  const flags: ReadingFlag[] = [];
  if (t > now + AHEAD * MINUTE) flags.push('future');
  if (before !== null && t < before) flags.push('not-later');
  if (t < builtAt) flags.push('before-build');
  return flags;
}
