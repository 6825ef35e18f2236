import { dailyLightIntegral, dayOfYear } from '../../rules/heat/index.ts';
import { extraterrestrialRadiation } from '../../rules/water/index.ts';
import type { Calendar } from '../clock.ts';

/** Share of the sun's radiation above the air that comes down on a usual day: the two coefficients of
 *  Ångström's formula with half the sunshine there could be, 0.25 + 0.50 / 2, as in FAO Irrigation and
 *  Drainage Paper 56, eq. 35. Only differences between dates matter here. */
const COMES_DOWN = 0.5;

/** Light that dates usually bring in the open, mol m⁻² a day, from the sun's path alone. */
export function usualLight(lat: number, day: string): number {
  const above = extraterrestrialRadiation(lat, dayOfYear(day)) ?? 0;
  return dailyLightIntegral(Math.min(45, above * COMES_DOWN)) ?? 0;
}

/** Mean of the days from `from` to `to`. */
export function usualLightBetween(
  lat: number,
  from: number,
  to: number,
  calendar: Calendar,
): number {
  let [sum, days] = [0, 0];
  const last = calendar.dayOf(to);
  for (let day = calendar.dayOf(from); day <= last && days < 400; day = calendar.add(day, 1)) {
    sum += usualLight(lat, day);
    days += 1;
  }
  return days === 0 ? 0 : sum / days;
}
