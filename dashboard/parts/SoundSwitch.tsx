import { allowSound, sound, stopSound } from '../sound.ts';
import { words } from '../words.ts';

/** Says plainly whether this page can sound, and lets it by one tap. */
export function SoundSwitch() {
  const text = words.alarms.sound;
  const is = sound.value;
  const said = { on: text.on, off: text.off, waiting: text.waiting, none: text.none }[is];
  return (
    <div class="sound-switch" data-sound={is}>
      <p role="status">{said}</p>
      {is === 'on' && (
        <button type="button" onClick={() => stopSound()}>
          {text.stop}
        </button>
      )}
      {(is === 'off' || is === 'waiting') && (
        <button type="button" class="main" onClick={() => allowSound()}>
          {text.allow}
        </button>
      )}
    </div>
  );
}
