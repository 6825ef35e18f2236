import { dayNumber } from '../heat/index.ts';
import type { StationDay } from './stationDays.ts';
import { refuse } from './stationField.ts';

/** What the columns are called in the file's first line; `mean` and `rain` may be missing from a file. */
export type DaysHeader = {
  readonly day: string;
  readonly min: string;
  readonly max: string;
  readonly mean?: string | undefined;
  readonly rain?: string | undefined;
};

const USUAL: DaysHeader = { day: 'date', min: 'min_c', max: 'max_c', rain: 'rain_mm' };
/** The columns of a station file of our own: °C and mm, the last two where the station has them. */
export const STATION_HEADER: DaysHeader = {
  ...{ day: 'date', min: 'tmin', max: 'tmax', mean: 'tavg', rain: 'rain' },
};
const OPTIONAL = new Set([USUAL.rain, STATION_HEADER.mean, STATION_HEADER.rain]);

/** One line of the file after its first: a day, or null for an empty line. */
export type DaysCsvLine = (text: string, line: number) => StationDay | null;

/**
 * Reads the first line of a CSV file of days, and gives what reads the others, in °C and mm; days
 * written `2025-10-15`. An empty cell is not known. Other columns are passed over; cells may stand
 * in double quotes, but not hold a comma.
 * @throws RangeError that names the line and the field; what it gives throws likewise
 */
export function daysCsvLines(first: string, header: DaysHeader = USUAL): DaysCsvLine {
  const names = cellsOf(first.replace(/^\uFEFF/, ''));
  const column = (name: string) => {
    const at = names.indexOf(name);
    if (at < 0) refuse(`a column ${name}`, 'header', 1, names.join(','));
    return at;
  };
  const day = column(header.day);
  const min = column(header.min);
  const max = column(header.max);
  // The usual name of a column does not oblige a file to have one.
  const ours = header === USUAL || header === STATION_HEADER;
  const perhaps = (name: string | undefined) =>
    name === undefined || (ours && OPTIONAL.has(name) && !names.includes(name))
      ? null
      : column(name);
  const mean = perhaps(header.mean);
  const rain = perhaps(header.rain);

  return (text, line) => {
    const cells = cellsOf(text);
    if (cells.every((cell) => cell === '')) return null;
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
      ...(mean === null ? {} : { mean: number(mean, -90, 60) }),
      rain: rain === null ? null : number(rain, 0, 2000),
      trace: false,
    };
    if (row.min !== null && row.max !== null && row.max < row.min) {
      refuse(`a maximum from ${row.min} up`, header.max, line, `${row.max}`);
    }
    return row;
  };
}

/**
 * Days of a whole CSV file by the names in its first line: daysCsvLines.
 * @throws RangeError that names the line and the field
 */
export function parseDaysCsv(text: string, header: DaysHeader = USUAL): readonly StationDay[] {
  const [first = '', ...rest] = text.split('\n');
  const read = daysCsvLines(first, header);
  return rest.flatMap((each, index) => read(each, index + 2) ?? []);
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
