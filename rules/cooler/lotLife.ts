import { expectRange } from '../expectRange.ts';
import { asLastKnown } from './keepingLife.ts';
import type { LotPiece } from './lotHistory.ts';
import { type LifeHistory, remainingLife, remainingLifeSpread } from './remainingLife.ts';

/** What is known of how a crop keeps; a figure nobody told is null. */
export type LotKeeping = {
  /** Days it keeps at `reference` °C, least and most; null where no source and nobody tells. */
  readonly life: { readonly from: number; readonly to: number } | null;
  readonly reference: number;
  /** The crop's own; null: three usual ways of ageing, and their spread. */
  readonly q10: number | null;
  readonly freezesAt: number | null;
  readonly chillMin: number | null;
};

export type LotDays = { readonly least: number; readonly most: number };
export type LotLeft = {
  /** What ends the figures: there are no days then. */
  readonly risk: 'freezing' | 'chilling' | 'heat' | null;
  /** Days left if unknown hours were as warm as what was last known; null for no answer. */
  readonly asLastKnown: LotDays | null;
  /** Days left if unknown hours were as warm as outdoors; null when outdoors is not known. */
  readonly asOutdoors: LotDays | null;
  /** Of both, the least and the most; null for no answer. */
  readonly days: LotDays | null;
  readonly knownHours: number;
  readonly unknownHours: number;
};

const WARMEST = 35; // °C: Q10 holds from 0 to 35
// A probe touched or a door's draught is not yet a frozen crate. 15 minutes as the freezing guard;
// an hour of chill is ours, from no source.
const FROZEN_FOR = 0.25; // h
const CHILLED_FOR = 1; // h
const HEATED_FOR = 0.25; // h, ours

/**
 * Days a lot will still keep where it lies now, given what it has been through, as the least and the
 * most: over the usual ways of ageing (Q10 of 3, of 2.5, and the handbook's by decades) unless the
 * crop has a Q10 of its own, and over the span that a source gives for its life. Unknown hours are
 * counted twice, as warm as what was last known and as warm as outdoors; both are to be shown.
 *
 * No days are given for a lot that lay below its freezing point, below what it bears, or above
 * 35 °C, where the figures end. A ranking, not a promise, and no word on safety.
 *
 * Source: the Q10 rule as in USDA Agriculture Handbook 66 (Gross, Wang & Saltveit 2016).
 * @param history pieces of hours and °C, oldest first; null for unknown
 * @param at where it lies now, °C; null: as warm as was last known
 * @param outdoors mean temperature outdoors over the unknown hours, °C
 * @throws RangeError for hours below 0, q10 outside 1..10, life below 0
 */
export function lotLife(
  crop: LotKeeping,
  history: readonly LotPiece[],
  { at, outdoors = null }: { readonly at: number | null; readonly outdoors?: number | null },
): LotLeft {
  let knownHours = 0;
  let unknownHours = 0;
  let last: number | null = null;
  for (const { hours, temperature } of history) {
    expectRange('hours', hours, 0, 100_000, 'h');
    if (temperature === null) unknownHours += hours;
    else knownHours += hours;
    last = temperature ?? last;
  }
  const risk = riskOf(crop, history);
  const here = at ?? last;
  const none = { asLastKnown: null, asOutdoors: null, days: null };
  const { life } = crop;
  if (risk !== null || life === null || here === null)
    return { risk, ...none, knownHours, unknownHours };

  const left = (filled: LifeHistory): LotDays => {
    const within = filled.map(({ hours, temperature }) => ({
      hours,
      temperature: held(temperature),
    }));
    return {
      least: spread(crop, life.from, within, held(here)).least,
      most: spread(crop, life.to, within, held(here)).most,
    };
  };
  const before = asLastKnown(history);
  const byLast = before === null ? null : left(before);
  const byOutdoors =
    unknownHours === 0 || outdoors !== null
      ? left(history.map((one) => ({ ...one, temperature: one.temperature ?? outdoors ?? 0 })))
      : null;
  const both = [byLast, byOutdoors].filter((one) => one !== null);
  return {
    risk: null,
    asLastKnown: byLast,
    asOutdoors: byOutdoors,
    days:
      both.length === 0
        ? null
        : {
            least: Math.min(...both.map(({ least }) => least)),
            most: Math.max(...both.map(({ most }) => most)),
          },
    knownHours,
    unknownHours,
  };
}

// Between a crop's freezing point and 0 °C it ages no faster than at 0 °C; minutes above 35 °C, too
// few to end the figures, count as 35.
const held = (temperature: number) => Math.min(WARMEST, Math.max(0, temperature));

function spread(
  { reference, q10 }: LotKeeping,
  life: number,
  history: LifeHistory,
  at: number,
): LotDays {
  if (q10 === null) return remainingLifeSpread({ reference, life }, history, at);
  const days = remainingLife({ reference, q10, life }, history, at);
  return { least: days, most: days };
}

function riskOf({ freezesAt, chillMin }: LotKeeping, history: readonly LotPiece[]) {
  const time = (fits: (temperature: number) => boolean) =>
    history.reduce(
      (sum, { hours, temperature }) =>
        sum + (temperature !== null && fits(temperature) ? hours : 0),
      0,
    );
  // Where no freezing point is told, the least any produce bears: 0 °C.
  if (time((t) => t < (freezesAt ?? 0)) >= FROZEN_FOR) return 'freezing';
  if (chillMin !== null && time((t) => t < chillMin) >= CHILLED_FOR) return 'chilling';
  if (time((t) => t > WARMEST) >= HEATED_FOR) return 'heat';
  return null;
}
