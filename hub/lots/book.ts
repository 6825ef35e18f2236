import { journalBook } from '../journal/index.ts';
import type { Store } from '../store/index.ts';
import { foldLot } from './foldLot.ts';
import type { Lot, LotEvent } from './lot.ts';

/** Every lot that was put away, as its entries in the journal tell. */
export function makeBook(store: Store) {
  const book = journalBook<LotEvent, Lot>(store, 'lot', foldLot);
  return {
    ...book,
    inStore: (): Lot[] => book.all().filter(({ state }) => state === 'stored'),
  };
}
