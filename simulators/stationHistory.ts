import { writeFileSync } from 'node:fs';
import { createAirMass } from './airMass.ts';
import type { Scenario } from './scenario.ts';
import { firstWeather, nextWeather, STEP } from './weather.ts';

// Years of days at a made-up weather station near the made-up farm: the same invented climate, in
// the open on a headland. A reader there looks at 18:00 UTC.

const HOUR = 3_600_000;
const DAY = 24 * HOUR;
const READ_AT = 18 * HOUR;
/** Air masses change slowly: one is good for half an hour, and thirty years are made in seconds. */
const HELD = 6; // steps of five minutes
/** K by which the sea keeps its nights above the garden's. Invented. */
const MILDER = 0.8;
const SETTLE = 20; // days until nothing of the first guess is left

const tenth = (value: number) => (Math.round(10 * value) / 10).toFixed(1);

/** Where the made-up station stands, for `dewpost import`. */
export const madeUpStation = {
  name: 'Saltwind Point (invented)',
  lat: 51.75,
  lon: -6.95,
  altitude: 20,
} as const;

/** Lines of CSV: date, tmin, tmax in °C, rain in mm; the last day is the one before `to`. */
export function* stationDays(
  { plan, seed }: Scenario,
  { years, to }: { readonly years: number; readonly to: number },
): Generator<string> {
  yield 'date,tmin,tmax,rain\n';
  const last = Math.floor((to - READ_AT) / DAY) * DAY + READ_AT;
  const first = last - Math.round(years * 365.25) * DAY;
  const airMass = createAirMass(seed, plan.weather);
  let t = first - SETTLE * DAY;
  let air = airMass(t);
  let weather = firstWeather(t, air);
  let [min, max, rain] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, 0];
  for (let step = 1; t < last; step++) {
    if (step % HELD === 0) air = airMass(t);
    weather = nextWeather(weather, air, plan.lat, plan.lon);
    t += STEP;
    min = Math.min(min, weather.temperature);
    max = Math.max(max, weather.temperature);
    rain += weather.rain;
    if ((t - READ_AT) % DAY !== 0) continue;
    const day = new Date(t).toISOString().slice(0, 10);
    if (t > first)
      yield `${day},${tenth(min + MILDER)},${tenth(max + MILDER / 2)},${tenth(rain)}\n`;
    [min, max, rain] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, 0];
  }
}

/** Writes the station's days to a file. */
export function writeStation(
  scenario: Scenario,
  options: { readonly years: number; readonly to: number },
  file: string,
): void {
  writeFileSync(file, [...stationDays(scenario, options)].join(''));
}

/** What the made-up grower counted in the strawberry patches on the day before: a file for `dewpost import`. */
export const fruitCounts = `counted,place,stage,kg,flowered
2026-04-22,south-patch,green,6,
2026-04-22,south-patch,flower,14,2026-04-10
2026-04-22,south-patch,flower,18,2026-04-20
2026-04-22,far-patch,flower,12,2026-04-18
`;
