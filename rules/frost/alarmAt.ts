import { expectRange } from '../expectRange.ts';
import { orUnknown } from '../orUnknown.ts';
import { type Celsius, celsius } from '../units.ts';

// Under a clear sky leaves ran 1 to 3 K below the air beside them (Leuning & Cremer 1988, Agric.
// For. Meteorol. 42:121; a textbook says 3 to 5). The margins: common practice, no source.
const MARGIN = {
  /** A small roof, open to the sides, at the height of the crop. */
  shielded: 2,
  /** A bare bead among the flowers, which cools as they do. */
  bare: 1,
} as const;

/**
 * The temperature a probe reads when the tissue beside it may be at its critical temperature: the
 * default alarm, until the grower's own records of damage replace it.
 * @throws RangeError for a critical temperature outside -40..20 °C
 */
export const alarmAt = orUnknown(function alarmAt(
  critical: number,
  probe: keyof typeof MARGIN,
): Celsius {
  expectRange('critical temperature', critical, -40, 20, '°C');
  return celsius(critical + MARGIN[probe]);
});
