import { type JournalBook, journalBook } from '../journal/index.ts';
import type { Store } from '../store/index.ts';
import { foldPick } from './foldPick.ts';
import type { Pick, PickEvent } from './pick.ts';

export { foldPick } from './foldPick.ts';
export { handMinutes, type Pick, type PickEntry, type PickEvent, type PickFacts } from './pick.ts';
export { type Picked, pickedOf } from './pickedOf.ts';
export { seasonPicks } from './seasonPicks.ts';

export type Picks = JournalBook<PickEvent, Pick>;

/** Every picking that was entered, as its entries in the journal tell. */
export const makePicks = (store: Store): Picks => journalBook(store, 'pick', foldPick);
