import type { Batch, BatchEvent, Batches, BatchFacts } from '../batches/index.ts';
import { type ReadAbout, sameTime, type Told } from './cells.ts';

export type PlanAbout = ReadAbout & { readonly batches: Batches };

/** What a file would enter of one batch. */
export type PlannedBatch = {
  /** The row it is first told in. */
  readonly line: number;
  readonly id: string;
  readonly facts: BatchFacts;
  /** Not in the hub yet. */
  readonly fresh: boolean;
  readonly events: readonly BatchEvent[];
};
export type Refusal = { readonly line: number; readonly reason: string };
export type Planned = {
  readonly batches: readonly PlannedBatch[];
  /** Rows that the hub has already, what was taken back there among them. */
  readonly known: number;
  readonly refused: readonly Refusal[];
};
/** A sowing as it was first told, and as it stands after its corrections. */
export function tellings(batch: Batch): BatchFacts[] {
  const first = batch.entries.flatMap(({ body }) => (body.event === 'sown' ? [body.facts] : []));
  return [{ ...batch, place: batch.firstPlace }, ...first];
}

/** Whether a batch is the one that a row tells of. */
export const isSowing = (batch: Batch, crop: string, sown: Told, about: ReadAbout) =>
  tellings(batch).some((one) => one.crop === crop && sameTime(sown, one.sownAt, about));
