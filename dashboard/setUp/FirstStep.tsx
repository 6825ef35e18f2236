import { useEffect } from 'preact/hooks';
import { refreshProbes } from '../live.ts';
import { probes, today } from '../state.ts';
import { words } from '../words.ts';
import type { Description } from './description.ts';

/** What the hub says first, or what it still needs for that. */
export function FirstStep({ now }: { now: Description }) {
  const text = words.setUpSteps;
  useEffect(() => void refreshProbes(), []);
  const placed = probes.value?.filter(({ place }) => place !== null) ?? [];
  const { missing } = text;
  const wanting = [
    now.settled ? null : missing.position,
    (now.description?.places.length ?? 0) > 0 ? null : missing.places,
    placed.length > 0 ? null : missing.probes,
    placed.some(({ heardAt }) => heardAt !== null) ? null : missing.reading,
  ].filter((one) => one !== null);
  return (
    <>
      {wanting.length === 0 ? (
        <p>{text.ready}</p>
      ) : (
        <ul>
          {wanting.map((one) => (
            <li key={one}>{one}</li>
          ))}
        </ul>
      )}
      {now.settled && today.value && <p class="sentence">{today.value.sentence}</p>}
      <p class="set-up-ways">
        <a class={wanting.length === 0 ? 'go-on' : ''} href="/">
          {text.toToday}
        </a>
      </p>
    </>
  );
}
