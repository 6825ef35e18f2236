import type { CutBack } from '../../hub/contract/index.ts';
import { farm } from '../state.ts';
import { shortDay } from '../times.ts';
import { words } from '../words.ts';
import { FigureTable } from './FigureTable.tsx';

/** The picture's days as figures. */
export function CutBackTable({ plan: { name, rows, window } }: { plan: CutBack }) {
  const text = words.cutBack;
  const currency = farm.value?.money ?? 'EUR';
  const share = (p: number) => words.number(100 * p, p > 0 && p < 0.1 ? 1 : 0);
  const inWindow = (day: string) => window !== null && day >= window.from && day <= window.to;
  return (
    <details>
      <summary>{text.table}</summary>
      <FigureTable
        label={`${text.table}: ${name}`}
        columns={Object.values(text.columns)}
        marked={(row) => inWindow(rows[row]?.day ?? '')}
        rows={rows.map((row) => [
          shortDay(row.day),
          row.ripe === 0 ? words.places.dash : words.bareWeight(row.ripe),
          words.heat(row.units),
          row.daylight === null ? words.places.dash : words.number(row.daylight),
          share(row.frost),
          share(row.survives),
          share(row.wet),
          text.money(row.toGain, currency),
          text.money(row.lost, currency),
        ])}
      />
    </details>
  );
}
