import { expectRange } from '../expectRange.ts';
import { type DegreeDays, degreeDaysOf } from '../units.ts';

/**
 * What growth does above the upper threshold: stays at its fastest (horizontal), stops
 * (vertical), or falls back as fast as it rose (intermediate).
 */
export type Cutoff = 'horizontal' | 'vertical' | 'intermediate';

/** A day of which only the extremes are known. The formulas work in any degree; °C here. */
export type DayExtremes = {
  readonly min: number;
  readonly max: number;
  readonly lower: number;
  readonly upper?: number | undefined;
  /** Horizontal when not given; without effect when there is no upper threshold. */
  readonly cutoff?: Cutoff | undefined;
  /** Tomorrow's minimum: then the two halves of the day are reckoned apart ("double"). */
  readonly nextMin?: number | undefined;
};

/** How far a curve through `min` and `max` lies above a threshold, and for what share of the day. */
export type CurveAbove = (
  min: number,
  max: number,
  threshold: number,
) => { readonly mean: number; readonly share: number };

/** Heat units of the day under a curve of the given shape. */
export function dailyDegreeDays(day: DayExtremes, above: CurveAbove): DegreeDays {
  const { min, max, lower, upper, cutoff = 'horizontal', nextMin } = day;
  expectRange('minimum', min, -100, 200, '°C');
  expectRange('maximum', max, min, 200, '°C');
  expectRange('lower threshold', lower, -100, 200, '°C');
  if (upper !== undefined) expectRange('upper threshold', upper, lower, 250, '°C');
  if (nextMin !== undefined) expectRange('minimum of the next day', nextMin, -100, max, '°C');

  const half = (low: number) => {
    const whole = above(low, max, lower).mean;
    if (upper === undefined) return whole;
    const hot = above(low, max, upper);
    if (cutoff === 'vertical') return whole - hot.mean - (upper - lower) * hot.share;
    if (cutoff === 'intermediate') return whole - 2 * hot.mean;
    return whole - hot.mean;
  };
  const sum = nextMin === undefined ? half(min) : (half(min) + half(nextMin)) / 2;
  // The intermediate form can go below nothing once max > 2 upper - lower (common practice: 0).
  return degreeDaysOf(Math.max(0, sum));
}
