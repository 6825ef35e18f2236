import { useEffect, useState } from 'preact/hooks';
import { now as clock } from '../clock.ts';
import { refreshProbes } from '../live.ts';
import { Fault } from '../parts/Fault.tsx';
import { ProbeCard } from '../parts/ProbeCard.tsx';
import { faults, link, probes } from '../state.ts';
import { words } from '../words.ts';
import type { Description } from './description.ts';
import { NewProbe } from './NewProbe.tsx';
import { ProbeMore } from './ProbeMore.tsx';
import { SpeakingProbe } from './SpeakingProbe.tsx';

/** Probes as they appear, each asked where it hangs; and a password for one that is to come. */
export function ProbeStep({ now }: { now: Description }) {
  const text = words.setUpSteps;
  const [said, setSaid] = useState('');
  const up = link.value.state === 'up';
  // Once, and after a lost link; between these the hub tells by itself.
  useEffect(() => {
    if (up) refreshProbes();
  }, [up]);
  const all = probes.value;
  const at = clock.value;
  if (all === null || at === null)
    return <Fault sentence={faults.value.probes} again={refreshProbes} />;
  const places = now.description?.places ?? [];
  const asking = all.filter(({ place, heardAt }) => place === null && heardAt !== null);
  const silent = all.filter(({ place, heardAt }) => place === null && heardAt === null);
  const placed = all.filter(({ place }) => place !== null);
  return (
    <>
      <p>{text.probesWhy}</p>
      <p role="status" class="said">
        {said}
      </p>
      {places.length === 0 && <p>{text.placesFirst}</p>}
      {asking.map((probe) => (
        <SpeakingProbe key={probe.id} probe={probe} places={places} onPlaced={setSaid} />
      ))}
      {asking.length === 0 && <p class="quiet">{text.noProbes}</p>}
      {silent.length > 0 && <p class="quiet">{text.silent(silent.map(({ id }) => id))}</p>}
      <NewProbe />
      {placed.length > 0 && <h2>{words.probes.placed}</h2>}
      <div class="probes">
        {placed.map((probe) => (
          <div key={probe.id}>
            <ProbeCard probe={probe} places={places} now={at} onPlaced={setSaid} />
            <ProbeMore now={now} probe={probe} />
          </div>
        ))}
      </div>
    </>
  );
}
