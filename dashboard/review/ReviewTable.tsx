import type { ComponentChildren } from 'preact';
import { Scrolled } from '../parts/Scrolled.tsx';

/** A table whose first column names the row; the last row is a sum where `foot` is given. */
export function ReviewTable({
  label,
  columns,
  rows,
  foot,
}: {
  label: string;
  columns: readonly string[];
  rows: readonly (readonly ComponentChildren[])[];
  foot?: readonly ComponentChildren[];
}) {
  const row = ([first, ...rest]: readonly ComponentChildren[], key: number) => (
    <tr key={key}>
      <th scope="row">{first}</th>
      {rest.map((cell, i) => (
        <td key={columns[i + 1]}>{cell}</td>
      ))}
    </tr>
  );
  return (
    <Scrolled label={label}>
      <table class="figures review-table">
        <thead>
          <tr>
            {columns.map((column) => (
              <th key={column} scope="col">
                {column}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>{rows.map(row)}</tbody>
        {foot && <tfoot>{row(foot, 0)}</tfoot>}
      </table>
    </Scrolled>
  );
}
