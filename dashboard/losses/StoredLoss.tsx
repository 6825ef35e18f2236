import type { LossHistory } from '../../hub/contract/index.ts';
import { useSending } from '../coolRoom/useSending.ts';
import { words } from '../words.ts';
import { changeLoss } from './commands.ts';
import { PhotoButton } from './PhotoButton.tsx';

export type Said = { readonly sentence: string; readonly loss: LossHistory | null };

/** What the hub stored just now, with the way back and a photo for it. */
export function StoredLoss({ said, onSaid }: { said: Said | null; onSaid: (said: Said) => void }) {
  const text = words.losses;
  const { sending, failed, send } = useSending();
  const loss = said?.loss ?? null;
  const undo = async () => {
    const [newest] = loss?.history ?? [];
    if (!loss || !newest) return;
    const changed = await send(() => changeLoss(loss.id, { undo: newest.entry }));
    if (changed) onSaid({ sentence: text.undone, loss: null });
  };
  return (
    <div class="lot-said loss-said" role="status">
      {said && (
        <p>
          <span>{said.sentence}</span>
          {loss?.history[0]?.mayUndo && (
            <button type="button" aria-disabled={sending} onClick={undo}>
              {sending ? text.sending : text.undo}
            </button>
          )}
        </p>
      )}
      {failed !== '' && <p class="failed-line">{failed}</p>}
      {loss && loss.photo === null && loss.state !== 'withdrawn' && (
        <PhotoButton
          loss={loss.id}
          onDone={(changed) => onSaid({ sentence: text.photoSent, loss: changed })}
        />
      )}
    </div>
  );
}
