import type { Trial } from '../../hub/contract/index.ts';
import { useSending } from '../parts/useSending.ts';
import { words } from '../words.ts';

/** How far it is, and where; a way out. */
export function TrialRunning({ trial, onStop }: { trial: Trial; onStop: () => Promise<void> }) {
  const text = words.trial;
  const { sending, failed, send } = useSending();
  const percent = Math.round(100 * trial.progress);
  return (
    <section class="trial-running" aria-label={text.running}>
      <progress max={100} value={percent} aria-label={text.running} />
      <p>{text.progress(percent, trial.place)}</p>
      <button type="button" disabled={sending} onClick={() => send(onStop)}>
        {text.cancel}
      </button>
      <p role="status" class="failed-line">
        {failed}
      </p>
    </section>
  );
}
