import type { Store } from '../store/index.ts';
import { foldLot } from './foldLot.ts';
import type { Lot, LotEntry, LotEvent } from './lot.ts';

const KIND = 'lot';

/** Every lot the journal tells of, kept at hand; only what was entered since is read again. */
export function makeBook(store: Store) {
  const entries = new Map<string, LotEntry[]>();
  const lots = new Map<string, Lot>();
  let read = 0;

  const refresh = () => {
    const touched = new Set<string>();
    for (const { id, t, who, subject, body } of store.journal.after(KIND, read)) {
      read = id;
      if (subject === null) continue;
      const own = entries.get(subject) ?? [];
      own.push({ id, t, who, body: body as LotEvent });
      entries.set(subject, own);
      touched.add(subject);
    }
    for (const id of touched) {
      const lot = foldLot(id, entries.get(id) ?? []);
      if (lot) lots.set(id, lot);
    }
    return lots;
  };

  return {
    all: (): Lot[] => [...refresh().values()],
    inStore: (): Lot[] => [...refresh().values()].filter(({ state }) => state === 'stored'),
    get: (id: string): Lot | undefined => refresh().get(id),
    /** Adds to the journal; the lot is what all its entries come to. */
    add(id: string, place: string, event: LotEvent, who: string, t: number): Lot {
      store.journal.add({ t, who, what: KIND, place, subject: id, body: event });
      const lot = refresh().get(id);
      if (!lot) throw new Error(`Expected a lot that was put away, got ${id}`);
      return lot;
    },
    /** Several at once, or none: what belongs together is kept together. */
    addAll(
      entries: readonly { readonly id: string; readonly place: string; readonly event: LotEvent }[],
      who: string,
      t: number,
    ) {
      store.transaction(() => {
        for (const { id, place, event } of entries)
          store.journal.add({ t, who, what: KIND, place, subject: id, body: event });
      });
      refresh();
    },
    /** The first free name for a lot of this crop put away on this day: `basil-0423-2`. */
    nextId(crop: string, day: string): string {
      const known = refresh();
      const stem = `${crop}-${day.slice(5).replace('-', '')}-`;
      for (let n = 1; ; n++) if (!known.has(`${stem}${n}`)) return `${stem}${n}`;
    },
  };
}
export type Book = ReturnType<typeof makeBook>;
