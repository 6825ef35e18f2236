import { useState } from 'preact/hooks';
import type { AlarmKind, ShownSilence } from '../../hub/contract/index.ts';
import { endSilence, makeSilence } from '../alarmState.ts';
import { today } from '../state.ts';
import { when } from '../times.ts';
import { words } from '../words.ts';

const kinds: readonly AlarmKind[] = ['warm', 'door', 'unit', 'power', 'probe', 'frost'];
const GUARDED: readonly (AlarmKind | '')[] = ['warm', 'frost'];
const lengths = [30, 60, 120, 240, 480, 720]; // min; at most 12 h, common practice
const LONGEST_GUARDED = 120; // min, common practice

/** What is silent, until when and why; and making it so. */
export function Silences({
  silences,
  zone,
  now,
}: {
  silences: readonly ShownSilence[];
  zone: string;
  now: number;
}) {
  const text = words.alarms.silence;
  const [failed, setFailed] = useState('');
  const trying = async (work: () => Promise<void>) => {
    setFailed('');
    try {
      await work();
      return true;
    } catch (error) {
      setFailed(words.alarms.notDone(error instanceof Error ? error.message : String(error)));
      return false;
    }
  };
  return (
    <section>
      <h2>{text.title}</h2>
      {silences.length === 0 && <p class="quiet">{text.none}</p>}
      <ul class="values">
        {silences.map((silence) => {
          const what = [
            silence.placeName ?? text.farm,
            ...(silence.kind === null ? [] : [words.alarms.kind(silence.kind)]),
            ...(silence.work ? [text.work] : []),
          ].join(', ');
          return (
            <li key={silence.id} class="silence">
              <p>
                {text.line(what, when(Date.parse(silence.until), zone, now))}{' '}
                {text.by(silence.who, silence.reason)}
              </p>
              <div class="alarm-buttons">
                <button type="button" onClick={() => trying(() => endSilence(silence.id))}>
                  {text.end}
                </button>
              </div>
            </li>
          );
        })}
      </ul>
      <SilenceForm trying={trying} />
      <p role="status" class="failed-line">
        {failed}
      </p>
    </section>
  );
}

function SilenceForm({ trying }: { trying: (work: () => Promise<void>) => Promise<boolean> }) {
  const text = words.alarms.silence;
  const [place, setPlace] = useState('');
  const [kind, setKind] = useState<AlarmKind | ''>('');
  const [minutes, setMinutes] = useState(60);
  const [reason, setReason] = useState('');
  const [work, setWork] = useState(false);
  const longest = GUARDED.includes(kind) ? LONGEST_GUARDED : 720;
  const send = async (event: SubmitEvent) => {
    event.preventDefault();
    const asked = {
      ...{ place: place || null, kind: kind || null, reason, work },
      minutes: Math.min(minutes, longest),
    };
    if (await trying(() => makeSilence(asked))) setReason('');
  };
  return (
    <form class="alarm-form" onSubmit={send}>
      <p class="quiet">{text.keeps}</p>
      <label>
        {text.where}
        <select value={place} onChange={(event) => setPlace(event.currentTarget.value)}>
          <option value="">{text.everywhere}</option>
          {(today.value?.places ?? []).map(({ id, name }) => (
            <option key={id} value={id}>
              {name}
            </option>
          ))}
        </select>
      </label>
      <label>
        {text.which}
        <select
          value={kind}
          onChange={(event) => setKind(event.currentTarget.value as AlarmKind | '')}
        >
          <option value="">{text.all}</option>
          {kinds.map((one) => (
            <option key={one} value={one}>
              {words.alarms.kind(one)}
            </option>
          ))}
        </select>
      </label>
      <label>
        {text.long}
        <select
          value={Math.min(minutes, longest)}
          onChange={(event) => setMinutes(Number(event.currentTarget.value))}
        >
          {lengths
            .filter((one) => one <= longest)
            .map((one) => (
              <option key={one} value={one}>
                {text.minutes(one)}
              </option>
            ))}
        </select>
      </label>
      <label>
        {text.reason}
        <input
          required
          minLength={3}
          maxLength={200}
          value={reason}
          onInput={(event) => setReason(event.currentTarget.value)}
        />
      </label>
      <label class="tick">
        <input
          type="checkbox"
          checked={work}
          onChange={(event) => setWork(event.currentTarget.checked)}
        />{' '}
        {text.isWork}
      </label>
      <button type="submit" class="main">
        {text.make}
      </button>
    </form>
  );
}
