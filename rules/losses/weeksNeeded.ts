import { orUnknown } from '../orUnknown.ts';
import { enoughToCompare, expectCount, leastFisherP } from '../statistics/index.ts';

export type WeeksNeeded = {
  /** Further cases, at the least. */
  readonly more: number;
  /** Of them with the exposure, and without. */
  readonly exposed: number;
  readonly others: number;
};

const LEVEL = 0.05; // after all comparisons were taken into account; as associationWords
const LEAST = 12; // cases; as associationWords
const FARTHEST = 500; // cases; nobody logs for longer

/**
 * How many more cases it takes, at the least, before any outcome could show as more than chance:
 * until then a comparison that shows nothing says nothing. The smaller group is filled first.
 * null once there are enough.
 * @param comparisons looked at together, each of which has to stand among all (Holm's first step)
 * @throws RangeError unless all are whole numbers from 0, comparisons from 1
 */
export const weeksNeeded = orUnknown(function weeksNeeded(
  exposed: number,
  others: number,
  comparisons: number,
): WeeksNeeded | null {
  expectCount('exposed cases', exposed);
  expectCount('other cases', others);
  expectCount('comparisons', comparisons, 1);
  let [on, off] = [exposed, others];
  while (!enough(on, off, comparisons) && on + off < exposed + others + FARTHEST)
    if (on <= off) on += 1;
    else off += 1;
  const more = on + off - exposed - others;
  return more === 0 ? null : { more, exposed: on - exposed, others: off - others };
});

function enough(on: number, off: number, comparisons: number): boolean {
  if (!enoughToCompare(on, off) || on + off < LEAST) return false;
  // Above 500 in a group the least chance is far below any level.
  return on > 500 || off > 500 || leastFisherP(on, off) * comparisons <= LEVEL;
}
