import type { Probe } from '../../hub/contract/index.ts';
import { shownIn } from '../../hub/words/page.ts';
import { words } from '../words.ts';
import { RefusedList } from './RefusedList.tsx';

/** Temperatures are corrected by a difference. */
const correctionSaid = (quantity: string, by: number) =>
  words.signed(/temperature$/.test(quantity) ? shownIn(by, 'K') : by);

/** Last heard, newest values with their doubts, corrections, battery, and what was refused. */
export function ProbeFacts({ probe, now }: { probe: Probe; now: number }) {
  const text = words.probes;
  const since = (time: string) => now - Date.parse(time);
  const offsets = Object.entries(probe.offsets) as [keyof Probe['offsets'], number][];
  // The battery has a line of its own.
  const values = probe.latest.filter(({ quantity }) => quantity !== 'battery');
  const refused = probe.refused.reduce((sum, { count }) => sum + count, 0);
  return (
    <>
      <p class="quiet">
        {probe.heardAt === null ? text.neverHeard : text.heard(since(probe.heardAt))};{' '}
        {text.every(probe.everyMinutes)}
      </p>
      <ul class="values" aria-label={text.values}>
        {values.map((value) => (
          <li key={value.quantity}>
            <span>{words.quantities[value.quantity]}</span>{' '}
            <span class="figure">{words.reading(value)}</span>{' '}
            <span class="quiet">{words.age(since(value.readAt))}</span>
            {value.flag !== null && <strong class="flag"> {text.flag(value.flag)}</strong>}
          </li>
        ))}
        {values.length === 0 && <li class="quiet">{text.noValues}</li>}
      </ul>
      <p class="quiet">
        {probe.battery !== null &&
          `${text.battery} ${words.withUnit(probe.battery.value, probe.battery.unit, probe.battery.unit === 'V' ? 2 : 0)} · `}
        {text.corrections}:{' '}
        {offsets.length === 0
          ? text.noCorrections
          : offsets
              .map(
                ([quantity, by]) => `${words.quantities[quantity]} ${correctionSaid(quantity, by)}`,
              )
              .join(', ')}
      </p>
      {refused > 0 && (
        <details>
          <summary>{text.refused(refused)}</summary>
          <RefusedList refused={probe.refused} now={now} />
        </details>
      )}
    </>
  );
}
