import { knownHumidity } from '../air/index.ts';
import { expectRange } from '../expectRange.ts';
import { type Percent, percent } from '../units.ts';
import { joinPieces } from './joinPieces.ts';
import { type WetPiece, type Window, wetPieces } from './wetPieces.ts';
import type { WetRule } from './wetRule.ts';
import { type AirRead, signsByHumidity } from './wetSign.ts';

/**
 * Wet, dry and unknown time when the probe may be wrong by ± `accuracy` % of humidity: known only
 * where both ends of its error agree. At dusk 2 % is some 40 min at each edge of the night.
 * @throws RangeError for an accuracy outside 0..10 %, or as wetPieces
 */
export function accuracyPieces(
  readings: readonly AirRead[],
  rule: WetRule,
  accuracy: number,
  window: Window,
): WetPiece[] {
  expectRange('accuracy of humidity', accuracy, 0, 10, '%');
  const settings = rule.maxGapMinutes === undefined ? {} : { maxGapMinutes: rule.maxGapMinutes };
  const off = (by: number) => {
    const shifted = readings.map((each) => ({ ...each, humidity: shift(each.humidity, by) }));
    return wetPieces(signsByHumidity(shifted, rule), window, settings);
  };
  return joinPieces(off(-accuracy), off(accuracy));
}

// A reading no probe can mean stays so: the error is that of a working probe.
function shift(humidity: Percent | null, by: number): Percent | null {
  const known = knownHumidity(humidity);
  return known === null ? null : percent(Math.min(100, Math.max(Number.EPSILON, known + by)));
}
