import { useEffect, useState } from 'preact/hooks';
import type { Backtest } from '../../hub/contract/index.ts';
import { ask } from '../ask.ts';
import { words } from '../words.ts';
import { TrialResult } from './TrialResult.tsx';
import { useAnswer } from './useAnswer.ts';

const EVERY = 1000; // ms between two questions while a trial runs

/** The planner tried on past autumns: begun here, worked off by the hub, and called off here. */
export function CutBackTrial({ place }: { place: string }) {
  const text = words.cutBack.trial;
  const path = `/api/patches/${encodeURIComponent(place)}/backtest`;
  const { answer, again, put } = useAnswer<Backtest>(path);
  const [failed, setFailed] = useState('');
  const running = answer?.state === 'running';
  useEffect(() => {
    if (!running) return;
    const timer = setInterval(again, EVERY);
    return () => clearInterval(timer);
  }, [running, again]);
  const command = async (method?: 'DELETE') => {
    setFailed('');
    try {
      put(await ask<Backtest>(path, method === undefined ? {} : undefined, method));
    } catch (error) {
      setFailed(error instanceof Error ? error.message : String(error));
    }
  };
  const shown = answer ?? null;
  return (
    <div class="trial">
      <h3>{text.title}</h3>
      <p class="quiet">{text.what}</p>
      {shown?.state === 'running' ? (
        <>
          <p role="status">{text.running(shown.done, shown.of)}</p>
          <progress max={Math.max(1, shown.of)} value={shown.done} aria-label={text.title} />{' '}
          <button type="button" onClick={() => command('DELETE')}>
            {text.cancel}
          </button>
        </>
      ) : (
        <>
          {shown?.state === 'canceled' && <p role="status">{text.canceled}</p>}
          {shown?.state === 'failed' && <p role="status">{text.failed(shown.why ?? '')}</p>}
          {shown?.result && <TrialResult result={shown.result} />}
          <button type="button" onClick={() => command()}>
            {shown?.result ? text.again : text.start}
          </button>
        </>
      )}
      <p role="status" class="failed-line">
        {failed && text.failed(failed)}
      </p>
    </div>
  );
}
