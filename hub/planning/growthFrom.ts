import type { Growing, PastBatch } from '../growing/index.ts';
import type { Store } from '../store/index.ts';
import type { Growth } from './growth.ts';

/** From so many batches on that somebody saw ready, those that were only cut are left out. Ours. */
const ENOUGH_SEEN = 3;

/** One of each sowing: trays that were carried off share its beginning. */
function oneEach(past: readonly PastBatch[]): PastBatch[] {
  const roots = new Set<string>();
  return past.filter(({ root }) => !roots.has(root) && roots.add(root));
}

/** What planning needs to know of growth, from what was learned of it. */
export function growthFrom(growing: Growing, store: Store): Growth {
  return {
    crop(id) {
      const { base, past } = growing.crop(id);
      // "Ready on" is not "cut on": batches that somebody saw ready tell more.
      const later = oneEach(past.filter(({ stage }) => stage === 'later'));
      const seen = later.filter((one) => one.seen === 'noted' && one.degreeDays !== null);
      const timed = seen.length >= ENOUGH_SEEN ? seen : later;
      return {
        base,
        degreeDays: timed.flatMap(({ degreeDays }) => degreeDays ?? []),
        perTray: later.flatMap(({ perTray }) =>
          perTray === null || perTray <= 0 ? [] : [perTray],
        ),
      };
    },
    ready: growing.later,
    ahead(place, bounds, from, days) {
      const { mean, lately } = growing.heat.ahead(place, bounds, from, days);
      // In a first season nothing tells of dates: the last days are better than nothing.
      return mean ?? (lately === null ? null : Array<number>(days).fill(lately));
    },
    version: () =>
      store.stations
        .all()
        .map(({ id, importedAt }) => `${id}@${importedAt}`)
        .join(' '),
  };
}
