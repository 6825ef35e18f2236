import type { Store } from '../store/index.ts';

/** A secret that stays the same for this store: made at the first start. */
export function keptSecret(store: Store, name: string, make: () => string): string {
  const kept = store.people.secret(name) ?? make();
  store.people.putSecret(name, kept);
  return kept;
}
