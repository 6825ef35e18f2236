import type { ComponentType } from 'preact';
import { useEffect } from 'preact/hooks';
import { refreshAlarms } from '../alarmState.ts';
import { Fault } from '../parts/Fault.tsx';
import { Heading } from '../parts/Heading.tsx';
import { farm, farmChanges, mayChange } from '../state.ts';
import { words } from '../words.ts';
import { AlarmStep } from './AlarmStep.tsx';
import { Changes } from './Changes.tsx';
import { CropStep } from './CropStep.tsx';
import { DeliveryStep } from './DeliveryStep.tsx';
import {
  type Description,
  described,
  describedFault,
  refreshDescription,
  stored,
} from './description.ts';
import { FirstStep } from './FirstStep.tsx';
import { NameStep } from './NameStep.tsx';
import { PlaceStep } from './PlaceStep.tsx';
import { PositionStep } from './PositionStep.tsx';
import { ProbeStep } from './ProbeStep.tsx';
import { STEPS, type Step, stateOf } from './steps.ts';
import { UnitsStep } from './UnitsStep.tsx';
import './setUp.css';

const shown: Readonly<Record<Step, ComponentType<{ now: Description }>>> = {
  name: NameStep,
  position: PositionStep,
  units: UnitsStep,
  places: PlaceStep,
  crops: CropStep,
  deliveries: DeliveryStep,
  probes: ProbeStep,
  alarms: AlarmStep,
  first: FirstStep,
};
/** These say something before the farm has a name; the others change what is not there yet. */
const FREE: readonly Step[] = ['name', 'units', 'alarms', 'first'];
/** They are stored and gone on from by one button. */
const ONE_FORM: readonly Step[] = ['name', 'position'];

/** One step of describing the farm, and the way to the next. */
export function StepPage({ params }: { params: Readonly<Record<string, string>> }) {
  const text = words.setUpSteps;
  const here = `/set-up/${params.step}`;
  const ready = farm.value !== null;
  const may = mayChange.value; // known later than a farm that the browser kept
  useEffect(() => {
    window.scrollTo(0, 0);
    refreshAlarms();
    return () => {
      if (stored.peek()?.at === here) stored.value = null;
    };
  }, [here]);
  useEffect(() => {
    if (ready && may) refreshDescription();
  }, [ready, may, farmChanges.value]); // also when somebody else has changed it
  const at = STEPS.indexOf(params.step as Step);
  const step = STEPS[at];
  const next = step === undefined ? undefined : STEPS[at + 1];
  const changes = params.step === 'changes';
  const title = changes ? text.changes : step === undefined ? words.frame.noPage : text.names[step];
  const now = described.value;
  const Part = step === undefined ? null : shown[step];
  const body = () => {
    if (!mayChange.value) return <p class="quiet">{words.setUp.helper}</p>;
    if (now === null || describedFault.value !== undefined)
      return <Fault sentence={describedFault.value} again={refreshDescription} />;
    if (changes) return <Changes now={now} />;
    if (Part === null || step === undefined) return <p>{words.frame.noPageWhy}</p>;
    if (now.description === null && !FREE.includes(step))
      return (
        <p>
          <a href="/set-up/name">{text.nameFirst}</a>
        </p>
      );
    return <Part key={step} now={now} />;
  };
  return (
    <div class="set-up">
      <Heading title={title ?? ''} />
      {step !== undefined && (
        <p class="quiet">
          {text.step(at + 1, STEPS.length)}
          {now !== null && `, ${text.states[stateOf(step, now)]}`}
        </p>
      )}
      <p role="status" class="said">
        {stored.value?.at === here && stored.value.said}
      </p>
      {body()}
      <p class="set-up-ways">
        {next !== undefined && (
          <a
            class={step !== undefined && ONE_FORM.includes(step) ? '' : 'go-on'}
            href={`/set-up/${next}`}
          >
            {text.next(text.names[next] ?? '')}
          </a>
        )}
        <a href="/set-up">{text.all}</a>
      </p>
    </div>
  );
}
