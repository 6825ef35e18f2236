import { useEffect, useState } from 'preact/hooks';
import { alarmFault, alarmSettings, refreshAlarmSettings, refreshAlarms } from '../alarmState.ts';
import { Fault } from '../parts/Fault.tsx';
import { PeopleForm } from '../parts/PeopleForm.tsx';
import { Rehearsal } from '../parts/Rehearsal.tsx';
import { SendingForm } from '../parts/SendingForm.tsx';
import { SoundSwitch } from '../parts/SoundSwitch.tsx';
import { sound, soundOnce } from '../sound.ts';
import { words } from '../words.ts';

/** Who is told of an alarm and how, tried out here: the sound, a message to each, an alarm as if. */
export function AlarmStep() {
  const text = words.setUpSteps;
  const load = () => {
    refreshAlarmSettings();
    refreshAlarms();
  };
  useEffect(load, []);
  const settings = alarmSettings.value;
  return (
    <>
      <h2>{text.soundHere}</h2>
      <SoundSwitch />
      <TrySound />
      <h2>{words.alarms.people.title}</h2>
      <p class="quiet">{text.alarmsWhy}</p>
      {settings === null ? (
        <Fault sentence={alarmFault.value} again={load} />
      ) : (
        <>
          <PeopleForm settings={settings} />
          <details open={settings.people.some(({ email }) => email !== null) && !settings.mail}>
            <summary>{words.alarms.sending.ways}</summary>
            <SendingForm settings={settings} />
          </details>
          <h2>{text.asIf}</h2>
          <p class="quiet">{text.asIfWhy}</p>
          <Rehearsal />
        </>
      )}
      <p class="set-up-ways">
        <a href="/alarms">{text.toAlarms}</a>
      </p>
    </>
  );
}

function TrySound() {
  const text = words.setUpSteps;
  const [said, setSaid] = useState('');
  if (sound.value === 'none') return null;
  return (
    <div class="alarm-buttons">
      <button
        type="button"
        onClick={async () => setSaid((await soundOnce()) ? text.sounded : text.notSounded)}
      >
        {text.trySound}
      </button>
      <p role="status">{said}</p>
    </div>
  );
}
