import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

// Daily extremes of two cities, 2012 to 2015: `data/weather.csv` of the npm package vega-datasets.
// Its datapackage.json names as source NOAA Climate Data Online and as licence "U.S. Government
// Dataset" (a work of the United States government); the package around it is BSD-3-Clause.
const PACKAGE = new URL('../../node_modules/vega-datasets/', import.meta.url);
const COLUMNS = 'location,date,precipitation,temp_max,temp_min,wind,weather';

export type City = 'Seattle' | 'New York';
/** One calendar day: `2013-04-01`, °C. */
export type Extremes = { readonly day: string; readonly min: number; readonly max: number };

/** What the package says of the table: its sources and licences, by title. */
export function provenance(): { sources: string[]; licences: string[] } {
  const file = fileURLToPath(new URL('datapackage.json', PACKAGE));
  const { resources } = JSON.parse(readFileSync(file, 'utf8')) as {
    resources: {
      path: string;
      sources?: { title: string }[];
      licenses?: { title: string }[];
    }[];
  };
  const table = resources.find(({ path }) => path === 'weather.csv');
  return {
    sources: (table?.sources ?? []).map(({ title }) => title),
    licences: (table?.licenses ?? []).map(({ title }) => title),
  };
}

/** The days of a city, oldest first. */
export function extremesOf(city: City): readonly Extremes[] {
  const text = readFileSync(fileURLToPath(new URL('data/weather.csv', PACKAGE)), 'utf8');
  const [header, ...lines] = text.trimEnd().split(/\r?\n/);
  if (header !== COLUMNS) throw new Error(`Expected columns ${COLUMNS}, got ${header}`);
  return lines
    .map((line) => line.split(','))
    .filter(([location]) => location === city)
    .map(([, day = '', , max, min]) => ({ day, min: Number(min), max: Number(max) }));
}
