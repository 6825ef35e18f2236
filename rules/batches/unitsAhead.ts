import { expectRange } from '../expectRange.ts';

// How far a typed-in forecast is believed, by days ahead, until its record tells; none after five
// days. Common practice, no source.
const FIRST_WEIGHTS = [0.9, 0.8, 0.6, 0.4, 0.2];
const ENOUGH_PAIRS = 30; // of a forecast and what came, for one lead; the same

/** A forecast of heat units and what came of it, each less the climate mean of its date. */
export type ForecastPair = { readonly forecast: number; readonly observed: number };

/**
 * Weight of a forecast that would have served best: Σf'o' / Σf'², held to 0..1. null when no
 * forecast ever differed from the climate.
 */
export function anomalyWeight(pairs: readonly ForecastPair[]): number | null {
  let together = 0;
  let squares = 0;
  for (const { forecast, observed } of pairs) {
    expectRange('forecast anomaly', forecast, -60, 60, '°C d');
    expectRange('observed anomaly', observed, -60, 60, '°C d');
    together += forecast * observed;
    squares += forecast ** 2;
  }
  return squares === 0 ? null : Math.max(0, Math.min(1, together / squares));
}

/**
 * Weight of a forecast `lead` days ahead (0 is today): learned from thirty pairs at that lead on,
 * a fixed falling one before.
 * @throws RangeError for a lead outside 0..60 d
 */
export function forecastWeight(lead: number, pairs: readonly ForecastPair[] = []): number {
  expectRange('days ahead', lead, 0, 60, 'd');
  const learned = pairs.length < ENOUGH_PAIRS ? null : anomalyWeight(pairs);
  return learned ?? FIRST_WEIGHTS[Math.floor(lead)] ?? 0;
}

/**
 * Expected heat units of each coming day, °C d: w f + (1 - w) c. A day without a forecast is the
 * climate's alone.
 * @param forecast from today on, null or ended where there is none
 * @param climate mean of each date: climateUnits; as many days as are wanted
 * @param weightAt weight by days ahead; forecastWeight when not given
 * @throws RangeError for units outside 0..60 °C d or weights outside 0..1
 */
export function unitsAhead(
  forecast: readonly (number | null)[],
  climate: readonly number[],
  weightAt: (lead: number) => number = forecastWeight,
): readonly number[] {
  return climate.map((mean, lead) => {
    expectRange('climate units of a day', mean, 0, 60, '°C d');
    const said = forecast[lead] ?? null;
    if (said === null) return mean;
    expectRange('forecast units of a day', said, 0, 60, '°C d');
    const weight = weightAt(lead);
    expectRange('weight of a forecast', weight, 0, 1, '');
    return weight * said + (1 - weight) * mean;
  });
}
