import type { Store } from '../store/index.ts';

/** Probes that nobody described, placed or gave a password to. Ours: far more than a garden tries out. */
export const MOST_STRANGERS = 200;

/** Which names readings may come under: those the hub knows, and so many others and no more. */
export function makeStrangers(store: Store) {
  const known = new Set<string>();
  const strangers = new Set<string>();
  const sort = () => {
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
        // Asked for at its first message only: it may have been described or given a password since.
        if (store.probes.get(probe) === undefined) return false;
        sort();
        return known.has(probe) || strangers.has(probe);
      }
      strangers.add(probe);
      return true;
    },
    /** The farm's description changed, or a probe was placed. */
    sort,
  };
}
