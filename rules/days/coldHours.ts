import type { Celsius, Instant } from '../units.ts';

// Ours, from no source: below freezing an hour does what ten hours of chill do.
const FROZEN = 10;
// Five equal parts of a normal spread, each by its middle: quantiles of 10, 30, 50, 70 and 90 %.
const PARTS = [-1.2816, -0.5244, 0, 0.5244, 1.2816] as const;

/**
 * Hours of the coming night that are expected to hurt by cold: last night's readings, moved so that
 * their lowest is tonight's forecast, and counted below the crop's floor over the forecast's spread.
 * An hour below 0 °C counts ten.
 *
 * Source: persistence; that freezing counts ten is ours, from no source.
 * @param night readings outside of the last night, in order of time
 * @param low tonight's lowest outside, °C, and its spread, K
 * @param keeps K by which it is warmer where the crop stands
 * @param floor °C; null for a crop that only frost hurts
 * @param hours length of the coming night
 */
export function coldHours(
  night: readonly { readonly t: Instant; readonly temperature: Celsius }[],
  low: { readonly mean: number; readonly sd: number },
  keeps: number,
  floor: number | null,
  hours: number,
): number | null {
  if (night.length === 0) return null;
  const lowest = Math.min(...night.map(({ temperature }) => temperature));
  let sum = 0;
  for (const part of PARTS) {
    const moved = low.mean + part * low.sd - lowest + keeps;
    for (const { temperature } of night) {
      if (temperature + moved < 0) sum += FROZEN;
      else if (floor !== null && temperature + moved < floor) sum += 1;
    }
  }
  return (sum / (PARTS.length * night.length)) * hours;
}
