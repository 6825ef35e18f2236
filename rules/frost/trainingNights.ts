import type { Celsius } from '../units.ts';
import type { Night, NightLowModel } from './nightLowModel.ts';
import { type Hemisphere, seasonDay } from './seasonDay.ts';

// Common practice, no source, after the domain of the FAO 2005 method.
const FEWEST = 10; // clear, calm nights of one place and half of the season
const MOST = 60; // the latest; all weigh the same

/** A night as it was recorded at one spot. */
export type RecordedNight = {
  /** Calendar day on which it ended, `2025-11-03`. */
  readonly night: string;
  readonly clearCalm: boolean | null;
  readonly temperature: Celsius | null;
  readonly dewPoint: Celsius | null;
  readonly low: Celsius | null;
  /** The low was filled from another probe: then it must not teach. */
  readonly filled?: boolean | undefined;
};

/**
 * The nights to learn tonight's low from: clear and calm, of the same half of the frost season
 * (autumn or spring) as `on`, read and not filled, the latest sixty. null when there are fewer
 * than ten: then untrainedLow shows a shape, and no probability may be given. A probe that was
 * moved begins anew.
 * @throws RangeError for a night or day that is no calendar day
 */
export function trainingNights(
  nights: readonly RecordedNight[],
  { on, hemisphere }: { readonly on: string; readonly hemisphere: Hemisphere },
): readonly Night[] | null {
  const half = seasonDay(on, hemisphere).half;
  const fit = nights.flatMap(({ night, clearCalm, temperature, dewPoint, low, filled }) =>
    clearCalm === true &&
    filled !== true &&
    temperature !== null &&
    low !== null &&
    night < on &&
    seasonDay(night, hemisphere).half === half
      ? [{ night, temperature, dewPoint, low }]
      : [],
  );
  if (fit.length < FEWEST) return null;
  return fit
    .sort((a, b) => (a.night < b.night ? -1 : 1))
    .slice(-MOST)
    .map(({ temperature, dewPoint, low }) => ({ temperature, dewPoint, low }));
}

/** Whether a model has seen enough nights for its probabilities to be shown. */
export const isTrained = (model: Pick<NightLowModel, 'n'>): boolean => model.n >= FEWEST;
