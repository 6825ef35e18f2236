import type { FrostSide } from '../../hub/contract/index.ts';
import { shortDay } from '../times.ts';
import { words } from '../words.ts';

const orDash = (p: number | null) => (p === null ? words.places.dash : words.chance(p));

/** The chances of the picture as figures: by the fitted curve, and by counting beside it. */
export function AheadTable({ side, kind }: { side: FrostSide; kind: 'first' | 'last' }) {
  const { columns, aheadRow } = words.season;
  return (
    <table class="figures ahead">
      <thead>
        <tr>
          <th scope="col">{kind === 'first' ? columns.until : columns.after}</th>
          <th scope="col">{columns.p}</th>
          <th scope="col">{columns.counted}</th>
        </tr>
      </thead>
      <tbody>
        {side.ahead.map(({ days, day, p, counted }) => (
          <tr key={days}>
            <th scope="row">{aheadRow(days, shortDay(day))}</th>
            <td>{side.way === 'curve' ? orDash(p) : words.places.dash}</td>
            <td>{orDash(counted)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** The dates of past years, which the picture shows as marks. */
export function PastYears({ side }: { side: FrostSide }) {
  const text = words.season;
  return (
    <details>
      <summary>{text.pastYears}</summary>
      <table class="figures ahead">
        <thead>
          <tr>
            <th scope="col">{text.columns.season}</th>
            <th scope="col">{text.columns.date}</th>
          </tr>
        </thead>
        <tbody>
          {side.past.map(({ season, day }) => (
            <tr key={season}>
              <th scope="row">{season}</th>
              <td>{day === null ? text.noFrost : shortDay(day)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </details>
  );
}
