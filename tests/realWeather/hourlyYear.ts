import { existsSync, readFileSync } from 'node:fs';
import { test } from 'vitest';

// A year of hourly observations at one airport: NOAA surface observations of 2013 as published in
// nycflights13 (data-raw/weather.csv, CC0), turned into °C. It lies beside the project, in
// ../shared/data, is read from there and is no part of the project.
const FILE = new URL('../../../shared/data/hourly-airport-2013.csv', import.meta.url);
const COLUMNS = 't_utc,temperature_c,dew_point_c,humidity_pct,wind_ms,rain_mm,pressure_hpa';

/** Where it was measured, as its own notes say. */
export const STATION = { lat: 40.6925, lon: -74.1687, zone: 'America/New_York' } as const;

/** One observation: ms since 1970 (UTC), °C, °C, %RH. */
export type Observation = {
  readonly t: number;
  readonly temperature: number;
  readonly dewPoint: number;
  readonly humidity: number;
};

/** The year, oldest first, without the rows that hold no temperature; null when the file is absent. */
export function hourlyYear(): readonly Observation[] | null {
  if (!existsSync(FILE)) return null;
  const [header, ...lines] = readFileSync(FILE, 'utf8').trimEnd().split('\n');
  if (header !== COLUMNS) throw new Error(`Expected columns ${COLUMNS}, got ${header}`);
  return lines.flatMap((line) => {
    const [t = '', temperature = '', dewPoint = '', humidity = ''] = line.split(',');
    if (temperature === '' || dewPoint === '' || humidity === '') return [];
    return [
      {
        t: Date.parse(t),
        temperature: Number(temperature),
        dewPoint: Number(dewPoint),
        humidity: Number(humidity),
      },
    ];
  });
}

const year = hourlyYear();

/** A test that needs the year; where it is absent, a skipped one that says so. */
export function testWithYear(
  name: string,
  check: (year: readonly Observation[]) => void | Promise<void>,
) {
  if (year === null) test.skip(`${name} (skipped: no shared data)`, () => {});
  else test(name, () => check(year));
}
