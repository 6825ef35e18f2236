import { useEffect, useState } from 'preact/hooks';
import type { BatchHistory } from '../../hub/contract/index.ts';
import { useSending } from '../coolRoom/useSending.ts';
import { words } from '../words.ts';
import { changeBatch } from './commands.ts';

/** What the hub has stored last on this screen, and the entries it can take back. */
export type Said = {
  readonly sentence: string;
  readonly undo: readonly { readonly id: string; readonly entry: number }[];
};

const UNDO_FOR = 60_000; // ms of a wall clock

/** The entry a batch got last. */
export const lastOf = (batch: BatchHistory) => {
  // Trays that were carried off took an entry in two batches; the one here takes both back.
  const entry = batch.history[0]?.entry;
  return entry === undefined ? [] : [{ id: batch.id, entry }];
};

/** The hub's word for the last tap, and for a minute the way back. */
export function Stored({ said, onUndone }: { said: Said | null; onUndone: () => void }) {
  const [over, setOver] = useState(false);
  const { sending, failed, send } = useSending();
  useEffect(() => {
    setOver(false);
    const timer = setTimeout(() => setOver(true), UNDO_FOR);
    return () => clearTimeout(timer);
  }, [said]);
  const undo = async () => {
    const done = await send(async () => {
      for (const { id, entry } of said?.undo ?? []) await changeBatch(id, { undo: entry });
      return true;
    });
    if (done) onUndone();
  };
  return (
    <div role="status" class={over ? 'batch-said' : 'batch-said batch-said-new'}>
      {said !== null && (
        <p>
          <span>{said.sentence}</span>
          {said.undo.length > 0 && !over && (
            <button type="button" aria-disabled={sending} onClick={undo}>
              {sending ? words.batches.sending : words.batches.undo}
            </button>
          )}
        </p>
      )}
      {failed !== '' && <p class="failed-line">{failed}</p>}
    </div>
  );
}
