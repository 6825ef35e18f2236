import { expectRange } from '../expectRange.ts';
import { orUnknownField } from '../orUnknownField.ts';
import { type Probability, probability } from '../units.ts';
import { probabilityBelow } from './probabilityBelow.ts';

const STARTS = 2; // h after sunset, where the cooling curve begins

/**
 * Chance that a clear, calm night is below `threshold` (°C) within `after` hours of sunset, by the
 * square-root cooling curve from the temperature two hours after sunset to a low that is not
 * certain: F_t((T0 - (T0 - threshold)/√τ - low)/se), τ = (t - 2)/(N - 2). At the night's end it is
 * probabilityBelow.
 *
 * Source: curve of Snyder & de Melo-Abreu 2005, FAO vol. 1; the chance follows from it.
 * @throws RangeError for a night not from above 2 to 24 h, a time outside it, or odd temperatures
 */
export const probabilityBelowBy = orUnknownField(function probabilityBelowBy(
  night: {
    readonly mean: number;
    readonly sd: number;
    readonly df: number;
    /** Temperature two hours after sunset, °C. */
    readonly start: number;
    /** Sunset to sunrise, h. */
    readonly nightHours: number;
  },
  threshold: number,
  after: number,
): Probability {
  const { mean, sd, df, start, nightHours } = night;
  expectRange('start of the night', start, -100, 100, '°C');
  expectRange('length of the night', nightHours, STARTS + 0.1, 24, 'h');
  expectRange('hours after sunset', after, STARTS, nightHours, 'h');
  expectRange('threshold', threshold, -100, 100, '°C');
  if (start < threshold) return probability(1);
  if (after === STARTS) return probability(0);
  // The low that would bring the curve to the threshold at just that time.
  const needed = start - (start - threshold) / Math.sqrt((after - STARTS) / (nightHours - STARTS));
  return probabilityBelow({ mean, sd, df }, Math.max(-100, needed));
});
