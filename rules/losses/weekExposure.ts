import { botrytisFruitIncidence, botrytisModel } from '../disease/index.ts';
import { celsius, hours } from '../units.ts';
import type { Bounds } from '../wetness/index.ts';
import type { Exposure } from './exposureLimits.ts';

/** What is kept of one day at a place; null is not known. */
export type ExposureDay = {
  readonly min: number | null;
  readonly max: number | null;
  readonly wetHours: number | null;
  readonly unknownHours: number;
  /** Longest spell that reaches into the day, counted from its own start. */
  readonly longestSpellHours: number | null;
  readonly botrytisIndex: number | null;
};
/** Hours in which a limit was passed, and hours without a reading. */
export type HoursPast = { readonly known: number; readonly unknown: number };

const COLDEST_GARDEN = -40; // °C; what a probe can read at all, where nothing else is known
const HOTTEST_GARDEN = 60; // °C

/**
 * What a place went through in some days, each as the least and the most it can have been: hours
 * that no reading speaks for may have been wet, hot or cold. null for what nobody can say, such as
 * heat for a crop without a heat limit.
 * @param days one after the other, none left out
 */
export function weekExposure(
  days: readonly ExposureDay[],
  past: { readonly hot: HoursPast | null; readonly cold: HoursPast | null },
): Readonly<Partial<Record<Exposure, Bounds>>> {
  const spell = longestSpell(days);
  const wet = sum(days.map(({ wetHours }) => wetHours ?? 0));
  const unknown = sum(days.map(({ unknownHours }) => unknownHours));
  const bounds = (known: HoursPast): Bounds => [known.known, known.known + known.unknown];
  return {
    'wet-spell': spell,
    'wet-hours': [wet, wet + unknown],
    'infection-index': index(days, spell[1], unknown),
    ...(past.hot && { 'hot-hours': bounds(past.hot) }),
    ...(past.cold && { 'cold-hours': bounds(past.cold) }),
  };
}

/**
 * A gap may have joined the spells on its two sides: neither is longer than the longest that is
 * known, and between them lies at most what was wet or unknown on the days with gaps.
 */
function longestSpell(days: readonly ExposureDay[]): Bounds {
  const least = Math.max(0, ...days.map(({ longestSpellHours }) => longestSpellHours ?? 0));
  let most = least;
  let run = 0;
  for (const { wetHours, unknownHours } of days) {
    if (unknownHours === 0) {
      run = 0;
      continue;
    }
    run += (wetHours ?? 0) + unknownHours;
    most = Math.max(most, 2 * least + run);
  }
  return [least, most];
}

function index(days: readonly ExposureDay[], longest: number, unknown: number): Bounds {
  const least = Math.max(0, ...days.map(({ botrytisIndex }) => botrytisIndex ?? 0));
  if (unknown === 0) return [least, least];
  const low = Math.min(...days.map(({ min }) => min ?? COLDEST_GARDEN));
  const high = Math.max(...days.map(({ max }) => max ?? HOTTEST_GARDEN));
  const best = Math.max(low, Math.min(high, botrytisModel.peak));
  return [least, Math.max(least, botrytisFruitIncidence(celsius(best), hours(longest)))];
}

const sum = (values: readonly number[]) => values.reduce((all, value) => all + value, 0);
