import type { Saving } from '../answer.ts';

/** As much of a decision, or of a task made from one, as its place in the list depends on. */
export type Ranked =
  | {
      readonly verdict: 'act';
      readonly alarm: string | null;
      readonly saves: Saving;
      readonly minutes: number;
      readonly doBy: number | null;
    }
  | { readonly verdict: 'leave' | 'unknown' };

/**
 * The order of the list: what asks for something first; of those, alarms; then the money spared
 * for each minute of work, what is not told counting as nothing; then the deadline.
 */
export function rank<Item extends Ranked>(items: readonly Item[]): readonly Item[] {
  return items
    .map((item, place) => ({ item, place, key: keyOf(item) }))
    .sort((a, b) => {
      for (const [i, mine] of a.key.entries()) {
        const theirs = b.key[i] ?? 0;
        if (mine !== theirs) return mine < theirs ? -1 : 1;
      }
      return a.place - b.place;
    })
    .map(({ item }) => item);
}

const LAST = Number.POSITIVE_INFINITY;
const ORDER = { act: 0, unknown: 1, leave: 2 };

/** Smaller comes first. */
function keyOf(item: Ranked): readonly number[] {
  if (item.verdict !== 'act') return [ORDER[item.verdict], 0, 0, 0];
  const { alarm, saves, minutes, doBy } = item;
  // Work of no length is still a walk: a minute, so that the division means something.
  const perMinute = (saves.money ?? 0) / Math.max(1, minutes);
  return [ORDER.act, alarm === null ? 1 : 0, -perMinute, doBy ?? LAST];
}
