import { journalBook } from '../journal/index.ts';
import type { Store } from '../store/index.ts';
import { foldLoss } from './foldLoss.ts';
import type { Loss, LossEvent } from './loss.ts';

/** Every loss that was entered, as its entries in the journal tell. */
export function makeLossBook(store: Store) {
  const book = journalBook<LossEvent, Loss>(store, 'loss', foldLoss);
  return {
    ...book,
    /** `loss-basil-0423-2`: a batch or lot of the same crop and day has another name. */
    nextId: (crop: string, day: string): string => book.nextId(`loss-${crop}`, day),
    /** Names of photos that belong to a loss, also to one that was withdrawn. */
    photos: (): string[] => book.all().flatMap(({ photo }) => photo ?? []),
  };
}
