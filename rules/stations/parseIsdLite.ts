import { dayNumber, daysInMonth, written } from '../heat/index.ts';
import { HOUR, type Instant, instant } from '../units.ts';
import { refuse, wholeFrom, wholeNumber } from './stationField.ts';

// ISD-Lite (NOAA NCEI): one line is one hour, UTC; date and hour, then eight columns of six
// characters from the 14th on. Its format note prints slightly inconsistent positions; these fit
// the 61-character line. By position, never by splitting: full columns touch.

const WIDTH = 61;
const FIRST = 13; // column, from 0
const COLUMN = 6;
const MISSING = -9999;
const TRACE = -1; // of rain: wet, but too little to measure

export type StationHour = {
  readonly t: Instant;
  /** °C */
  readonly temperature: number | null;
  /** °C */
  readonly dewPoint: number | null;
  /** At sea level, hPa. */
  readonly pressure: number | null;
  /** Degrees, from north by east. */
  readonly windDirection: number | null;
  /** m/s */
  readonly wind: number | null;
  /** Code of the archive, 0 (clear) to 19. */
  readonly sky: number | null;
  /** mm in the hour before, and in the six hours before; 0 with its `trace` was wet all the same. */
  readonly rain: number | null;
  readonly rainTrace: boolean;
  readonly rain6: number | null;
  readonly rain6Trace: boolean;
};

type Column = { field: string; scale: number; from: number; to: number };
const COLUMNS = {
  temperature: { field: 'air temperature', scale: 10, from: -95, to: 65 },
  dewPoint: { field: 'dew point', scale: 10, from: -99, to: 40 },
  pressure: { field: 'sea-level pressure', scale: 10, from: 850, to: 1100 },
  windDirection: { field: 'wind direction', scale: 1, from: 0, to: 360 },
  wind: { field: 'wind speed', scale: 10, from: 0, to: 110 },
  sky: { field: 'sky code', scale: 1, from: 0, to: 19 },
  rain: { field: 'rain of 1 h', scale: 10, from: 0, to: 500 },
  rain6: { field: 'rain of 6 h', scale: 10, from: 0, to: 1000 },
} as const satisfies Record<string, Column>;

/**
 * One line of an ISD-Lite file. Lines may be trimmed at the right.
 * @param line its number, for errors
 * @throws RangeError that names the line and the field
 */
export function parseIsdLiteLine(text: string, line: number): StationHour {
  const padded = text.replace(/\s+$/, '').padEnd(WIDTH);
  if (padded.length > WIDTH) refuse(`${WIDTH} characters`, 'length', line, `${padded.length}`);
  const year = wholeFrom(padded.slice(0, 4), 1900, 2200, 'year', line);
  const month = wholeFrom(padded.slice(5, 7), 1, 12, 'month', line);
  const date = wholeFrom(padded.slice(8, 10), 1, daysInMonth(year, month), 'day', line);
  const hour = wholeFrom(padded.slice(11, 13), 0, 23, 'hour', line);

  const counts = Object.values(COLUMNS).map(({ field }, index) => {
    const begins = FIRST + COLUMN * index;
    const count = wholeNumber(padded.slice(begins, begins + COLUMN), field, line);
    return count === MISSING ? null : count;
  });
  const [temperature = null, dewPoint = null, pressure = null, windDirection = null] = counts;
  const [, , , , wind = null, sky = null, rain = null, rain6 = null] = counts;
  const scaled = (count: number | null, { field, scale, from, to }: Column) => {
    if (count === null) return null;
    const value = count / scale;
    if (!(value >= from && value <= to)) refuse(`${from} to ${to}`, field, line, `${count}`);
    return value;
  };
  const fallen = (count: number | null, column: Column) =>
    count === TRACE ? 0 : scaled(count, column);
  return {
    t: instant((dayNumber(written(year, month, date)) * 24 + hour) * HOUR),
    temperature: scaled(temperature, COLUMNS.temperature),
    dewPoint: scaled(dewPoint, COLUMNS.dewPoint),
    pressure: scaled(pressure, COLUMNS.pressure),
    windDirection: scaled(windDirection, COLUMNS.windDirection),
    wind: scaled(wind, COLUMNS.wind),
    sky: scaled(sky, COLUMNS.sky),
    rain: fallen(rain, COLUMNS.rain),
    rainTrace: rain === TRACE,
    rain6: fallen(rain6, COLUMNS.rain6),
    rain6Trace: rain6 === TRACE,
  };
}

/**
 * A whole ISD-Lite file; empty lines are passed over.
 * @throws RangeError for the first faulty line, naming it and the field
 */
export const parseIsdLite = (text: string): readonly StationHour[] =>
  text
    .split('\n')
    .flatMap((each, index) => (each.trim() === '' ? [] : [parseIsdLiteLine(each, index + 1)]));
