import { useState } from 'preact/hooks';
import type { LossHistory } from '../../hub/contract/index.ts';
import { useSending } from '../coolRoom/useSending.ts';
import { words } from '../words.ts';
import { changeLoss, sendPhoto } from './commands.ts';
import { shrink } from './shrink.ts';

/** Takes a photo, or one from the phone, for a loss that is stored already. */
export function PhotoButton({
  loss,
  onDone,
}: {
  loss: string;
  onDone: (changed: LossHistory) => void;
}) {
  const text = words.losses;
  const { sending, failed, send } = useSending();
  const [bad, setBad] = useState(false);
  const choose = async (file: File | undefined) => {
    if (!file) return;
    const changed = await send(async () => {
      const small = await shrink(file);
      setBad(small === null);
      if (small === null) return undefined;
      const { photo } = await sendPhoto(small);
      return changeLoss(loss, { photo });
    });
    if (changed) onDone(changed);
  };
  return (
    <div class="photo-button">
      <label class="as-button">
        {sending ? text.sending : text.addPhoto}
        <input
          type="file"
          accept="image/jpeg,image/png,image/webp"
          disabled={sending}
          onChange={(event) => {
            choose(event.currentTarget.files?.[0]);
            event.currentTarget.value = '';
          }}
        />
      </label>
      <p class="quiet">{text.photoWhy}</p>
      <p role="status" class="failed-line">
        {bad ? text.photoBad : failed}
      </p>
    </div>
  );
}
