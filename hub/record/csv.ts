// RFC 4180: commas, CRLF, quotes doubled.

type Cell = string | number | boolean | null;

/** A spreadsheet takes text that begins so for a formula: somebody else's words are never one. */
const FORMULA = /^[=+\-@\t\r]/;

function cell(value: Cell): string {
  if (value === null) return '';
  if (typeof value !== 'string') return String(value);
  const text = FORMULA.test(value) ? `'${value}` : value;
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}

/** A table as a file: a head, and rows of as many cells. What is not known is empty, never 0. */
export const csv = (head: readonly string[], rows: readonly (readonly Cell[])[]): string =>
  [head, ...rows].map((row) => `${row.map(cell).join(',')}\r\n`).join('');
