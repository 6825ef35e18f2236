import { expectRange } from '../expectRange.ts';
import { type KeepingLife, type LifeHistory, remainingLife } from './remainingLife.ts';

export type CropKeeping = KeepingLife & {
  /** Freezing point of the produce, °C; null where not known. */
  readonly freezesAt: number | null;
  /** Below this the crop is hurt by cold, °C; null for one that is not. */
  readonly chillMin: number | null;
};

export type LotLife = {
  /** Cold the lot has been in that ends what Q10 can say; no days are given then. */
  readonly risk: 'freezing' | 'chilling' | null;
  /** Days left if unknown time was as warm as what was last known before it; null for no answer. */
  readonly asLastKnown: number | null;
  /** Days left if unknown time was as warm as outdoors; null when outdoors is not known. */
  readonly asOutdoors: number | null;
  readonly unknownHours: number;
};

/**
 * Life left of a lot whose history may hold unknown hours (temperature null), and the guards under
 * which there is none to give: colder than the crop's freezing point, or a chilling-sensitive crop
 * below its limit. Both answers are to be shown where they differ.
 * @param at where it lies now, °C
 * @param outdoors mean temperature outdoors over the unknown hours, °C; null for not known
 * @throws RangeError as remainingLife, for known produce above 35 °C
 */
export function keepingLife(
  crop: CropKeeping,
  history: readonly { readonly hours: number; readonly temperature: number | null }[],
  { at, outdoors = null }: { readonly at: number; readonly outdoors?: number | null },
): LotLife {
  let unknownHours = 0;
  for (const { hours, temperature } of history) {
    expectRange('hours', hours, 0, 100_000, 'h');
    if (temperature === null) unknownHours += hours;
  }
  const seen = [...history.map(({ temperature }) => temperature), at].filter((t) => t !== null);
  const coldest = Math.min(...seen);
  const risk =
    crop.freezesAt !== null && coldest < crop.freezesAt
      ? 'freezing'
      : crop.chillMin !== null && coldest < crop.chillMin
        ? 'chilling'
        : null;
  // Between a crop's freezing point and 0 °C it does not age faster than at 0 °C.
  const left = (filled: LifeHistory) =>
    remainingLife(
      crop,
      filled.map(({ hours, temperature }) => ({ hours, temperature: Math.max(0, temperature) })),
      Math.max(0, at),
    );
  if (risk !== null || (crop.freezesAt === null && coldest < 0)) {
    return { risk: risk ?? 'freezing', asLastKnown: null, asOutdoors: null, unknownHours };
  }
  const before = asLastKnown(history);
  return {
    risk: null,
    asLastKnown: before === null ? null : left(before),
    asOutdoors:
      unknownHours === 0 || outdoors !== null
        ? left(history.map((part) => ({ ...part, temperature: part.temperature ?? outdoors ?? 0 })))
        : null,
    unknownHours,
  };
}

/** null when the history begins with unknown time: nothing was known before it. */
export function asLastKnown(
  history: readonly { readonly hours: number; readonly temperature: number | null }[],
): LifeHistory | null {
  let last: number | null = null;
  const filled: { hours: number; temperature: number }[] = [];
  for (const { hours, temperature } of history) {
    last = temperature ?? last;
    if (last === null) return null;
    filled.push({ hours, temperature: last });
  }
  return filled;
}
