import { EXPOSURE_DAYS, exposureLimits, LOSS_LIMIT } from '../../rules/losses/index.ts';
import type { LossComparison, LossFamily, LossLearning } from '../contract/index.ts';
import { addDays, type FamilyCase, type Learned, weeksBetween } from '../losses/index.ts';
import {
  comparisonWords,
  exposureLabel,
  familyName,
  familyWords,
  learningWords,
} from '../words/index.ts';
import type { ApiParts } from './parts.ts';
import { iso, nameOf, rounded, roundedOrNull } from './present.ts';

const spanOf = (bounds: readonly [number, number] | null) =>
  bounds && { least: rounded(bounds[0], 4), most: rounded(bounds[1], 4) };

/** What may be said of losses, with the tables and the cases behind each sentence. */
export function shownLearning(
  parts: ApiParts,
  { from, to }: { readonly from: string; readonly to: string },
): LossLearning {
  const now = parts.clock.now();
  const learned = parts.losses.learn({ from, to }, now);
  const today = parts.calendar().dayOf(now);
  const weeks = weeksBetween(from, to).filter((week) => addDays(week, 6) < today).length;
  return {
    asOf: iso(now),
    ...{ from, to, lossLimit: LOSS_LIMIT, exposureDays: EXPOSURE_DAYS, tried: learned.tried },
    words: learningWords(learned.tried, weeks, from, to, LOSS_LIMIT),
    families: learned.families.map((family) => shownFamily(parts, family, learned.tried)),
  };
}

function shownFamily(
  parts: ApiParts,
  family: Learned['families'][number],
  tried: number,
): LossFamily {
  const { unit, cases, comparisons } = family;
  const count = (basis: FamilyCase['basis']) => cases.filter((one) => one.basis === basis).length;
  return {
    unit,
    name: familyName(unit),
    words: familyWords(unit, {
      entered: count('entered'),
      'said-none': count('said-none'),
      'no-entry': count('no-entry'),
      'not-kept': count('not-kept'),
    }),
    cases: cases.map(({ id, name, place, from, basis, lost, exposure }, i) => ({
      id,
      name: name ?? nameOf(parts, place),
      ...{ place, from, basis, share: spanOf(lost) },
      lost: comparisons[0]?.cases[i]?.lost ?? null,
      exposure: Object.fromEntries(
        Object.entries(exposure).map(([what, bounds]) => [what, spanOf(bounds)]),
      ) as LossFamily['cases'][number]['exposure'],
    })),
    comparisons: comparisons.map((one): LossComparison => {
      const { what, facts, difference } = one;
      const told = {
        what,
        limit: rounded(exposureLimits[what].limit, 4),
        unit: exposureLimits[what].unit,
        ...{ exposedLost: facts.exposedLost, exposedKept: facts.exposedKept },
        ...{ otherLost: facts.otherLost, otherKept: facts.otherKept, leftOut: facts.unknownLots },
        p: roundedOrNull(one.p, 6),
        chance: roundedOrNull(one.chance, 6),
        adjusted: roundedOrNull(one.adjusted, 6),
        difference: difference && {
          difference: rounded(difference.difference, 4),
          low: rounded(difference.low, 4),
          high: rounded(difference.high, 4),
        },
        exposedShare: spanOf(one.exposedShare),
        otherShare: spanOf(one.otherShare),
        verdict: one.words,
        rival: one.rival,
        needed: one.needed,
      };
      return {
        ...told,
        label: exposureLabel(what),
        words: comparisonWords({ ...told, of: unit, tried }),
        cases: one.cases.map(({ exposed, lost }) => ({ exposed, lost })),
      };
    }),
  };
}
