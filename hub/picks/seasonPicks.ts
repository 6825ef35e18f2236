import type { Pick } from './pick.ts';

/** Where nobody picked for so long, one season ended and another began. Ours: a patch rests longer
 *  in winter, and no shorter between two flushes. */
const REST = 60 * 86_400_000; // ms

/** The pickings of the season that runs, oldest first; none once the newest is too long ago. */
export function seasonPicks<One extends Pick>(picks: readonly One[], now: number): One[] {
  const past = picks
    .filter(({ state, at }) => state === 'kept' && at <= now)
    .sort((a, b) => a.at - b.at);
  const season: One[] = [];
  let after = now;
  for (const pick of past.reverse()) {
    if (after - pick.at > REST) break;
    season.unshift(pick);
    after = pick.at;
  }
  return season;
}
