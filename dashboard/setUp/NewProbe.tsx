import { useState } from 'preact/hooks';
import type { ProbeSecret } from '../../hub/contract/index.ts';
import { Field } from '../coolRoom/Field.tsx';
import { refreshProbes } from '../live.ts';
import { useSending } from '../parts/useSending.ts';
import { probes } from '../state.ts';
import { words } from '../words.ts';
import { probePassword } from './description.ts';

/** The first of p1, p2, … that no probe has. */
function freeName(taken: readonly string[]): string {
  let n = 1;
  while (taken.includes(`p${n}`)) n++;
  return `p${n}`;
}

/** A name and a password for a probe that is to come, shown once. */
export function NewProbe() {
  const text = words.setUpSteps;
  const free = freeName((probes.value ?? []).map(({ id }) => id));
  const [id, setId] = useState<string | null>(null);
  const [made, setMade] = useState<ProbeSecret | null>(null);
  const { sending, failed, send } = useSending();
  return (
    <section>
      <h2>{text.newProbe}</h2>
      {made ? (
        <div class="code-shown" role="status">
          <p>
            {text.probeUser(made.user)} <span class="code-itself">{made.password}</span>
          </p>
          <p class="quiet">{text.publishTo(made.user, location.hostname)}</p>
          <button type="button" onClick={() => setMade(null)}>
            {text.passedOn}
          </button>
        </div>
      ) : (
        <>
          <p class="quiet">{text.newProbeWhy}</p>
          <form
            class="sign-in"
            onSubmit={(event) => {
              event.preventDefault();
              send(async () => {
                setMade(await probePassword((id ?? free).trim()));
                setId(null);
                await refreshProbes();
              });
            }}
          >
            <Field
              label={text.probeName}
              value={id ?? free}
              onType={setId}
              required
              longest={128}
            />
            <button type="submit" class="main" aria-disabled={sending}>
              {text.makePassword}
            </button>
            <p role="status" class="failed-line">
              {failed}
            </p>
          </form>
        </>
      )}
    </section>
  );
}
