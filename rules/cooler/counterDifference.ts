import { expectRange } from '../expectRange.ts';
import { orUnknownField } from '../orUnknownField.ts';

export type CounterStep = {
  /** In the counter's unit; null when the pair is rejected. */
  readonly amount: number | null;
  readonly kind: 'counted' | 'roll-over' | 'reset' | 'spike' | 'clock';
  /** The amount is the least it can have been: what was counted before the reset is lost. */
  readonly minimum: boolean;
};

/**
 * What a counter counted between two readings. One that fell either rolled over at its modulus or
 * was reset: rolled over if that amount is possible, else reset, and its count since is a minimum.
 * More than the unit can do is a spike, no time between is a clock at fault; both are rejected.
 *
 * Source: modular arithmetic.
 * @param step readings `from` and `to`, hours between, `modulus` at which it begins again at 0,
 *   `most` it can count in an hour
 * @throws RangeError for readings not from 0 to the modulus, or a modulus or most not above 0
 */
export const counterDifference = orUnknownField(function counterDifference(step: {
  readonly from: number;
  readonly to: number;
  readonly hours: number;
  readonly modulus: number;
  readonly most: number;
}): CounterStep {
  const { from, to, hours, modulus, most } = step;
  expectRange('modulus', modulus, Number.MIN_VALUE, Number.MAX_VALUE, '');
  expectRange('most per hour', most, Number.MIN_VALUE, Number.MAX_VALUE, '');
  expectRange('counter', from, 0, modulus, '');
  expectRange('counter', to, 0, modulus, '');
  expectRange('hours between readings', hours, -1e9, 1e9, 'h');
  if (hours <= 0) return { amount: null, kind: 'clock', minimum: false };
  const possible = most * hours;
  if (to >= from) {
    return to - from > possible
      ? { amount: null, kind: 'spike', minimum: false }
      : { amount: to - from, kind: 'counted', minimum: false };
  }
  const rolled = to - from + modulus;
  if (rolled <= possible) return { amount: rolled, kind: 'roll-over', minimum: false };
  return to > possible
    ? { amount: null, kind: 'spike', minimum: false }
    : { amount: to, kind: 'reset', minimum: true };
});
