import { CsvError, parse } from 'csv-parse/sync';
import { shown } from '../words/index.ts';
import { COLUMNS, formOfHead, SIMPLE, unguard } from './columns.ts';

export type Row = {
  /** Where in the file it begins, 1 first. */
  readonly line: number;
  /** What stands in a column, without space around it; '' for nothing. */
  readonly cell: (column: string) => string;
  /** It has more cells than the head. */
  readonly tooLong: boolean;
};
export type Table = {
  readonly form: 'events' | 'simple';
  readonly rows: readonly Row[];
  readonly ignored: readonly string[];
};

const MOST_ROWS = 20_000; // ours: a hundred batches a year for twenty years
const SEPARATORS = [',', ';', '\t'] as const;

/** The one that stands most often in the first line. */
function separatorOf(text: string): string {
  const first = text.split(/\r?\n/).find((line) => line.trim() !== '') ?? '';
  const count = (mark: string) => first.split(mark).length;
  return SEPARATORS.reduce((best, mark) => (count(mark) > count(best) ? mark : best));
}

/** @throws Error in one sentence for a file that is no table of batches */
export function readTable(csv: string): Table {
  const text = csv.replace(/^\uFEFF/, '');
  let records: { record: string[]; info: { lines: number } }[];
  try {
    records = parse(text, {
      ...{ delimiter: separatorOf(text), info: true, skip_empty_lines: true },
      ...{ relax_column_count: true, relax_quotes: true, to: MOST_ROWS + 2 },
    }) as unknown as typeof records;
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    const { lines } = error as CsvError & { lines?: number };
    throw new Error(
      `Expected quotes that end in line ${lines ?? 'of the file'}, got a table that cannot be read`,
    );
  }
  const [head, ...rest] = records;
  const names = (head?.record ?? []).map((name) => name.trim().toLowerCase());
  const form = formOfHead(names);
  if (form === null)
    throw new Error(
      `Expected the columns batch, event, at or crop, trays, sown, place in the first line, got ${shown(names.join(','))}`,
    );
  if (rest.length > MOST_ROWS)
    throw new Error(`Expected at most ${MOST_ROWS} rows in the file, got more`);
  const known: readonly string[] = form === 'events' ? COLUMNS : SIMPLE;
  const rows = rest.map(({ record, info }) => {
    // The parser tells where a row ends; quoted text may run over several lines.
    const within = record.reduce((sum, cell) => sum + cell.split('\n').length - 1, 0);
    return {
      line: info.lines - within,
      tooLong: record.slice(names.length).some((cell) => cell.trim() !== ''),
      cell: (column: string) => unguard((record[names.indexOf(column)] ?? '').trim()),
    };
  });
  return {
    form,
    rows: rows.filter(({ cell, tooLong }) => tooLong || names.some((name) => cell(name) !== '')),
    ignored: names.filter((name) => name !== '' && !known.includes(name)),
  };
}
