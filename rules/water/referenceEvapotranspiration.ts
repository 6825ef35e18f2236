import { expectRange } from '../expectRange.ts';
import { orUnknown } from '../orUnknown.ts';
import { orUnknownField } from '../orUnknownField.ts';
import { extraterrestrialRadiation } from './extraterrestrialRadiation.ts';

const FACTOR = 0.0023; // Hargreaves; °C and mm
const OFFSET = 17.8; // °C
const MM_PER_MJ = 0.408; // mm of water evaporated by 1 MJ m⁻² (FAO-56 eq. 20)

/**
 * Reference evapotranspiration ET0 from the day's extremes alone, mm/d, outdoors; 0 where it is
 * too cold for the formula to give any. Single days scatter: use sums of five to seven.
 *
 * Source: Hargreaves, as FAO-56 eq. 52 (Allen, Pereira, Raes & Smith 1998).
 * @param day latitude in degrees, south negative; day of the year 1..366; extremes in °C
 * @throws RangeError for extremes outside -60..60 °C, or a maximum below the minimum
 */
export const referenceEvapotranspiration = orUnknownField(
  function referenceEvapotranspiration(day: {
    readonly min: number;
    readonly max: number;
    readonly latitude: number;
    readonly dayOfYear: number;
  }): number {
    const { min, max, latitude, dayOfYear } = day;
    expectRange('minimum', min, -60, 60, '°C');
    expectRange('maximum', max, min, 60, '°C');
    const radiation = extraterrestrialRadiation(latitude, dayOfYear);
    const warmth = (max + min) / 2 + OFFSET;
    return Math.max(0, FACTOR * warmth * Math.sqrt(max - min) * MM_PER_MJ * radiation);
  },
);

/**
 * The same under plastic or glass, where Hargreaves does not hold: scaled by the share of light let
 * through, and by a factor found against tray weights or a moisture probe (1 until there is one).
 * Common practice, no source.
 * @throws RangeError for a share outside 0..1 or a factor outside 0..5
 */
export const evapotranspirationUnderCover = orUnknown(function evapotranspirationUnderCover(
  outdoors: number,
  lightShare: number,
  calibration: number = 1,
): number {
  expectRange('reference evapotranspiration', outdoors, 0, 20, 'mm/d');
  expectRange('share of light let through', lightShare, 0, 1, '');
  expectRange('calibration', calibration, 0, 5, '');
  return outdoors * lightShare * calibration;
});
