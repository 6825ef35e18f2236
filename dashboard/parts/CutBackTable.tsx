import type { CutBack } from '../../hub/contract/index.ts';
import { farm } from '../state.ts';
import { shortDay } from '../times.ts';
import { words } from '../words.ts';

/** The picture's days as figures. */
export function CutBackTable({ plan: { name, rows, window } }: { plan: CutBack }) {
  const text = words.cutBack;
  const currency = farm.value?.money ?? 'EUR';
  const share = (p: number) => words.number(100 * p, p > 0 && p < 0.1 ? 1 : 0);
  const inWindow = (day: string) => window !== null && day >= window.from && day <= window.to;
  return (
    <details>
      <summary>{text.table}</summary>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a part that may scroll must be reachable by keyboard */}
      <section class="table-room" aria-label={`${text.table}: ${name}`} tabIndex={0}>
        <table class="figures">
          <thead>
            <tr>
              {Object.values(text.columns).map((label) => (
                <th key={label} scope="col">
                  {label}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {rows.map((row) => (
              <tr key={row.day} class={inWindow(row.day) ? 'in-window' : undefined}>
                <th scope="row">{shortDay(row.day)}</th>
                <td>{row.ripe === 0 ? words.places.dash : words.number(row.ripe)}</td>
                <td>{words.number(row.units)}</td>
                <td>{row.daylight === null ? words.places.dash : words.number(row.daylight)}</td>
                <td>{share(row.frost)}</td>
                <td>{share(row.survives)}</td>
                <td>{share(row.wet)}</td>
                <td>{text.money(row.toGain, currency)}</td>
                <td>{text.money(row.lost, currency)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </section>
    </details>
  );
}
