import { useEffect } from 'preact/hooks';
import { alarmsNow } from '../alarmState.ts';
import { now as clock } from '../clock.ts';
import { callOut, sound } from '../sound.ts';
import { farm, link, today } from '../state.ts';
import { when } from '../times.ts';
import { words } from '../words.ts';
import { Mark } from './Mark.tsx';
import { SeenButtons } from './SeenButtons.tsx';
import { SoundSwitch } from './SoundSwitch.tsx';

/** A hub that says nothing for so long is to be taken for gone. Common practice, no source. */
const SILENT_AFTER = 300_000; // ms

/**
 * On every page: alarms nobody has seen, those that stand and that the page below does not show by
 * itself, what is silent, and messages that do not get through. Here the page sounds.
 */
export function AlarmNotice({ path }: { path: string }) {
  const facts = alarmsNow.value;
  const zone = farm.value?.zone;
  const now = clock.value;
  const lost = link.value;
  const gone =
    lost.state === 'lost' && lost.since !== null && now !== null && now - lost.since > SILENT_AFTER;
  const sounding = gone || (facts?.alarms.some((alarm) => alarm.sounds) ?? false);
  useEffect(() => callOut(sounding), [sounding]);
  const inList = path === '/alarms';
  const shown = (inList ? [] : (facts?.alarms ?? [])).filter(
    ({ state }) => path !== '/' || state !== 'active-acknowledged',
  );
  const tasks = today.value?.tasks ?? [];
  return (
    <>
      <div role="alert" class="alarm-stack">
        {gone && (
          <p class="alarm-notice">
            <Mark shape="alarm" />
            <span>
              <strong>{words.frame.alarm}.</strong> {words.alarms.hubSilent}
            </span>
          </p>
        )}
        {shown.map((alarm) => {
          const task = tasks.find(({ id }) => id === alarm.id);
          return (
            <div key={`${alarm.id} ${alarm.since}`} class="alarm-notice">
              <Mark shape="alarm" />
              <div>
                <p>
                  <strong>
                    {alarm.kind === 'test' ? words.alarms.testTitle : words.frame.alarm}.
                  </strong>{' '}
                  {alarm.words}{' '}
                  {alarm.state === 'cleared-unacknowledged' && (
                    <em>{words.alarms.states[alarm.state]}.</em>
                  )}{' '}
                  {path !== '/' && task && (
                    <a href={`/#${encodeURIComponent(task.id)}`}>{words.frame.seeTasks}</a>
                  )}
                </p>
                <SeenButtons alarm={alarm} />
              </div>
            </div>
          );
        })}
      </div>
      {sounding && sound.value !== 'on' && path === '/' && <SoundSwitch />}
      <div role="status">
        {zone !== undefined &&
          now !== null &&
          !inList &&
          facts?.silences.map((silence) => {
            const what = [
              silence.placeName ?? words.alarms.silence.farm,
              ...(silence.kind === null ? [] : [words.alarms.kind(silence.kind)]),
              ...(silence.work ? [words.alarms.silence.work] : []),
              silence.reason,
            ].join(', ');
            return (
              <p key={silence.id} class="banner">
                <span>
                  {words.alarms.silence.line(what, when(Date.parse(silence.until), zone, now))}{' '}
                  <a href="/alarms">{words.alarms.toPage}</a>
                </span>
              </p>
            );
          })}
        {!inList && facts?.troubles[0] && (
          <p class="banner">
            <Mark shape="care" />
            <span>
              {words.alarms.troubles(facts.troubles[0], facts.troubles.length - 1)}{' '}
              <a href="/alarms">{words.alarms.toPage}</a>
            </span>
          </p>
        )}
      </div>
    </>
  );
}
