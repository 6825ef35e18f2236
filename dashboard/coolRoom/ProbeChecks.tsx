import { useState } from 'preact/hooks';
import type { CheckedProbe, CoolRoomLog } from '../../hub/contract/index.ts';
import { Mark } from '../parts/Mark.tsx';
import { when } from '../times.ts';
import { keptOf } from '../typed.ts';
import { words } from '../words.ts';
import { enterCheck } from './commands.ts';
import { Field, FormEnd } from './Field.tsx';
import { byMe, NameField } from './NameField.tsx';
import { useSending } from './useSending.ts';

/** Probes of a room with the age of their last check, all checks, and the way to enter one. */
export function ProbeChecks({
  log,
  zone,
  now,
  onStored,
}: {
  log: CoolRoomLog;
  zone: string;
  now: number;
  onStored: () => void;
}) {
  const text = words.record;
  return (
    <section>
      <h2>{text.checks}</h2>
      {log.probes.length === 0 && <p class="quiet">{text.none}</p>}
      {log.probes.map((probe) => (
        <div key={probe.probe}>
          <p>
            <Mark shape={probe.due ? 'care' : 'done'} /> {probe.words}
          </p>
          <CheckForm probe={probe} how={log.checkHow} onStored={onStored} />
        </div>
      ))}
      <CheckLines log={log} zone={zone} now={now} />
    </section>
  );
}

/** Every check of these probes, the newest first. */
export function CheckLines({ log, zone, now }: { log: CoolRoomLog; zone: string; now: number }) {
  if (log.checks.length === 0) return null;
  return (
    <ul class="plain-list">
      {log.checks.toReversed().map((check) => (
        <li key={check.entry}>
          <span>
            {when(Date.parse(check.at), zone, now)}, {check.words}
          </span>
        </li>
      ))}
    </ul>
  );
}

const EMPTY = { reading: '', second: '', reference: '' };

function CheckForm({
  probe,
  how,
  onStored,
}: {
  probe: CheckedProbe;
  how: string;
  onStored: () => void;
}) {
  const text = words.record;
  const [said, setSaid] = useState(EMPTY);
  const [apply, setApply] = useState(true);
  const [stored, setStored] = useState('');
  const { sending, failed, send } = useSending();
  const submit = async (event: SubmitEvent) => {
    event.preventDefault();
    setStored('');
    const reading = keptOf(said.reading, '°C');
    if (reading === null) return;
    const [second, reference] = [keptOf(said.second, '°C'), keptOf(said.reference, '°C')];
    const points = [
      { reading, reference: 0 },
      ...(second === null || reference === null ? [] : [{ reading: second, reference }]),
    ];
    const done = await send(() => enterCheck(probe.probe, { points, apply, ...byMe() }));
    if (!done) return;
    setSaid(EMPTY);
    setStored(text.storedCheck);
    onStored();
  };
  const field = (name: keyof typeof EMPTY, label: string) => (
    <Field
      label={label}
      value={said[name]}
      kind="number"
      required={name === 'reading'}
      onType={(text) => setSaid({ ...said, [name]: text })}
    />
  );
  return (
    <details class="record-form">
      <summary>{text.check(probe.probe)}</summary>
      <form class="lot-form" onSubmit={submit} aria-label={text.check(probe.probe)}>
        <p class="quiet">
          {how} {text.readingNow(probe.reading)}
        </p>
        {field('reading', text.reading)}
        <details>
          <summary>{text.second}</summary>
          {field('second', text.secondReading)}
          {field('reference', text.secondTrue)}
        </details>
        <label class="tick-box">
          <input
            type="checkbox"
            checked={apply}
            onChange={(event) => setApply(event.currentTarget.checked)}
          />{' '}
          {text.apply}
        </label>
        <NameField label={text.by} />
        <FormEnd label={text.store} sending={sending} said={failed || stored} />
      </form>
    </details>
  );
}
