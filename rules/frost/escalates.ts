import { expectRange } from '../expectRange.ts';
import { HOUR, type Instant } from '../units.ts';

// One task a night and place; said again only for these. Common practice, no source.
const TIMES = 2;
const EARLIER = HOUR;

export type Said = { readonly probability: number; readonly crossing: Instant | null };

/**
 * Whether a frost already spoken of has to be said again: its probability has doubled, or it comes
 * more than an hour earlier than said.
 * @throws RangeError for a probability outside 0..1
 */
export function escalates(said: Said, now: Said): boolean {
  expectRange('probability said', said.probability, 0, 1, '');
  expectRange('probability', now.probability, 0, 1, '');
  const doubled = now.probability > 0 && now.probability >= TIMES * said.probability;
  if (doubled || now.crossing === null) return doubled;
  return said.crossing === null || said.crossing - now.crossing > EARLIER;
}
