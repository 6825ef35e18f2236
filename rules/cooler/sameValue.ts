import { type Instant, MINUTE, type Minutes, minutes } from '../units.ts';
import type { Trace } from './trace.ts';

export type SameValue = {
  /** Since when the newest value has been sent again and again. */
  readonly since: Instant | null;
  /** The longest such stretch on record, without that one. */
  readonly longest: Minutes;
};

/**
 * How long a probe has sent the very same value, and how long it did before. A hole ends a stretch.
 *
 * Source: counted on the readings; how long is too long is learned from the room itself, ours.
 */
export function sameValue({ t, value }: Trace, hole: number): SameValue {
  let from: Instant | null = null;
  let longest = 0;
  for (let i = 0; i < t.length; i++) {
    const at = t[i] as Instant;
    const same = i > 0 && value[i] === value[i - 1] && at - (t[i - 1] as number) <= hole;
    if (same) continue;
    if (from !== null) longest = Math.max(longest, (t[i - 1] as number) - from);
    from = at;
  }
  return { since: from, longest: minutes(longest / MINUTE) };
}
