import { useEffect, useState } from 'preact/hooks';
import type { ProbeSecret } from '../../hub/contract/index.ts';
import { now as clock } from '../clock.ts';
import { Field } from '../coolRoom/Field.tsx';
import { refreshProbes } from '../live.ts';
import { Fault } from '../parts/Fault.tsx';
import { ProbeCard } from '../parts/ProbeCard.tsx';
import { useSending } from '../parts/useSending.ts';
import { faults, probes, today } from '../state.ts';
import { words } from '../words.ts';
import { probePassword } from './description.ts';

const BETWEEN = 3000; // ms; ours: somebody stands beside a probe that was just switched on

/** Probes as they appear, each asked where it hangs; and a password for one that is to come. */
export function ProbeStep() {
  const text = words.setUpSteps;
  const [said, setSaid] = useState('');
  useEffect(() => {
    refreshProbes();
    const timer = setInterval(() => document.hidden || refreshProbes(), BETWEEN);
    return () => clearInterval(timer);
  }, []);
  const all = probes.value;
  const at = clock.value;
  if (all === null || at === null)
    return <Fault sentence={faults.value.probes} again={refreshProbes} />;
  const places = today.value?.places ?? [];
  const inOrder = [...all].sort((a, b) => Number(a.place !== null) - Number(b.place !== null));
  return (
    <>
      <p>{text.probesWhy}</p>
      <p role="status" class="said">
        {said}
      </p>
      {inOrder.length === 0 && <p class="quiet">{text.noProbes}</p>}
      <div class="probes">
        {inOrder.map((probe) => (
          <ProbeCard key={probe.id} probe={probe} places={places} now={at} onPlaced={setSaid} />
        ))}
      </div>
      <NewProbe />
    </>
  );
}

function NewProbe() {
  const text = words.setUpSteps;
  const [id, setId] = useState('');
  const [made, setMade] = useState<ProbeSecret | null>(null);
  const { sending, failed, send } = useSending();
  return (
    <section>
      <h2>{text.newProbe}</h2>
      <p class="quiet">{text.newProbeWhy}</p>
      <form
        class="sign-in"
        onSubmit={(event) => {
          event.preventDefault();
          send(async () => setMade(await probePassword(id.trim())));
        }}
      >
        <Field label={text.probeName} value={id} onType={setId} required longest={128} />
        <button type="submit" class="main" aria-disabled={sending}>
          {text.makePassword}
        </button>
        <p role="status" class="failed-line">
          {failed}
        </p>
      </form>
      {made && (
        <p class="code-shown" role="status">
          {text.probeUser(made.user)} <span class="code-itself">{made.password}</span>
        </p>
      )}
    </section>
  );
}
