import type { CoolRoom } from '../../hub/contract/index.ts';
import { words } from '../words.ts';

/** Panels and battery in a sentence, and the way to the sheet. */
export function Solar({ room }: { room: CoolRoom }) {
  const text = words.room;
  const { solar } = room;
  return (
    <section>
      <h2>{text.solar}</h2>
      {solar === null ? (
        <p class="quiet">{text.solarNone}</p>
      ) : (
        <>
          <p>{text.solarShort(solar.kilowattHours, solar.panels, solar.battery)}</p>
          <p class="record-links">
            <a href={`/cool-room/solar?${new URLSearchParams({ room: room.id })}`}>
              {text.solarOpen}
            </a>
          </p>
        </>
      )}
      <p class="caution">{text.solarCautions[0]}</p>
    </section>
  );
}

/** Each line with the number put in and what it rests on. */
export function SolarLines({
  solar,
  own,
}: {
  solar: NonNullable<CoolRoom['solar']>;
  /** Names of the numbers that somebody put in. */
  own: readonly string[];
}) {
  const text = words.room;
  return (
    <dl class="evidence solar-lines">
      {solar.lines.map(({ what, value, unit }) => (
        <div key={what} class={what === 'panels' || what === 'battery' ? 'result' : undefined}>
          <dt>{text.solarLine(what)}</dt>
          <dd class="evidence-value">{text.solarValue(value, unit)}</dd>
          <dd class="quiet">{text.solarFrom(what, own)}</dd>
        </div>
      ))}
    </dl>
  );
}
