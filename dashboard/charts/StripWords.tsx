import type { Strip } from '../../hub/contract/index.ts';
import { timeOfDay, weekday } from '../times.ts';
import { words } from '../words.ts';
import type { Frame } from './StripBand.tsx';
import { stripTable } from './stripTable.ts';

/** All strips as words and tables, for who reads better than looks. */
export function StripWords({ strips, frame }: { strips: readonly Strip[]; frame: Frame }) {
  return (
    <details class="strip-words">
      <summary>{words.strips.inWords}</summary>
      {strips.map((strip) => (
        <section key={strip.place}>
          <h3>{strip.name}</h3>
          <p>{strip.words}</p>
          <StripTable strip={strip} frame={frame} />
        </section>
      ))}
    </details>
  );
}

function StripTable({ strip, frame: { window, zone } }: { strip: Strip; frame: Frame }) {
  const { columns } = words.strips;
  const rows = stripTable(strip, window, zone);
  return (
    <table class="figures">
      <thead>
        <tr>
          <th scope="col">{columns.time}</th>
          <th scope="col">{columns.temperature}</th>
          <th scope="col">{columns.humidity}</th>
          <th scope="col">{columns.wet}</th>
          <th scope="col">{columns.chances}</th>
        </tr>
      </thead>
      <tbody>
        {rows.map(({ t, temperature, humidity, wet, fan }) => (
          <tr key={t}>
            <th scope="row">
              {weekday(t, zone)} {timeOfDay(t, zone)}
            </th>
            <td>{temperature === null ? words.places.dash : words.number(temperature)}</td>
            <td>{humidity === null ? words.places.dash : words.number(humidity, 0)}</td>
            <td>{wet ? words.strips.wetCell : ''}</td>
            <td>{fan ? `${words.number(fan.low)} … ${words.number(fan.high)}` : ''}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
