import type { StopAnswer, WorthRange } from '../contract/index.ts';
import type { Grouped } from './worthGroups.ts';

const FEWEST = 3; // batches before a crop is held up as an example; as in worthItsHours, ours

export type Stop = Omit<StopAnswer, 'name' | 'words' | 'instead'> & {
  readonly instead: Omit<NonNullable<StopAnswer['instead']>, 'name'> | null;
};

/**
 * Whether to go on with each crop: by what an hour on it brings, with the price that would make it
 * pay and what else the same trays could carry. Pickings take no trays, so nothing stands beside them.
 */
export function stopAnswers(
  groups: readonly Grouped[],
  priceOf: (crop: string) => number | null,
): Stop[] {
  const crops = groups.filter(({ by }) => by === 'crop');
  return crops.map((group) => {
    const crop = group.crop ?? '';
    const answers = {
      pays: 'go-on',
      'does-not-pay': 'stop',
      'cannot-tell': 'cannot-tell',
    } as const;
    return {
      ...{ crop, of: group.of, answer: answers[group.verdict] },
      perHour: group.perHour,
      priceToPay: group.breakEven,
      price: priceOf(crop),
      instead: group.of === 'batches' ? bestOther(crops, group) : null,
    };
  });
}

function bestOther(crops: readonly Grouped[], own: Grouped): Stop['instead'] {
  let best: { crop: string; perTrayDay: WorthRange } | null = null;
  for (const { of, crop, perTrayDay } of crops) {
    if (of !== 'batches' || crop === null || crop === own.crop) continue;
    if (perTrayDay === null || perTrayDay.n < FEWEST) continue;
    if (best === null || perTrayDay.ratio > best.perTrayDay.ratio) best = { crop, perTrayDay };
  }
  return best && { ...best, brings: held(best.perTrayDay, own.perTrayDay) };
}

/** Which of two is told to be more: only intervals that do not touch tell. */
function held(one: WorthRange, other: WorthRange | null): 'more' | 'less' | 'cannot-tell' {
  if (one.low === null || one.high === null || other?.low == null || other.high === null)
    return 'cannot-tell';
  if (one.low > other.high) return 'more';
  return one.high < other.low ? 'less' : 'cannot-tell';
}
