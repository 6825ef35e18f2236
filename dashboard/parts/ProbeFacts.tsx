import type { Probe } from '../../hub/contract/index.ts';
import { words } from '../words.ts';

/** Last heard, newest values with their doubts, corrections, battery, and what was refused. */
export function ProbeFacts({ probe, now }: { probe: Probe; now: number }) {
  const text = words.probes;
  const since = (time: string) => now - Date.parse(time);
  const offsets = Object.entries(probe.offsets) as [keyof Probe['offsets'], number][];
  const refused = probe.refused.reduce((sum, { count }) => sum + count, 0);
  return (
    <>
      <p class="quiet">
        {probe.heardAt === null ? text.neverHeard : text.heard(since(probe.heardAt))};{' '}
        {text.every(probe.everyMinutes)}
      </p>
      <ul class="values" aria-label={text.values}>
        {probe.latest.map((value) => (
          <li key={value.quantity}>
            <span>{words.quantities[value.quantity]}</span>{' '}
            <span class="figure">{words.withUnit(value.value, value.unit)}</span>{' '}
            <span class="quiet">{words.age(since(value.readAt))}</span>
            {value.flag !== null && <strong class="flag"> {text.flag(value.flag)}</strong>}
          </li>
        ))}
        {probe.latest.length === 0 && <li class="quiet">{text.noValues}</li>}
      </ul>
      <p class="quiet">
        {probe.battery !== null &&
          `${text.battery} ${words.withUnit(probe.battery.value, probe.battery.unit, probe.battery.unit === 'V' ? 2 : 0)} · `}
        {text.corrections}:{' '}
        {offsets.length === 0
          ? text.noCorrections
          : offsets
              .map(([quantity, by]) => `${words.quantities[quantity]} ${words.signed(by)}`)
              .join(', ')}
      </p>
      {refused > 0 && (
        <details>
          <summary>{text.refused(refused)}</summary>
          <ul class="plain-list">
            {probe.refused.map((reason) => (
              <li key={reason.reason}>
                <span>
                  {text.refusedLine(reason.count, reason.words, since(reason.lastAt))}
                  <br />
                  <span class="quiet">
                    {text.lastMessage}: <code>{reason.last}</code>
                  </span>
                </span>
              </li>
            ))}
          </ul>
        </details>
      )}
    </>
  );
}
