import { GUARDED, LONGEST_GUARDED, LONGEST_SILENCE } from './ranks.ts';
import type { Silence } from './types.ts';

type About = { readonly place: string; readonly kind: string };

/**
 * Until when an alarm is silent, ms since 1970; null when it is not. A silence that covers more than
 * produce and frost keeps them silent for its first two hours only; planned work never does.
 */
export function silentUntil(
  { place, kind }: About,
  silences: readonly Silence[],
  now: number,
): number | null {
  let latest: number | null = null;
  for (const silence of silences) {
    if (silence.place !== null && silence.place !== place) continue;
    if (silence.kind !== null && silence.kind !== kind) continue;
    const guarded = GUARDED.has(kind);
    if (guarded && silence.work) continue;
    const until = guarded ? Math.min(silence.until, silence.from + LONGEST_GUARDED) : silence.until;
    if (now >= silence.from && now < until) latest = Math.max(latest ?? 0, until);
  }
  return latest;
}

/** The longest a silence of this kind may be, ms. */
export const longestSilence = (kind: string | null): number =>
  kind !== null && GUARDED.has(kind) ? LONGEST_GUARDED : LONGEST_SILENCE;
