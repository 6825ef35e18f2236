import type { Snapshot } from './snapshot.ts';

/** Free places for trays, while several tasks of one look share them. */
export type TrayRoom = {
  /** null where nobody told how many it holds. */
  readonly free: (place: string) => number | null;
  readonly take: (place: string, trays: number) => void;
};

/**
 * Room for trays: what a place holds, less what stands there, less what this look has already
 * asked to carry there. Room that is freed by carrying away is not counted until it is done.
 *
 * Source: counted; what a place holds is told in the farm file.
 */
export function trayRoom({ trays }: Pick<Snapshot, 'trays'>): TrayRoom {
  const taken = new Map<string, number>();
  return {
    free(id) {
      const place = trays?.places.find((one) => one.id === id);
      if (place === undefined || place.capacity === null) return null;
      return Math.max(0, place.capacity - place.standing - (taken.get(id) ?? 0));
    },
    take: (id, count) => void taken.set(id, (taken.get(id) ?? 0) + count),
  };
}
