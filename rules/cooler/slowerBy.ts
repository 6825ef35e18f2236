import type { RoomHabits } from './roomHabits.ts';

const MOST_SLOWER = 4; // times. Ours
const AT_ITS_END = 0.9; // running share from where on only the limit itself tells. Ours
const NEVER = 100; // times

/**
 * How many times longer the way down may take than was ever seen, when it is warmer outside than it
 * was while that was learned: with a running share d the unit has 1 - d of its strength left over.
 * 1 while it is no warmer, or not known. Source: steady heat balance; the most is ours.
 */
export function slowerBy(habits: RoomHabits, outside: number | null): number {
  const { warmest, duty, top, bottom } = habits;
  if (outside === null || warmest === null || duty === null || outside <= warmest) return 1;
  const inside = (top + bottom) / 2;
  const usual = duty.gap ?? warmest - inside;
  if (usual < 1 || warmest - inside < 1) return 1;
  const then = Math.min(0.9, (duty.share * (warmest - inside)) / usual);
  const now = (then * (outside - inside)) / (warmest - inside);
  return now >= AT_ITS_END ? NEVER : Math.min(MOST_SLOWER, (1 - then) / (1 - now));
}
