import { expectRange } from '../expectRange.ts';
import { type Probability, probability } from '../units.ts';
import { brierScore } from './brierScore.ts';
import { wilson } from './wilson.ts';

/** Below this only the list of forecasts and the mean score may be shown. Common practice. */
export const FEWEST_FORECASTS = 20;

/** What followed one stated chance. */
export type ForecastGroup = {
  readonly stated: Probability;
  readonly n: number;
  readonly happened: number;
  /** Interval of the true share, 95 % (Wilson 1927). */
  readonly between: readonly [low: Probability, high: Probability];
};

export type BrierParts = {
  readonly brier: number;
  /** How far stated chances lie from what followed them; 0 is best. */
  readonly reliability: number;
  /** How far apart the chances set easy days and hard ones; more is better. */
  readonly resolution: number;
  /** What there was to be known: base rate (1 - base rate). */
  readonly uncertainty: number;
  /** 1 - Brier / uncertainty, against this sample's own base rate; null where nothing varied. */
  readonly skill: number | null;
  readonly groups: readonly ForecastGroup[];
  /** Whether there are the 20 forecasts that the parts need. */
  readonly enough: boolean;
};

/**
 * The Brier score taken apart over groups of forecasts that stated the same chance:
 * Brier = reliability - resolution + uncertainty. The identity is exact because a group shares one
 * chance; round chances before they are issued if there are to be groups of any size.
 *
 * Source: Murphy 1973, J. Appl. Meteorol. 12:595.
 * @param outcomes 1 or true where it happened, 0 or false where not
 * @throws RangeError as brierScore
 */
export function brierParts(
  probabilities: readonly number[],
  outcomes: readonly (number | boolean)[],
): BrierParts {
  const brier = brierScore(probabilities, outcomes);
  const n = probabilities.length;
  const byChance = new Map<number, { n: number; happened: number }>();
  let all = 0;
  probabilities.forEach((stated, index) => {
    const outcome = Number(outcomes[index]);
    if (outcome !== 0 && outcome !== 1) {
      throw new RangeError(`Expected outcome from 0 to 1, whole, got ${outcome}`);
    }
    const group = byChance.get(stated) ?? { n: 0, happened: 0 };
    byChance.set(stated, { n: group.n + 1, happened: group.happened + outcome });
    all += outcome;
  });
  const base = all / n;
  let reliability = 0;
  let resolution = 0;
  for (const [stated, group] of byChance) {
    const share = group.happened / group.n;
    reliability += (group.n * (stated - share) ** 2) / n;
    resolution += (group.n * (share - base) ** 2) / n;
  }
  const uncertainty = base * (1 - base);
  const groups = [...byChance]
    .sort(([a], [b]) => a - b)
    .map(([stated, group]) => ({
      stated: probability(stated),
      ...group,
      between: wilson(group.happened, group.n),
    }));
  return {
    brier,
    reliability,
    resolution,
    uncertainty,
    skill: uncertainty === 0 ? null : 1 - brier / uncertainty,
    groups,
    enough: n >= FEWEST_FORECASTS,
  };
}

/**
 * Skill against saying `baseRate` each time: 1 - Brier / Brier of the base rate; 1 is perfect, 0 no
 * better, negative worse. Take the base rate from older seasons: this sample's own flatters nobody
 * but is not known beforehand. null where the base rate was right and sure every time.
 *
 * Source: Murphy 1973 (from memory); WMO-No. 1485 calls it the Brier skill score (from memory).
 * @throws RangeError as brierScore, or a base rate outside 0..1
 */
export function brierSkill(
  probabilities: readonly number[],
  outcomes: readonly (number | boolean)[],
  baseRate: number,
): number | null {
  expectRange('base rate', baseRate ?? Number.NaN, 0, 1, '');
  const score = brierScore(probabilities, outcomes);
  const reference = brierScore(
    probabilities.map(() => baseRate),
    outcomes,
  );
  return reference === 0 ? null : 1 - score / reference;
}
