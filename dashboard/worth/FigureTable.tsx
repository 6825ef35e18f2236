import type { ComponentChildren } from 'preact';
import { Scrolled } from '../parts/Scrolled.tsx';

/** A table of figures whose first column names the row. */
export function FigureTable({
  label,
  columns,
  rows,
}: {
  label: string;
  columns: readonly string[];
  rows: readonly (readonly ComponentChildren[])[];
}) {
  return (
    <Scrolled label={label}>
      <table class="figures worth-figures">
        <thead>
          <tr>
            {columns.map((column) => (
              <th key={column} scope="col">
                {column}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map(([first, ...rest], row) => (
            <tr key={row}>
              <th scope="row">{first}</th>
              {rest.map((cell, i) => (
                <td key={columns[i + 1]}>{cell}</td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </Scrolled>
  );
}
