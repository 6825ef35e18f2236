import { type Exposure, type WeekComparison, weekComparisons } from '../../rules/losses/index.ts';
import { exposureBefore } from './exposureBefore.ts';
import { batchCases, type Family, type FamilyParts, lotCases, placeWeeks } from './families.ts';
import { limitsAt } from './hoursPast.ts';
import type { Loss } from './loss.ts';
import type { LossParts } from './lossParts.ts';
import type { QuietWeek } from './quietWeeks.ts';
import { addDays, weeksBetween } from './weeks.ts';

export type Learned = {
  readonly tried: number;
  readonly families: readonly (Family & { readonly comparisons: readonly WeekComparison[] })[];
};

/**
 * Losses against what went before them, for all weeks of the range that are over, and all batches
 * and lots that have ended in it. Each kind of case is a family of its own; all comparisons of all
 * of them count together.
 */
export function learnLosses(
  parts: LossParts,
  told: { readonly losses: readonly Loss[]; readonly quiet: readonly QuietWeek[] },
  range: { readonly from: string; readonly to: string },
  now: number,
): Learned {
  const today = parts.calendar().dayOf(now);
  const weeks = weeksBetween(range.from, range.to).filter((week) => addDays(week, 6) < today);
  const [first] = weeks;
  const before = exposureBefore(parts, { from: first ?? range.from, to: range.to }, now);
  const given: FamilyParts = { parts, ...told, before };
  const farm = parts.farm();
  const growing = (kind: string) =>
    farm.places.filter((place) => place.kind === kind).map(({ id }) => id);
  const offered = (places: readonly string[]): Exposure[] => {
    const limits = places.map((place) => limitsAt(farm, place));
    return [
      'wet-spell',
      'wet-hours',
      'infection-index',
      ...(limits.some(({ hotAbove }) => hotAbove !== null) ? ['hot-hours' as const] : []),
      ...(limits.some(({ coldBelow }) => coldBelow !== null) ? ['cold-hours' as const] : []),
    ];
  };
  const families: Family[] = [];
  for (const [unit, kind] of [
    ['place-week', 'tunnel'],
    ['patch-week', 'patch'],
  ] as const) {
    const places = growing(kind);
    if (places.length > 0)
      families.push({ unit, exposures: offered(places), cases: placeWeeks(given, places, weeks) });
  }
  const batches = batchCases(given, range);
  const exposures = offered([...new Set(batches.map(({ place }) => place))]);
  if (batches.length > 0) families.push({ unit: 'batch', exposures, cases: batches });
  const lots = lotCases(given, range, now);
  if (lots.length > 0) families.push({ unit: 'lot', exposures: ['cool-room-hours'], cases: lots });
  const found = weekComparisons(families);
  return {
    tried: found.tried,
    families: families.map((family, i) => ({ ...family, comparisons: found.families[i] ?? [] })),
  };
}
