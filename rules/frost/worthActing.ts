import { expectRange } from '../expectRange.ts';
import { orUnknownField } from '../orUnknownField.ts';

/**
 * Whether to act against harm that may come: when its probability exceeds cost / (effect x loss).
 * All money in one unit; `effect` is the share of the loss that acting prevents (1 when not
 * given). When acting costs as much as it can save, never.
 *
 * Source: the cost-loss ratio, Thompson 1952 (from memory); Murphy 1977, Mon. Wea. Rev. 105:803.
 * @throws RangeError for a probability or effect outside 0..1, or negative money
 */
export const worthActing = orUnknownField(function worthActing(choice: {
  readonly probability: number;
  readonly cost: number;
  readonly loss: number;
  readonly effect?: number | undefined;
}): boolean {
  const { probability, cost, loss, effect = 1 } = choice;
  expectRange('probability', probability, 0, 1, '');
  expectRange('cost', cost, 0, Number.MAX_VALUE, 'of money');
  expectRange('loss', loss, 0, Number.MAX_VALUE, 'of money');
  expectRange('effect', effect, 0, 1, '');
  return probability * effect * loss > cost;
});
