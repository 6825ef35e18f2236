import { expectRange } from '../expectRange.ts';
import { orUnknownField } from '../orUnknownField.ts';
import { type Probability, probability } from '../units.ts';

/**
 * Chance that something comes by a later date, given that it has not come by now. `now` and
 * `later` are the chances of being spared until then in a season that has it; `share` is the share
 * of seasons that have it at all. pi [F(later) - F(now)] / [1 - pi F(now)].
 * @throws RangeError outside 0..1, or when `later` is likelier than `now`
 */
export const conditionalOdds = orUnknownField(function conditionalOdds(spared: {
  readonly now: number;
  readonly later: number;
  readonly share?: number | undefined;
}): Probability {
  const { now, later, share = 1 } = spared;
  expectRange('chance of being spared until now', now, 0, 1, '');
  expectRange('chance of being spared until later', later, 0, now, '');
  expectRange('share of seasons', share, 0, 1, '');
  const stillOpen = 1 - share + share * now;
  return probability(stillOpen === 0 ? 0 : (share * (now - later)) / stillOpen);
});
