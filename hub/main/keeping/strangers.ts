import type { Store } from '../../store/index.ts';

/** Probes that nobody described, placed or gave a password to. Ours: far more than a garden tries out. */
export const MOST_STRANGERS = 200;
const LOOK_AGAIN = 60_000; // ms

/** Which names readings may come under: those the hub knows, and so many others and no more. */
export function makeStrangers(store: Store) {
  const known = new Set<string>();
  const strangers = new Set<string>();
  let sorted = Number.NEGATIVE_INFINITY;
  const sort = () => {
    sorted = performance.now();
    const placed = new Set(store.probes.placements().map(({ probe }) => probe));
    for (const { id, password } of store.probes.all()) {
      const ours = placed.has(id) || password !== null;
      if (ours) strangers.delete(id);
      (ours ? known : strangers).add(id);
    }
  };
  sort();
  return {
    /** Whether readings of this name are taken. */
    admits(probe: string): boolean {
      if (known.has(probe) || strangers.has(probe)) return true;
      if (strangers.size >= MOST_STRANGERS) {
        // Some may have been placed, described or given a password since it was last looked.
        const due = performance.now() - sorted > LOOK_AGAIN;
        if (!due && store.probes.get(probe) === undefined) return false;
        sort();
        if (strangers.size < MOST_STRANGERS && !known.has(probe)) strangers.add(probe);
        return known.has(probe) || strangers.has(probe);
      }
      strangers.add(probe);
      return true;
    },
    /** Described, placed or given a password. */
    knows: (probe: string) => known.has(probe),
    /** The farm's description changed, or a probe was placed. */
    sort,
  };
}
