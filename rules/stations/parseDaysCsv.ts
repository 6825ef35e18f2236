import { dayNumber } from '../heat/index.ts';
import type { StationDay } from './stationDays.ts';
import { refuse } from './stationField.ts';

/** What the columns are called in the file's first line; `rain` may be missing from a file. */
export type DaysHeader = {
  readonly day: string;
  readonly min: string;
  readonly max: string;
  readonly rain?: string | undefined;
};

const USUAL: DaysHeader = { day: 'date', min: 'min_c', max: 'max_c', rain: 'rain_mm' };

/**
 * Days of a CSV file by the names in its first line, in °C and mm; days written `2025-10-15`. An
 * empty cell is not known. Other columns are passed over; cells may stand in double quotes, but
 * not hold a comma.
 * @throws RangeError that names the line and the field
 */
export function parseDaysCsv(text: string, header: DaysHeader = USUAL): readonly StationDay[] {
  const lines = text
    .replace(/^\uFEFF/, '')
    .split('\n')
    .map(cellsOf);
  const names = lines[0] ?? [];
  const column = (name: string) => {
    const at = names.indexOf(name);
    if (at < 0) refuse(`a column ${name}`, 'header', 1, names.join(','));
    return at;
  };
  const day = column(header.day);
  const min = column(header.min);
  const max = column(header.max);
  // The usual name of a column for rain does not oblige a file to have one.
  const rain =
    header.rain === undefined || (header === USUAL && !names.includes(header.rain))
      ? null
      : column(header.rain);

  return lines.slice(1).flatMap((cells, index) => {
    if (cells.every((cell) => cell === '')) return [];
    const line = index + 2;
    const number = (at: number, from: number, to: number) => {
      const cell = cells[at] ?? '';
      if (cell === '') return null;
      const value = Number(cell);
      if (!(value >= from && value <= to)) {
        refuse(`a number from ${from} to ${to}`, names[at] ?? '', line, cell);
      }
      return value;
    };
    const named = cells[day] ?? '';
    if (!isDay(named)) refuse('a day like 2025-10-15', header.day, line, named);
    const row: StationDay = {
      day: named,
      min: number(min, -90, 60),
      max: number(max, -90, 60),
      rain: rain === null ? null : number(rain, 0, 2000),
      trace: false,
    };
    if (row.min !== null && row.max !== null && row.max < row.min) {
      refuse(`a maximum from ${row.min} up`, header.max, line, `${row.max}`);
    }
    return [row];
  });
}

const cellsOf = (line: string): string[] =>
  line.split(',').map((cell) =>
    cell
      .trim()
      .replace(/^"(.*)"$/, '$1')
      .trim(),
  );

function isDay(text: string): boolean {
  try {
    dayNumber(text);
    return true;
  } catch {
    return false;
  }
}
