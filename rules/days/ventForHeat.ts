import type { Celsius } from '../units.ts';
import type { VentTemperatures } from './ventTemperatures.ts';

// All ours: a closed tunnel in spring sun can gain over 10 K in an hour (common practice, no
// source), so the call has to come before the limit does.
const RISING = 1; // K in half an hour
const ABOVE_START = 3; // K
const URGENT_BELOW_LIMIT = 2; // K

/**
 * Whether heat asks for opening: from the crop's start when it is still rising by more than 1 K in
 * 30 min, from 3 K above it in any case, and urgently from 2 K below what it must not exceed.
 * @param earlier half an hour before; null when not known
 */
export function ventForHeat(
  now: Celsius | null,
  earlier: Celsius | null,
  { start, limit }: Pick<VentTemperatures, 'start' | 'limit'>,
): 'urgent' | 'open' | 'leave' | 'unknown' {
  if (now === null || Number.isNaN(now)) return 'unknown';
  if (now >= limit - URGENT_BELOW_LIMIT) return 'urgent';
  if (now >= start + ABOVE_START) return 'open';
  if (now < start) return 'leave';
  if (earlier === null) return 'unknown';
  return now - earlier > RISING ? 'open' : 'leave';
}
