import { readFileSync } from 'node:fs';

const HEADINGS = ['What', 'Source', 'Why', 'Covers', 'How', 'Tolerance', 'Added'] as const;

/** How expected values may have been obtained; several are joined by `; `. */
export const WAYS = [
  'published example',
  'independent library',
  'computed apart from our code',
  'memory',
  'by definition',
  'invented input',
];

type Row<Column extends string, Word extends string> = Readonly<
  Record<Column, number> & Record<Word, string>
>;

/**
 * Rows of a table of outside values, `tests/truth/<path>`. Insists on its headings, with
 * something behind each, and on exactly these columns: first the numbers, then the words.
 */
export function truth<Column extends string, Word extends string = never>(
  path: string,
  columns: readonly Column[],
  words: readonly Word[] = [],
): readonly Row<Column, Word>[] {
  const lines = readFileSync(new URL(path, import.meta.url), 'utf8')
    .trimEnd()
    .split('\n');
  const remarks = lines.filter((line) => line.startsWith('#'));
  for (const heading of HEADINGS) {
    const pattern = new RegExp(`^# ${heading}:\\s+\\S`);
    if (!remarks.some((line) => pattern.test(line))) {
      throw new Error(`Expected a "# ${heading}:" line in tests/truth/${path}, got none`);
    }
  }
  const [header = '', ...body] = lines.filter((line) => !line.startsWith('#'));
  const wanted = [...columns, ...words].join(',');
  if (header !== wanted) {
    throw new Error(`Expected columns ${wanted} in tests/truth/${path}, got ${header}`);
  }
  if (body.length === 0) throw new Error(`Expected rows in tests/truth/${path}, got none`);
  return body.map((line) => {
    const cells = line.split(',');
    const entries = [...columns, ...words].map((name, index) => {
      const cell = cells[index] ?? '';
      if (index >= columns.length) return [name, cell] as const;
      if (cell.trim() === '' || Number.isNaN(Number(cell))) {
        throw new Error(`Expected a number for ${name} in tests/truth/${path}, got "${cell}"`);
      }
      return [name, Number(cell)] as const;
    });
    return Object.fromEntries(entries) as Row<Column, Word>;
  });
}
