import type { Strip } from '../../hub/contract/index.ts';
import { FigureTable } from '../parts/FigureTable.tsx';
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
    <FigureTable
      columns={[columns.time, columns.temperature, columns.humidity, columns.wet, columns.chances]}
      rows={rows.map(({ t, temperature, humidity, wet, fan }) => [
        `${weekday(t, zone)} ${timeOfDay(t, zone)}`,
        temperature === null ? words.places.dash : words.degrees(temperature),
        humidity === null ? words.places.dash : words.number(humidity, 0),
        wet ? words.strips.wetCell : '',
        fan ? `${words.degrees(fan.low)} … ${words.degrees(fan.high)}` : '',
      ])}
    />
  );
}
