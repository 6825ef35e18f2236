import type { EnergyLine } from './energyIndex.ts';
import { batterySize, solarPower } from './solarSizing.ts';

/** One line of a worked sheet: a term that hub/words turns into words, and its value. */
export type SheetLine = { readonly what: string; readonly value: number; readonly unit: string };

export type SolarSheet = {
  /** kWh a day to be made, at the difference asked for. */
  readonly kilowattHours: number;
  /** kW of panels, and kWh of battery. */
  readonly panels: number;
  readonly battery: number;
  readonly lines: readonly SheetLine[];
};

/** What the sheet assumes until somebody tells better. Common practice, no source. */
export const SOLAR_USUAL = {
  sunHours: 3, // h a day of full sun in the worst month of use
  systemFactor: 0.75,
  days: 2, // without sun
  depth: 0.8, // of discharge
  efficiency: 0.9,
} as const;

/**
 * Panels and battery for a room on paper, from its own measured days: the line of energy on the
 * difference outside to inside at the difference of the worst month, or the mean day where there is
 * no line yet. Compressors start with three to six times their running current: that sets the
 * inverter. For a licensed electrician to check.
 *
 * Source: E / (sun hours x system factor) and E days / (depth x efficiency), common practice.
 * @param gap outside less inside of the worst month, K; null takes the mean of the days
 */
export function solarSheet(
  measured: {
    readonly line: EnergyLine | null;
    readonly mean: number | null;
    readonly gap: number | null;
  },
  use: { readonly [Key in keyof typeof SOLAR_USUAL]: number } = SOLAR_USUAL,
): SolarSheet | null {
  const { line, mean, gap } = measured;
  const byLine = line?.enough === true && gap !== null ? line.intercept + line.slope * gap : null;
  const kilowattHours = byLine ?? mean;
  if (kilowattHours === null || !(kilowattHours > 0)) return null;
  const { sunHours, systemFactor, days, depth, efficiency } = use;
  const panels = solarPower({ kilowattHours, sunHours, systemFactor });
  const battery = batterySize({ kilowattHours, days, depth, efficiency });
  return {
    ...{ kilowattHours, panels, battery },
    lines: [
      ...(byLine === null || line === null || gap === null
        ? []
        : [
            { what: 'energy-per-kelvin', value: line.slope, unit: 'kWh/K' },
            { what: 'energy-without-weather', value: line.intercept, unit: 'kWh' },
            { what: 'outside-less-inside', value: gap, unit: 'K' },
          ]),
      { what: 'energy-a-day', value: kilowattHours, unit: 'kWh' },
      { what: 'sun-hours', value: sunHours, unit: 'h' },
      { what: 'system-factor', value: systemFactor, unit: '' },
      { what: 'panels', value: panels, unit: 'kW' },
      { what: 'days-without-sun', value: days, unit: 'd' },
      { what: 'depth-of-discharge', value: depth, unit: '' },
      { what: 'battery-efficiency', value: efficiency, unit: '' },
      { what: 'battery', value: battery, unit: 'kWh' },
    ],
  };
}
