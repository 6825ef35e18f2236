import type {
  BatchFileResult,
  BatchHistory,
  ChangeBatch,
  RepeatBatches,
  SowBatch,
} from '../../hub/contract/index.ts';
import { ask, Refusal } from '../ask.ts';
import { refresh } from '../live.ts';
import { signInNeeded } from '../state.ts';

// What a tap on the page of batches asks the hub to do. Nothing changes before it has answered.
// Each @throws Refusal with a sentence for the screen; of status 409 where a warning has to be heeded.

async function sent<Shape>(path: string, command: unknown, method: 'POST' | 'PATCH' = 'POST') {
  try {
    const answer = await ask<Shape>(path, command, method);
    refresh();
    return answer;
  } catch (error) {
    if (error instanceof Refusal && error.status === 401) signInNeeded.value = true;
    throw error;
  }
}

export const sowBatch = (batch: SowBatch) => sent<BatchHistory>('/api/batches', batch);

export const repeatBatches = (again: RepeatBatches) =>
  sent<BatchHistory[]>('/api/batches/repeat', again);

export const changeBatch = (id: string, change: ChangeBatch) =>
  sent<BatchHistory>(`/api/batches/${encodeURIComponent(id)}`, change, 'PATCH');

/** Looks at a file, or enters it. */
export const takeFile = (csv: string, enter: boolean) =>
  sent<BatchFileResult>('/api/batches/file', { csv, enter });
