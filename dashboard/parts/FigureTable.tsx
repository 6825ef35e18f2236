import type { ComponentChildren } from 'preact';
import { Scrolled } from './Scrolled.tsx';

type Cells = readonly ComponentChildren[];

/** A table of figures whose first column names the row; with a `label` it is moved sideways on a narrow screen. */
export function FigureTable({
  label,
  columns,
  rows,
  look = '',
  caption,
  marked = () => false,
  foot,
}: {
  label?: string;
  columns: Cells;
  rows: readonly Cells[];
  /** Classes of its own. */
  look?: string;
  caption?: string;
  /** Rows that stand out, by their turn. */
  marked?: (row: number) => boolean;
  /** Sums below the rows. */
  foot?: Cells;
}) {
  const cells = ([first, ...rest]: Cells) => (
    <>
      <th scope="row">{first}</th>
      {rest.map((cell, i) => (
        <td key={i}>{cell}</td>
      ))}
    </>
  );
  const table = (
    <table class={`figures ${look}`.trim()}>
      {caption !== undefined && <caption class="quiet">{caption}</caption>}
      <thead>
        <tr>
          {columns.map((column, i) => (
            <th key={i} scope="col">
              <span>{column}</span>
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {rows.map((row, turn) => (
          <tr key={turn} class={marked(turn) ? 'in-window' : undefined}>
            {cells(row)}
          </tr>
        ))}
      </tbody>
      {foot && (
        <tfoot>
          <tr>{cells(foot)}</tr>
        </tfoot>
      )}
    </table>
  );
  return label === undefined ? table : <Scrolled label={label}>{table}</Scrolled>;
}
