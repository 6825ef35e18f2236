import type { Probe } from '../../hub/contract/index.ts';
import { words } from '../words.ts';
import type { Description } from './description.ts';
import { ItemForm } from './ItemForm.tsx';
import { probeFields } from './partFields.ts';

/** What the farm file tells of a probe beside where it hangs: how often it speaks, its corrections. */
export function ProbeMore({ now, probe }: { now: Description; probe: Probe }) {
  const text = words.setUpSteps;
  const farm = now.description;
  const { id, place, spot } = probe;
  if (farm === null || place === null || spot === null) return null;
  const found = farm.probes.findIndex((one) => one.id === id);
  const at = found < 0 ? farm.probes.length : found;
  // Where it hangs now goes with it: the file may still tell where it hung before.
  const every = everyText(probe.everyMinutes);
  const here = { every, ...farm.probes[found], id, place, spot };
  return (
    <details>
      <summary>{text.moreOf(id)}</summary>
      <ItemForm
        item={() => here}
        specs={probeFields}
        told={words.setUpFields.probe}
        at={`probes.${at}`}
        waits
        next={(item) => ({
          ...farm,
          probes:
            found < 0
              ? [...farm.probes, item]
              : farm.probes.map((one, i) => (i === found ? item : one)),
        })}
      />
    </details>
  );
}

/** As a farm file tells it: `5m`, or `30s`. */
function everyText(minutes: number): string {
  const seconds = Math.max(1, Math.round(minutes * 60));
  return seconds % 60 === 0 ? `${seconds / 60}m` : `${seconds}s`;
}
