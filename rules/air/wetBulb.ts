import { orUnknown } from '../orUnknown.ts';
import { type Celsius, celsius, type Kilopascal, type Percent } from '../units.ts';
import { expectPressure, humidityRatio, ratioAt, SEA_LEVEL } from './humidityRatio.ts';
import { ICE_A, ICE_B } from './saturationOverIce.ts';
import { AT_FREEZING, WATER_A, WATER_B } from './saturationVapourPressure.ts';
import { usableHumidity } from './usableHumidity.ts';

const COLDEST = -40; // °C; no air we accept has a lower wet bulb
const STEPS = 40; // halvings of at most 100 K: below a billionth of a kelvin

/**
 * What evaporation can cool to: the thermodynamic wet-bulb temperature, by halving.
 *
 * Source: ASHRAE Handbook Fundamentals, psychrometrics chapter (from memory; the numbers agree
 * with the psychrolib library). Below 0 °C the bulb is taken as iced. Closed-form fits are not
 * used: the common one is half a kelvin low just above freezing, where it matters.
 * @param pressure air pressure, kPa
 * Null for a null.
 * @throws RangeError outside -30..60 °C, above 0..105 % or 55..110 kPa
 */
export const wetBulb = orUnknown(function wetBulb(
  air: Celsius,
  humidity: Percent,
  pressure: Kilopascal | number = SEA_LEVEL,
): Celsius {
  expectPressure(pressure);
  const ratio = humidityRatio(air, humidity, pressure);
  if (usableHumidity(humidity) === 100) return air;
  let low = COLDEST;
  let high: number = air;
  for (let step = 0; step < STEPS; step += 1) {
    const bulb = (low + high) / 2;
    if (ratioFromBulb(bulb, air, pressure) > ratio) high = bulb;
    else low = bulb;
  }
  return celsius((low + high) / 2);
});

// Humidity ratio of air at `air` whose wet bulb is at `bulb`, kg/kg; heats in kJ/kg and kJ/(kg K).
function ratioFromBulb(bulb: number, air: number, pressure: number): number {
  if (bulb >= 0) {
    const wet = ratioAt(AT_FREEZING * Math.exp((WATER_A * bulb) / (bulb + WATER_B)), pressure);
    return (
      ((2501 - 2.326 * bulb) * wet - 1.006 * (air - bulb)) / (2501 + 1.86 * air - 4.186 * bulb)
    );
  }
  const iced = ratioAt(AT_FREEZING * Math.exp((ICE_A * bulb) / (bulb + ICE_B)), pressure);
  return ((2830 - 0.24 * bulb) * iced - 1.006 * (air - bulb)) / (2830 + 1.86 * air - 2.1 * bulb);
}
