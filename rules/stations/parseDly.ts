import { daysInMonth, written } from '../heat/index.ts';
import { refuse, wholeFrom, wholeNumber } from './stationField.ts';

// GHCN-Daily, station files `.dly`: one line is one station, month and element, fixed columns; the
// layout of its readme (NOAA NCEI), as many independent readers quote it.

const WIDTH = 269;
// Columns, from 0, after the station's.
const YEAR = 11;
const MONTH = 15;
const ELEMENT = 17;
const FIRST_DAY = 21; // the first day's value
const DAY_WIDTH = 8; // value 5, then the flags of measurement, quality and source
const VALUE_WIDTH = 5;
const MISSING = -9999;

/** Unit of one count, and what the values may be: the coldest and warmest air ever measured is inside. */
const ELEMENTS: Readonly<Record<string, { scale: number; from: number; to: number }>> = {
  TMAX: { scale: 10, from: -90, to: 60 },
  TMIN: { scale: 10, from: -90, to: 60 },
  TAVG: { scale: 10, from: -90, to: 60 },
  PRCP: { scale: 10, from: 0, to: 2000 },
  SNOW: { scale: 1, from: 0, to: 5000 },
  SNWD: { scale: 1, from: 0, to: 20_000 },
};

export type DlyElement = 'TMAX' | 'TMIN' | 'TAVG' | 'PRCP' | 'SNOW' | 'SNWD';

/** One element of one day at one station. */
export type StationValue = {
  readonly station: string;
  /** `2019-04-01`, by the station's own observation day. */
  readonly day: string;
  readonly element: DlyElement;
  /** °C of TMAX, TMIN and TAVG; mm of PRCP, SNOW and SNWD; null when not known. */
  readonly value: number | null;
  /** Too little to measure, but wet: the value is 0. */
  readonly trace: boolean;
  /** Perhaps of a neighbouring day: not for dates of frost. */
  readonly lagged: boolean;
  /** Why the value is not known; null when it is. */
  readonly refused: 'missing' | 'failed-check' | 'presumed-zero' | null;
};

/**
 * One line of a `.dly` file: a value for each day of its month, or nothing for an element we have
 * no use for. A value that failed a check of the archive (any quality flag), and rain presumed to
 * be zero, are not known. Lines may be trimmed at the right.
 * @param line its number, for errors
 * @throws RangeError that names the line and the field
 */
export function parseDlyLine(text: string, line: number): readonly StationValue[] {
  const padded = text.replace(/\s+$/, '').padEnd(WIDTH);
  if (padded.length > WIDTH) refuse(`${WIDTH} characters`, 'length', line, `${padded.length}`);
  const station = padded.slice(0, YEAR);
  if (!/^[A-Z0-9_-]{11}$/i.test(station)) refuse('11 letters or digits', 'station', line, station);
  const year = wholeFrom(padded.slice(YEAR, MONTH), 1700, 2200, 'year', line);
  const month = wholeFrom(padded.slice(MONTH, ELEMENT), 1, 12, 'month', line);
  const element = padded.slice(ELEMENT, FIRST_DAY);
  if (!/^[A-Z0-9]{4}$/.test(element)) refuse('4 letters', 'element', line, element);
  const kind = ELEMENTS[element];
  if (kind === undefined) return [];

  const last = daysInMonth(year, month);
  const values: StationValue[] = [];
  for (let date = 1; date <= 31; date += 1) {
    const begins = FIRST_DAY + DAY_WIDTH * (date - 1);
    const cells = padded.slice(begins, begins + DAY_WIDTH);
    const field = `${element} of day ${date}`;
    const count = wholeNumber(cells.slice(0, VALUE_WIDTH), field, line);
    const known = count !== null && count !== MISSING;
    if (date > last) {
      if (known) refuse('no value past the end of the month', field, line, cells);
      continue;
    }
    const [measured = ' ', quality = ' '] = cells.slice(VALUE_WIDTH);
    const refused = known ? reasonAgainst(element, measured, quality) : 'missing';
    const value = refused === null && count !== null ? count / kind.scale : null;
    if (value !== null && !(value >= kind.from && value <= kind.to)) {
      refuse(`${kind.from} to ${kind.to}`, field, line, cells);
    }
    values.push({
      station,
      day: written(year, month, date),
      element: element as DlyElement,
      value,
      trace: refused === null && measured === 'T',
      lagged: measured === 'L',
      refused,
    });
  }
  return values;
}

function reasonAgainst(element: string, measured: string, quality: string) {
  if (quality !== ' ') return 'failed-check';
  return element === 'PRCP' && measured === 'P' ? 'presumed-zero' : null;
}

/**
 * A whole `.dly` file; empty lines are passed over.
 * @throws RangeError for the first faulty line, naming it and the field
 */
export const parseDly = (text: string): readonly StationValue[] =>
  text
    .split('\n')
    .flatMap((each, index) => (each.trim() === '' ? [] : parseDlyLine(each, index + 1)));
