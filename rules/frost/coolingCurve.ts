import { expectRange } from '../expectRange.ts';
import { orUnknownField } from '../orUnknownField.ts';
import { type Celsius, celsius, type Hours, hours } from '../units.ts';

/** A clear, calm night from two hours after sunset to sunrise. */
export type CoolingNight = {
  /** Temperature two hours after sunset, °C. */
  readonly start: number;
  /** Lowest temperature expected at sunrise, °C. */
  readonly low: number;
  /** Sunset to sunrise, h. */
  readonly nightHours: number;
};

const STARTS = 2; // h after sunset, where the source's curve begins
const SHORTEST = 3; // h; ours: a shorter night is no night for this curve

/**
 * Temperature `after` hours past sunset on a night that cools by radiation:
 * T = T0 - (T0 - low) sqrt((t - 2) / (N - 2)). null when there is no such curve: a night of 3 h or
 * less, or a low that is not below the start.
 *
 * Source: Snyder & de Melo-Abreu 2005, Frost Protection, FAO Env. & Nat. Res. Series 10, vol. 1.
 * @throws RangeError for temperatures outside ±100 °C, or a time before 2 h or after the night
 */
export const coolingCurve = orUnknownField(function coolingCurve(
  night: CoolingNight,
  after: number,
): Celsius | null {
  if (!hasCurve(night)) return null;
  const { start, low, nightHours } = night;
  expectRange('hours after sunset', after, STARTS, nightHours, 'h');
  return celsius(start - (start - low) * Math.sqrt((after - STARTS) / (nightHours - STARTS)));
});

/**
 * Hours after sunset at which the cooling curve reaches `threshold`: the curve turned round. 2,
 * where it begins, when it is as cold by then; null when it is not reached, or there is no curve.
 * @throws RangeError for temperatures outside ±100 °C or a night not from 0 to 24 h
 */
export const crossingTime = orUnknownField(function crossingTime(
  night: CoolingNight,
  threshold: number,
): Hours | null {
  expectRange('threshold', threshold, -100, 100, '°C');
  if (!hasCurve(night)) return null;
  const { start, low, nightHours } = night;
  if (threshold >= start) return hours(STARTS);
  if (threshold < low) return null;
  return hours(STARTS + (nightHours - STARTS) * ((start - threshold) / (start - low)) ** 2);
});

function hasCurve({ start, low, nightHours }: CoolingNight): boolean {
  expectRange('start of the night', start, -100, 100, '°C');
  expectRange('low of the night', low, -100, 100, '°C');
  expectRange('length of the night', nightHours, 0, 24, 'h');
  return nightHours > SHORTEST && low < start;
}
