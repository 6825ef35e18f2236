import { expectRange } from '../expectRange.ts';

/** Sums of shares nearer to 1 than this are 1: thirds written as 0.33. Ours. */
const ROUNDING = 0.02;

export type MixPart = { readonly crop: string; readonly share: number };

/**
 * Weight of each crop in a mix. Shares are by weight and make one whole; written roughly (0.33
 * three times) they are stretched to it.
 * @throws RangeError for a weight below 0, a share outside 0..1, or shares that do not make a whole
 */
export function mixParts(
  kilograms: number,
  parts: readonly MixPart[],
): readonly { readonly crop: string; readonly kilograms: number }[] {
  expectRange('weight of the mix', kilograms, 0, 100_000, 'kg');
  for (const { share } of parts) expectRange('share of a crop', share, 0, 1, '');
  const whole = parts.reduce((sum, { share }) => sum + share, 0);
  expectRange('sum of the shares', whole, 1 - ROUNDING, 1 + ROUNDING, '');
  return parts.map(({ crop, share }) => ({ crop, kilograms: (kilograms * share) / whole }));
}
