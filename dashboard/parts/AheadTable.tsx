import type { FrostSide } from '../../hub/contract/index.ts';
import { shortDay } from '../times.ts';
import { words } from '../words.ts';
import { FigureTable } from './FigureTable.tsx';

const orDash = (p: number | null) => (p === null ? words.places.dash : words.chance(p));

/** The chances of the picture as figures: by the fitted curve, and by counting beside it. */
export function AheadTable({ side, kind }: { side: FrostSide; kind: 'first' | 'last' }) {
  const { columns, aheadRow } = words.season;
  return (
    <FigureTable
      look="ahead"
      columns={[kind === 'first' ? columns.until : columns.after, columns.p, columns.counted]}
      rows={side.ahead.map(({ days, day, p, counted }) => [
        aheadRow(days, shortDay(day)),
        side.way === 'curve' ? orDash(p) : words.places.dash,
        orDash(counted),
      ])}
    />
  );
}

/** The dates of past years, which the picture shows as marks. */
export function PastYears({ side }: { side: FrostSide }) {
  const text = words.season;
  return (
    <details>
      <summary>{text.pastYears}</summary>
      <FigureTable
        look="ahead"
        columns={[text.columns.season, text.columns.date]}
        rows={side.past.map(({ season, day }) => [
          season,
          day === null ? text.noFrost : shortDay(day),
        ])}
      />
    </details>
  );
}
