import type { Store } from '../store/index.ts';
import { foldLoss } from './foldLoss.ts';
import type { Loss, LossEntry, LossEvent } from './loss.ts';

const KIND = 'loss';

/** Every loss the journal tells of, kept at hand; only what was entered since is read again. */
export function makeLossBook(store: Store) {
  const entries = new Map<string, LossEntry[]>();
  const losses = new Map<string, Loss>();
  let read = 0;

  const refresh = () => {
    const touched = new Set<string>();
    for (const { id, t, who, subject, body } of store.journal.after(KIND, read)) {
      read = id;
      if (subject === null) continue;
      const own = entries.get(subject) ?? [];
      own.push({ id, t, who, body: body as LossEvent });
      entries.set(subject, own);
      touched.add(subject);
    }
    for (const id of touched) {
      const loss = foldLoss(id, entries.get(id) ?? []);
      if (loss) losses.set(id, loss);
    }
    return losses;
  };

  return {
    all: (): Loss[] => [...refresh().values()],
    get: (id: string): Loss | undefined => refresh().get(id),
    /** Adds to the journal; the loss is what all its entries come to. */
    add(id: string, place: string, event: LossEvent, who: string, t: number): Loss {
      store.journal.add({ t, who, what: KIND, place, subject: id, body: event });
      const loss = refresh().get(id);
      if (!loss) throw new Error(`Expected a loss that was entered, got ${id}`);
      return loss;
    },
    /** The first free name for a loss of this crop on this day: `loss-basil-0423-2`. */
    nextId(crop: string, day: string): string {
      const known = refresh();
      const stem = `loss-${crop}-${day.slice(5).replace('-', '')}-`;
      for (let n = 1; ; n++) if (!known.has(`${stem}${n}`)) return `${stem}${n}`;
    },
    /** Names of photos that belong to a loss, also to one that was withdrawn. */
    photos: (): string[] => [...refresh().values()].flatMap(({ photo }) => photo ?? []),
  };
}
