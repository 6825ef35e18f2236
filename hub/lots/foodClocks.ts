import type { LotClass } from '../contract/index.ts';
import type { Store } from '../store/index.ts';

/** What was agreed for one class of lots; null where nobody has entered it. */
export type FoodClock = {
  readonly class: LotClass;
  /** °C */
  readonly limit: number | null;
  /** Hours over the limit, since harvest or cutting. */
  readonly clockHours: number | null;
  /** Words to say with it, as the officer put them. */
  readonly words: string | null;
  readonly setBy: string | null;
  readonly setAt: number | null;
};
type Agreed = Pick<FoodClock, 'limit' | 'clockHours' | 'words'> & { readonly by: string };

const KIND = 'food-clock';
const CLASSES: readonly LotClass[] = ['whole', 'cut', 'sprouts'];

/** Limit, clock and wording of each class of lots: the newest entry of the journal holds. */
export function makeFoodClocks(store: Store) {
  const clocks = new Map<LotClass, FoodClock>();
  let read = 0;
  const refresh = () => {
    for (const { id, t, subject, body } of store.journal.after(KIND, read)) {
      read = id;
      const { limit, clockHours, words, by } = body as Agreed;
      const of = subject as LotClass;
      clocks.set(of, { class: of, limit, clockHours, words, setBy: by, setAt: t });
    }
  };
  const empty = { limit: null, clockHours: null, words: null, setBy: null, setAt: null };
  return {
    of(lotClass: LotClass | null): FoodClock | null {
      refresh();
      return lotClass === null ? null : (clocks.get(lotClass) ?? { class: lotClass, ...empty });
    },
    all(): FoodClock[] {
      refresh();
      return CLASSES.map((one) => clocks.get(one) ?? { class: one, ...empty });
    },
    set(lotClass: LotClass, set: Agreed, who: string, t: number) {
      store.journal.add({ t, who, what: KIND, place: null, subject: lotClass, body: set });
    },
  };
}
export type FoodClocks = ReturnType<typeof makeFoodClocks>;
