import { useEffect, useState } from 'preact/hooks';
import type { LotHistory } from '../../hub/contract/index.ts';
import { words } from '../words.ts';
import { changeLot } from './commands.ts';
import { useSending } from './useSending.ts';

/** What the hub has stored last on this screen, and the entry it can take back. */
export type Said = { readonly sentence: string; readonly lot: LotHistory | null };

const UNDO_FOR = 60_000; // ms of a wall clock

/** The hub's word for the last tap, and for a minute the way back. */
export function Stored({
  said,
  onUndone,
}: {
  said: Said | null;
  onUndone: (lot: LotHistory) => void;
}) {
  const [over, setOver] = useState(false);
  const { sending, failed, send } = useSending();
  useEffect(() => {
    setOver(false);
    const timer = setTimeout(() => setOver(true), UNDO_FOR);
    return () => clearTimeout(timer);
  }, [said]);
  const lot = said?.lot;
  const entry = lot?.history[0]?.entry;
  const undo = async () => {
    if (!lot || entry === undefined) return;
    const undone = await send(() => changeLot(lot.id, { undo: entry }));
    if (undone) onUndone(undone);
  };
  return (
    <div role="status" class="lot-said">
      {said !== null && (
        <p>
          <span>{said.sentence}</span>
          {lot && !over && (
            <button type="button" aria-disabled={sending} onClick={undo}>
              {sending ? words.lots.sending : words.lots.undo}
            </button>
          )}
        </p>
      )}
      {failed !== '' && <p class="failed-line">{failed}</p>}
    </div>
  );
}
