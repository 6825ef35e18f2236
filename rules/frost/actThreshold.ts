import { expectRange } from '../expectRange.ts';
import { orUnknownField } from '../orUnknownField.ts';

/** Cost over loss to start with: cheap fleece, a tender crop. Common practice, no source. */
export const USUAL_COST_LOSS = 0.2;

export type Choice = {
  /** Of acting, unneeded work and daylight lost under a cover included. One unit of money. */
  readonly cost: number;
  /** When harm comes and nothing was done. */
  readonly loss: number;
  /** Share of the loss that acting prevents, 0..1; 1 when not given. */
  readonly effect?: number | undefined;
};

/**
 * The probability of harm above which acting pays: cost / (effect x loss). null when acting costs
 * as much as it can save, so that it never does.
 *
 * Source: the cost-loss ratio, Thompson 1952 (from memory); Murphy 1977, Mon. Wea. Rev. 105:803.
 * @throws RangeError for an effect outside 0..1, or negative money
 */
export const actThreshold = orUnknownField(function actThreshold(choice: Choice): number | null {
  const { cost, loss, effect = 1 } = choice;
  expectChoice(choice);
  return cost >= effect * loss ? null : cost / (effect * loss);
});

/**
 * What to expect to pay, acting or waiting, at this probability of harm.
 * @throws RangeError as actThreshold, or for a probability outside 0..1
 */
export const expectedCosts = orUnknownField(function expectedCosts(
  choice: Choice,
  probability: number,
): { readonly act: number; readonly wait: number } {
  const { cost, loss, effect = 1 } = choice;
  expectChoice(choice);
  expectRange('probability', probability, 0, 1, '');
  return { act: cost + probability * (1 - effect) * loss, wait: probability * loss };
});

function expectChoice({ cost, loss, effect = 1 }: Choice) {
  expectRange('cost', cost, 0, Number.MAX_VALUE, 'of money');
  expectRange('loss', loss, 0, Number.MAX_VALUE, 'of money');
  expectRange('effect', effect, 0, 1, '');
}
