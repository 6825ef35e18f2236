import './photos.css';
import { useState } from 'preact/hooks';
import { useSending } from '../coolRoom/useSending.ts';
import { words } from '../words.ts';
import { sendPhoto } from './sendPhoto.ts';
import { shrink } from './shrink.ts';

/** Takes a photo, or one from the phone; made smaller here, then sent. Tells the name the hub gave it. */
export function PhotoPick({
  had = false,
  onSent,
}: {
  /** One was taken already: another one takes its place. */
  had?: boolean;
  onSent: (photo: string) => void | Promise<void>;
}) {
  const text = words.photos;
  const { sending, failed, send } = useSending();
  const [bad, setBad] = useState(false);
  const choose = async (file: File | undefined) => {
    if (!file) return;
    await send(async () => {
      const small = await shrink(file);
      setBad(small === null);
      if (small === null) return;
      await onSent(await sendPhoto(small));
    });
  };
  return (
    <div class="photo-button">
      <label class="as-button">
        {sending ? text.sending : had ? text.another : text.add}
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
      <p class="quiet">{text.why}</p>
      <p role="status" class="failed-line">
        {bad ? text.bad : failed}
      </p>
    </div>
  );
}
