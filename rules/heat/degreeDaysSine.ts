import { orUnknownField } from '../orUnknownField.ts';
import type { DegreeDays } from '../units.ts';
import { type CurveAbove, type DayExtremes, dailyDegreeDays } from './dailyDegreeDays.ts';

// A sine wave through the day's extremes. Source: Baskerville & Emin 1969, Ecology 50:514.
const sine: CurveAbove = (min, max, threshold) => {
  if (min >= threshold) return { mean: (max + min) / 2 - threshold, share: 1 };
  if (max <= threshold) return { mean: 0, share: 0 };
  const middle = (max + min) / 2;
  const swing = (max - min) / 2;
  const rises = Math.asin((threshold - middle) / swing);
  const half = Math.PI / 2 - rises;
  return {
    mean: ((middle - threshold) * half + swing * Math.cos(rises)) / Math.PI,
    share: half / Math.PI,
  };
};

/**
 * Heat units of a day of which only minimum and maximum are known (station records, a max-min
 * thermometer), by a sine curve. Where there are readings, degreeDays is exact and better.
 * @throws RangeError for a maximum below the minimum, or thresholds the wrong way round
 */
export const degreeDaysSine = orUnknownField(
  (day: DayExtremes): DegreeDays => dailyDegreeDays(day, sine),
);
