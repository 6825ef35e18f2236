import { expectRange } from '../expectRange.ts';
import { orUnknown } from '../orUnknown.ts';
import type { Percent } from '../units.ts';

// Humidity over a saturated solution at 25 °C, %. CRC Handbook of Chemistry and Physics, constant
// humidity solutions, ±2 %.
const OVER_SALT = {
  'sodium-chloride': 75,
  'potassium-chloride': 84,
  'potassium-sulphate': 97,
} as const;

/** Salts a grower can keep in a box; names of the CRC table. */
export type CheckSalt = keyof typeof OVER_SALT;

const MOST_OFFSET = 6; // %; ours: beyond it the probe is broken, not off

/**
 * The correction a probe needs after 12 hours or more in a closed box over damp salt at a steady
 * 25 °C: what to add to its humidity, in percent points. `usable` is false beyond 6 %: such a
 * probe is to be replaced, not corrected. Null for a null.
 * @throws RangeError for a salt not in the table, or a humidity outside 0..110 %
 */
export const saltCheck = orUnknown(function saltCheck(
  salt: CheckSalt,
  read: Percent,
): { readonly offset: number; readonly usable: boolean } {
  const should = OVER_SALT[salt];
  if (should === undefined) {
    throw new RangeError(`Expected one of ${Object.keys(OVER_SALT).join(', ')}, got ${salt}`);
  }
  expectRange('relative humidity', read, 0, 110, '%');
  const offset = should - read;
  return { offset, usable: Math.abs(offset) <= MOST_OFFSET };
});
