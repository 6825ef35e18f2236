import type { Limits } from './limits.ts';

/** Somebody at the door, or inside. */
export type Guest = {
  readonly address: string;
  readonly leave: () => void;
};

/**
 * Who is connected, and who has to go when there are too many. Those that have not said who they are
 * never keep out those that do: the oldest from the address with most of them makes room.
 */
export function makeLobby({ clients, perUser, waiting }: Limits) {
  const outside = new Set<Guest>();
  const inside = new Map<Guest, string | null>();

  const crowding = (): Guest | undefined => {
    const counts = new Map<string, number>();
    for (const { address } of outside) counts.set(address, (counts.get(address) ?? 0) + 1);
    let most: Guest | undefined;
    for (const guest of outside)
      if (!most || (counts.get(guest.address) ?? 0) > (counts.get(most.address) ?? 0)) most = guest;
    return most;
  };

  return {
    arrived(guest: Guest) {
      outside.add(guest);
      if (outside.size <= waiting) return;
      const one = crowding();
      if (one) outside.delete(one);
      one?.leave();
    },
    /** It has said who it is, and its password is being looked at: nobody pushes it out any more. */
    known: (guest: Guest) => outside.delete(guest),
    /** @returns whether there is room; under one name the oldest makes room for the newest. */
    entered(guest: Guest, user: string | null): boolean {
      outside.delete(guest);
      if (inside.size >= clients) return false;
      if (user !== null) {
        const same = [...inside].filter(([, name]) => name === user).map(([one]) => one);
        const oldest = same[0];
        if (oldest && same.length >= perUser) {
          inside.delete(oldest);
          oldest.leave();
        }
      }
      inside.set(guest, user);
      return true;
    },
    left(guest: Guest) {
      outside.delete(guest);
      inside.delete(guest);
    },
    count: () => ({ waiting: outside.size, clients: inside.size }),
  };
}
