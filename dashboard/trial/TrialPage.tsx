import './trial.css';
import { useEffect, useState } from 'preact/hooks';
import type { Trial, TrialStart } from '../../hub/contract/index.ts';
import { ask } from '../ask.ts';
import { useFacts } from '../coolRoom/useFacts.ts';
import { Fault } from '../parts/Fault.tsx';
import { Heading } from '../parts/Heading.tsx';
import { words } from '../words.ts';
import { type Chosen, TrialForm } from './TrialForm.tsx';
import { TrialFound } from './TrialFound.tsx';
import { TrialRunning } from './TrialRunning.tsx';
import { useTrial } from './useTrial.ts';

/** Change a limit, see what it would have been over the readings kept, then keep it or not. */
export function TrialPage() {
  const text = words.trial;
  const { facts: start, fault, again } = useFacts<TrialStart>('/api/trials');
  const { trial, follow, failed } = useTrial();
  const [said, setSaid] = useState('');
  const newest = start?.newest ?? null;
  // What was tried last is still there when one comes back to the page.
  useEffect(() => {
    if (newest !== null && trial === null) follow(newest);
  }, [newest]);
  const begin = async ({ changes, from, to }: Chosen) => {
    setSaid('');
    const begun = await ask<Trial>('/api/trials', { changes, from, to });
    follow(begun.id, begun);
  };
  return (
    <div class="trial-page">
      <Heading title={text.title} />
      {start === null ? (
        <Fault sentence={fault} again={again} />
      ) : (
        <>
          <p>{text.why}</p>
          {start.days === null ? (
            <p class="sentence">{text.noReadings}</p>
          ) : (
            <TrialForm
              start={start}
              days={start.days}
              running={trial?.state === 'running'}
              onBegin={begin}
            />
          )}
          <p role="status" class={failed === '' ? '' : 'failed-line'}>
            {failed === '' ? said : failed}
          </p>
          {trial?.state === 'running' && (
            <TrialRunning
              trial={trial}
              onStop={async () => {
                const off = await ask<Trial>(`/api/trials/${trial.id}`, undefined, 'DELETE');
                follow(null);
                if (off.state === 'canceled') setSaid(text.canceled);
                else follow(off.id, off);
              }}
            />
          )}
          {trial?.state === 'failed' && <p class="failed">{text.failed(trial.why ?? '')}</p>}
          {trial?.state === 'done' && (
            <TrialFound
              key={trial.id}
              trial={trial}
              onOver={(sentence) => {
                follow(null);
                setSaid(sentence);
                again();
              }}
            />
          )}
        </>
      )}
    </div>
  );
}
