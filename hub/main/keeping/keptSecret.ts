import type { Store } from '../../store/index.ts';

/** A secret that stays the same for this store: made at the first start, and then only read. */
export function keptSecret(store: Store, name: string, make: () => string): string {
  const kept = store.people.secret(name);
  if (kept !== undefined) return kept;
  const made = make();
  store.people.putSecret(name, made);
  return made;
}
