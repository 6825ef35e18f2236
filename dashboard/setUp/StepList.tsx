import { useEffect } from 'preact/hooks';
import { refreshAlarms } from '../alarmState.ts';
import { refreshProbes } from '../live.ts';
import { Fault } from '../parts/Fault.tsx';
import { words } from '../words.ts';
import { described, describedFault, refreshDescription } from './description.ts';
import { STEPS, stateOf } from './steps.ts';

/** Every step with how far it is, each to be left and come back to. */
export function StepList() {
  const text = words.setUpSteps;
  useEffect(() => {
    refreshDescription();
    refreshProbes();
    refreshAlarms();
  }, []);
  const now = described.value;
  return (
    <section class="set-up-steps">
      <h2>{text.title}</h2>
      <p class="quiet">{text.why}</p>
      {now === null || describedFault.value !== undefined ? (
        <Fault sentence={describedFault.value} again={refreshDescription} />
      ) : (
        <ol>
          {STEPS.map((step) => (
            <li key={step}>
              <a href={`/set-up/${step}`}>{text.names[step]}</a>{' '}
              <span class="quiet">{text.states[stateOf(step, now)]}</span>
            </li>
          ))}
        </ol>
      )}
      <p>
        <a href="/set-up/changes">{text.changes}</a>
      </p>
      {now !== null && now.description !== null && (
        <p class="quiet">
          {text.fileWhy} <a href="/api/farm/text">{text.file}</a>
        </p>
      )}
    </section>
  );
}
