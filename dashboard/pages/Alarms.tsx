import { useEffect } from 'preact/hooks';
import {
  alarmFault,
  alarmLog,
  alarmSettings,
  alarmsNow,
  refreshAlarmLog,
  refreshAlarmSettings,
  refreshAlarms,
} from '../alarmState.ts';
import { now as clock } from '../clock.ts';
import { AlarmCard } from '../parts/AlarmCard.tsx';
import { AlarmLogPart } from '../parts/AlarmLogPart.tsx';
import { AlarmRulesForm } from '../parts/AlarmRulesForm.tsx';
import { Fault } from '../parts/Fault.tsx';
import { Heading } from '../parts/Heading.tsx';
import { Mark } from '../parts/Mark.tsx';
import { PeopleForm } from '../parts/PeopleForm.tsx';
import { Rehearsal } from '../parts/Rehearsal.tsx';
import { SendingForm } from '../parts/SendingForm.tsx';
import { Silences } from '../parts/Silences.tsx';
import { SoundSwitch } from '../parts/SoundSwitch.tsx';
import { alarmChanges, farm, mayChange } from '../state.ts';
import { words } from '../words.ts';

const refreshAll = () => {
  refreshAlarms();
  refreshAlarmSettings();
  refreshAlarmLog();
};

/** What stands, what is silent, who is woken, how it is sent, and what there was. */
export function Alarms() {
  const text = words.alarms;
  const zone = farm.value?.zone;
  const now = clock.value;
  const ready = farm.value !== null;
  const changes = alarmChanges.value;
  useEffect(() => {
    if (ready) refreshAll();
  }, [ready]);
  useEffect(() => {
    if (ready && changes > 0) refreshAlarmLog();
  }, [ready, changes]);
  const facts = alarmsNow.value;
  const settings = alarmSettings.value;
  if (facts === null || zone === undefined || now === null) {
    return (
      <>
        <Heading title={text.title} />
        <Fault sentence={alarmFault.value} again={refreshAll} />
      </>
    );
  }
  return (
    <div class="alarms">
      <Heading title={text.title} />
      {alarmFault.value !== undefined && <Fault sentence={alarmFault.value} again={refreshAll} />}
      <SoundSwitch />
      {facts.alarms.length === 0 && <p class="sentence">{text.none}</p>}
      {facts.alarms.length > 0 && <h2 class="unseen">{text.standing}</h2>}
      {facts.alarms.map((alarm) => (
        <AlarmCard key={`${alarm.id} ${alarm.since}`} alarm={alarm} zone={zone} now={now} />
      ))}
      {!facts.anybody && <p>{text.nobody}</p>}
      {facts.troubles.map((trouble) => (
        <p key={`${trouble.person} ${trouble.channel}`} class="banner">
          <Mark shape="care" />
          <span>{text.troubles(trouble, 0)}</span>
        </p>
      ))}
      <Silences silences={facts.silences} zone={zone} now={now} />
      {settings === null && mayChange.value && alarmFault.value === undefined && (
        <Fault sentence={undefined} />
      )}
      {settings && (
        <section>
          <h2>{text.people.title}</h2>
          <PeopleForm settings={settings} />
          <Rehearsal />
          <h2>{text.sending.title}</h2>
          <details>
            <summary>{text.sending.rules}</summary>
            <AlarmRulesForm settings={settings} />
          </details>
          <details>
            <summary>{text.sending.ways}</summary>
            <SendingForm settings={settings} />
          </details>
        </section>
      )}
      {alarmLog.value && <AlarmLogPart log={alarmLog.value} zone={zone} now={now} />}
    </div>
  );
}
