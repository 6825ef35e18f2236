import { useEffect } from 'preact/hooks';
import { refreshAlarms } from '../alarmState.ts';
import { refreshProbes } from '../live.ts';
import { Fault } from '../parts/Fault.tsx';
import { words } from '../words.ts';
import { described, describedFault, refreshDescription } from './description.ts';
import { STEPS, stateOf } from './steps.ts';
import './setUp.css';

/** Beside the word for it. */
const SHAPES = { done: '✓', open: '○', optional: '–' } as const;

/** Every step with how far it is, each to be left and come back to. */
export function StepList() {
  const text = words.setUpSteps;
  useEffect(() => {
    refreshDescription();
    refreshProbes();
    refreshAlarms();
  }, []);
  const now = described.value;
  const first = now === null ? undefined : STEPS.find((step) => stateOf(step, now) === 'open');
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
              <span class="quiet">
                <span aria-hidden="true">{SHAPES[stateOf(step, now)]}</span>{' '}
                {text.states[stateOf(step, now)]}
              </span>
            </li>
          ))}
        </ol>
      )}
      {first !== undefined && (
        <p class="set-up-ways">
          <a class="go-on" href={`/set-up/${first}`}>
            {text.goOn(text.names[first] ?? '')}
          </a>
        </p>
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
