import { expectRange } from '../expectRange.ts';
import { type Celsius, celsius } from '../units.ts';
import { type CoolingNight, coolingCurve } from './coolingCurve.ts';

// Taking in what the night has shown so far. Both ways: common practice, no source, on the curve of
// Snyder & de Melo-Abreu 2005, FAO vol. 1.

const STARTS = 2; // h after sunset
const ENOUGH_NIGHTS = 15; // verified nights before one way is preferred; ours

/** A temperature so many hours after sunset. */
export type NightReading = { readonly after: number; readonly value: number };

/** The cooling still to come, from the reading made: T + [low - T(t)]. null without a curve. */
export function shiftedLow(night: CoolingNight, reading: NightReading): Celsius | null {
  expectRange('reading of the night', reading.value, -100, 100, '°C');
  const curve = coolingCurve(night, reading.after);
  return curve === null ? null : celsius(reading.value + (night.low - curve));
}

/**
 * The square-root curve put anew through all readings since two hours after sunset, by least
 * squares through its start: k = Σ(T0 - T)√(t - 2) / Σ(t - 2), low = T0 - k √(N - 2). null when no
 * reading is later than the start, or there is no curve.
 */
export function refittedLow(
  night: CoolingNight,
  readings: readonly NightReading[],
): Celsius | null {
  if (coolingCurve(night, STARTS) === null) return null;
  let over = 0;
  let under = 0;
  for (const { after, value } of readings) {
    expectRange('hours after sunset', after, 0, night.nightHours, 'h');
    expectRange('reading of the night', value, -100, 100, '°C');
    if (after <= STARTS) continue;
    over += (night.start - value) * Math.sqrt(after - STARTS);
    under += after - STARTS;
  }
  if (under === 0) return null;
  return celsius(night.start - (over / under) * Math.sqrt(night.nightHours - STARTS));
}

/** Which of the two to believe: their mean, until one has verified better on own nights. */
export type UpdateWay = 'mean' | 'shifted' | 'refitted';

/**
 * The low with the night so far taken in, by the way that `betterUpdate` found. null when neither
 * way can say.
 */
export function updatedLow(
  night: CoolingNight,
  readings: readonly NightReading[],
  way: UpdateWay = 'mean',
): Celsius | null {
  const last = readings.at(-1);
  const shifted = last === undefined || last.after < STARTS ? null : shiftedLow(night, last);
  const refitted = refittedLow(night, readings);
  if (shifted === null || refitted === null) return shifted ?? refitted;
  if (way === 'mean') return celsius((shifted + refitted) / 2);
  return way === 'shifted' ? shifted : refitted;
}

/** The way with the smallest mean square error on past nights; the mean until there are 15. */
export function betterUpdate(
  nights: readonly {
    readonly shifted: number;
    readonly refitted: number;
    readonly low: number;
  }[],
): UpdateWay {
  if (nights.length < ENOUGH_NIGHTS) return 'mean';
  const squares = (said: (night: { shifted: number; refitted: number }) => number) =>
    nights.reduce((sum, night) => sum + (said(night) - night.low) ** 2, 0);
  const errors = {
    mean: squares(({ shifted, refitted }) => (shifted + refitted) / 2),
    shifted: squares(({ shifted }) => shifted),
    refitted: squares(({ refitted }) => refitted),
  };
  const best = Math.min(...Object.values(errors));
  return (['mean', 'shifted', 'refitted'] as const).find((way) => errors[way] === best) ?? 'mean';
}
