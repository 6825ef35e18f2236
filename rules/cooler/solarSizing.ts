import { expectRange } from '../expectRange.ts';
import { orUnknownField } from '../orUnknownField.ts';

/** Starting current of a compressor in times its running current; it sets the inverter. Common practice. */
export const STARTING_CURRENT = { least: 3, most: 6 } as const;

/**
 * Peak power of panels, kW, that make a day's energy in the worst month of use: E / (peak-sun hours
 * x system factor). On paper only: wiring and batteries are work for a licensed electrician.
 * Common practice, no source.
 * @param systemFactor share of the rated power that arrives, 0.1..1; about 0.75
 * @throws RangeError for energy below 0, sun outside 0.1..12 h
 */
export const solarPower = orUnknownField(function solarPower(need: {
  readonly kilowattHours: number;
  readonly sunHours: number;
  readonly systemFactor: number;
}): number {
  expectRange('energy', need.kilowattHours, 0, 100_000, 'kWh');
  expectRange('peak-sun hours', need.sunHours, 0.1, 12, 'h');
  expectRange('system factor', need.systemFactor, 0.1, 1, '');
  return need.kilowattHours / (need.sunHours * need.systemFactor);
});

/**
 * Battery, kWh, that bridges `days` without sun: E days / (depth x efficiency).
 * Common practice, no source.
 * @param need depth of discharge allowed and efficiency of going in and out, each 0.1..1
 * @throws RangeError for energy or days below 0
 */
export const batterySize = orUnknownField(function batterySize(need: {
  readonly kilowattHours: number;
  readonly days: number;
  readonly depth: number;
  readonly efficiency: number;
}): number {
  expectRange('energy', need.kilowattHours, 0, 100_000, 'kWh');
  expectRange('days', need.days, 0, 60, 'd');
  expectRange('depth of discharge', need.depth, 0.1, 1, '');
  expectRange('efficiency', need.efficiency, 0.1, 1, '');
  return (need.kilowattHours * need.days) / (need.depth * need.efficiency);
});
