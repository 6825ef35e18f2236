import { type JournalBook, journalBook } from '../journal/index.ts';
import type { Store } from '../store/index.ts';
import type { Batch, BatchEvent } from './batch.ts';
import { foldBatch } from './foldBatch.ts';

export {
  type Batch,
  type BatchEntry,
  type BatchEvent,
  type BatchFacts,
  type BatchLook,
  type BatchWork,
  batchLooks,
  batchWorks,
  type Cut,
  type CutStage,
  cutStages,
  type EntryOf,
  type Override,
  type Stay,
} from './batch.ts';
export { batchSpans } from './batchSpans.ts';
export {
  earliestEntry,
  eventFault,
  type FaultAbout,
  factsFault,
  growingPlaces,
  leastTrays,
  traysGone,
} from './eventFault.ts';
export { foldBatch } from './foldBatch.ts';
export { growingAt, type Standing, standingAt, traysByCrop } from './standing.ts';
export { undoing } from './undoing.ts';

export type Batches = JournalBook<BatchEvent, Batch>;

/** Every batch that was sown, as its entries in the journal tell. */
export const makeBatches = (store: Store): Batches => journalBook(store, 'batch', foldBatch);
