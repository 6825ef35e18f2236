import { expectRange } from '../expectRange.ts';
import { orUnknownField } from '../orUnknownField.ts';
import { percentile } from '../statistics/index.ts';

/**
 * The longest a true onset can stay unseen, s: the time between samples, the window or hold-off of
 * the rule, and the poll of the screen, one after another.
 * @throws RangeError for a time below 0
 */
export const worstAlarmLatency = orUnknownField(function worstAlarmLatency(chain: {
  readonly sampleSeconds: number;
  readonly holdSeconds: number;
  readonly pollSeconds: number;
}): number {
  const { sampleSeconds, holdSeconds, pollSeconds } = chain;
  expectRange('time between samples', sampleSeconds, 0, 86_400, 's');
  expectRange('window or hold-off', holdSeconds, 0, 86_400, 's');
  expectRange('poll', pollSeconds, 0, 86_400, 's');
  return sampleSeconds + holdSeconds + pollSeconds;
});

/**
 * Latencies of trials with a known onset, in any one unit; null for one that was missed. The median
 * and 90th percentile are of those that came, null for none: misses have to be read beside them.
 * Common practice, no source.
 */
export function latencyReport(latencies: readonly (number | null)[]): {
  readonly median: number | null;
  readonly p90: number | null;
  readonly misses: number;
  readonly trials: number;
} {
  const came = latencies.filter((latency) => latency !== null);
  return {
    median: came.length === 0 ? null : percentile(came, 0.5),
    p90: came.length === 0 ? null : percentile(came, 0.9),
    misses: latencies.length - came.length,
    trials: latencies.length,
  };
}
