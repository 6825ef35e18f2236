import { orUnknownField } from '../orUnknownField.ts';
import type { DegreeDays } from '../units.ts';
import { type CurveAbove, type DayExtremes, dailyDegreeDays } from './dailyDegreeDays.ts';
import { meanAboveLine, timeAboveLine } from './lineAbove.ts';

// Straight up from the minimum to the maximum and straight down again: both halves are alike.
// Source: Zalom, Goodell, Wilson, Barnett & Bentley 1983, UC leaflet 21373 (from memory).
const triangle: CurveAbove = (min, max, threshold) => ({
  mean: meanAboveLine(min, max, threshold),
  share: timeAboveLine(min, max, threshold),
});

/**
 * Heat units of a day of which only minimum and maximum are known, by a triangle. Published totals
 * often use it; never add it up with totals of another method.
 * @throws RangeError for a maximum below the minimum, or thresholds the wrong way round
 */
export const degreeDaysTriangle = orUnknownField(
  (day: DayExtremes): DegreeDays => dailyDegreeDays(day, triangle),
);
