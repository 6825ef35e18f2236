import { expectRange } from '../expectRange.ts';
import { orUnknown } from '../orUnknown.ts';

/**
 * Whether sprinklers against frost may be started, or stopped, now: only while the wet bulb is
 * above the crop's critical temperature, as wetted leaves first cool towards it. Once begun, water
 * must run until then; stopping early, or too little, harms more than none. Ask somebody who has
 * done it, and keep to the rules for water. Covers do not need this.
 *
 * Source: Snyder & de Melo-Abreu 2005, FAO (from memory); wetBulb in rules/air.
 * @param wetBulb °C @param critical of the crop's stage, °C: damageLimits
 * @throws RangeError outside ±60 °C
 */
export const sprinklingSafe = orUnknown(function sprinklingSafe(
  wetBulb: number,
  critical: number,
): boolean {
  expectRange('wet-bulb temperature', wetBulb, -60, 60, '°C');
  expectRange('critical temperature', critical, -60, 60, '°C');
  return wetBulb > critical;
});
