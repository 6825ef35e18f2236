import { CsvError, parse } from 'csv-parse/sync';
import { enterPick } from '../../contract/index.ts';
import type { PickFacts } from '../../picks/index.ts';
import { type Complaint, pickColumns, refusal, shown } from '../../words/index.ts';

const NEEDED = ['at', 'place', 'kg'] as const;
const NUMBERS = ['kg', 'lostKg', 'minutes', 'walkMinutes', 'pickers', 'price'] as const;
const WORDS = ['place', 'crop'] as const;
const DAY = /^\d{4}-\d{2}-\d{2}$/;
type Field = keyof typeof pickColumns;

export type ReadPick = { readonly line: number } & (
  | { readonly facts: PickFacts; readonly fault?: never }
  | { readonly fault: string }
);

/**
 * Pickings out of a file such as the hub writes: its columns in any order, those that nobody knows
 * left out or empty. Each line is read by itself, so that a bad one does not keep the others out.
 * @param cropOf what a place grows, where the line tells no crop
 * @param noonOf noon of a calendar day, where the line tells only the day
 * @throws Error in one sentence for a file that is no table of pickings
 */
export function readPicks(
  text: string,
  cropOf: (place: string) => string | undefined,
  noonOf: (day: string) => string,
): ReadPick[] {
  let records: { record: string[]; info: { lines: number } }[];
  try {
    records = parse(text.replace(/^\uFEFF/, ''), {
      ...{ info: true, skip_empty_lines: true, relax_column_count: true, trim: true },
    }) as unknown as typeof records;
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    throw new Error(`Expected a table of pickings, got ${shown(error.message)}`);
  }
  const [head, ...rows] = records;
  const names = head?.record ?? [];
  for (const field of NEEDED)
    if (!names.includes(pickColumns[field]))
      throw new Error(
        `Expected a column ${pickColumns[field]} in header of line 1, got ${shown(names.join(','))}`,
      );
  return rows.map(({ record, info: { lines: line } }) => {
    const cell = (field: Field) => record[names.indexOf(pickColumns[field])] ?? '';
    const given: Record<string, unknown> = {
      at: DAY.test(cell('at')) ? noonOf(cell('at')) : cell('at'),
    };
    for (const field of WORDS) if (cell(field) !== '') given[field] = cell(field);
    for (const field of NUMBERS) if (cell(field) !== '') given[field] = numberIn(cell(field));
    // The mark that keeps a spreadsheet from taking words for a formula.
    if (cell('note') !== '') given.note = cell('note').replace(/^'(?=[=+\-@])/, '');
    const read = enterPick.safeParse(given);
    if (!read.success)
      return { line, fault: columnFault(read.error.issues[0] as Complaint, given) };
    const { data } = read;
    const crop = data.crop ?? cropOf(data.place);
    if (crop === undefined)
      return {
        line,
        fault: `Expected a crop in crop, as ${shown(data.place)} has none, got nothing`,
      };
    return {
      line,
      facts: {
        ...{ place: data.place, crop, kg: data.kg, pickers: data.pickers ?? 1 },
        at: Date.parse(data.at ?? ''),
        ...{ lostKg: data.lostKg ?? null, minutes: data.minutes ?? null },
        ...{ walkMinutes: data.walkMinutes ?? null, price: data.price ?? null },
        note: data.note ?? null,
      },
    };
  });
}

/** A number, or the text that is none, for the schema to refuse. */
const numberIn = (text: string) => (Number.isFinite(Number(text)) ? Number(text) : text);

/** What a schema complains of, by the names that stand in the file. */
function columnFault(complaint: Complaint, given: Record<string, unknown>): string {
  const named = (field: PropertyKey) => pickColumns[field as Field] ?? field;
  const cells = Object.entries(given).map(([field, value]) => [named(field), value]);
  return refusal(
    { ...complaint, path: complaint.path.map(named) },
    Object.fromEntries(cells) as Record<string, unknown>,
  );
}
