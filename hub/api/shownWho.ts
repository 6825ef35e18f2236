import type { ApiParts } from './parts.ts';
import type { Session } from './sessions.ts';

/** Who is asking, and what they may; on a hub that nobody signs in to, a grower. */
export const shownWho = (
  { store, open }: ApiParts,
  session: Pick<Session, 'name' | 'role'> | null,
) => ({
  claimed: store.people.claimed(),
  open,
  name: session?.name ?? null,
  role: open ? ('grower' as const) : (session?.role ?? null),
});
