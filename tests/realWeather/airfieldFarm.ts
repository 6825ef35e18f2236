import { type Observation, STATION } from './hourlyYear.ts';
import type { Line } from './replayed.ts';

// An invented farm at the airport: one mast in the open, and one probe in a tunnel that is fed the
// same weather with a correction, another base and other limits of wetness.
const { lat, lon, zone } = STATION;

export const OUTSIDE = { place: 'outside', base: 10, at: 90, below: 87, warmer: 0, damper: 0 };
export const TUNNEL = { place: 'long-house', base: 4, at: 95, below: 88, warmer: 0.5, damper: -2 };
export const PLACES = [OUTSIDE, TUNNEL];

export const airfieldFarm = `
farm: { name: Airfield, zone: ${zone}, lat: ${lat}, lon: ${lon}, money: USD, wage: 16 }
places:
  - { id: outside, name: Outside, kind: outdoor }
  - { id: long-house, name: Long House, kind: tunnel, crop: salad, wet: { at: 95, below: 88 } }
probes:
  - { id: mast, place: outside, spot: air, every: 60m }
  - { id: leaf, place: long-house, spot: canopy, every: 60m, offset: { temperature: 0.5, humidity: -2 } }
crops:
  - { id: salad, base: 4 }
`;

const DAY = 86_400_000;

/**
 * The observations as both probes would send them.
 * @param daysLater told as if they were of a later date
 */
export function airfieldLines(
  year: readonly Observation[],
  { daysLater = 0, probes = ['mast', 'leaf'] } = {},
): Line[] {
  return year.flatMap(({ t: measured, temperature, humidity }) => {
    const t = measured + daysLater * DAY;
    return probes.flatMap((probe) => [
      { probe, quantity: 'temperature' as const, t, value: temperature },
      { probe, quantity: 'humidity' as const, t, value: humidity },
    ]);
  });
}

/** Seventeen years later, 2030, has the weekdays and the clock changes of 2013. */
export const TO_2030 = (Date.UTC(2030, 0, 1) - Date.UTC(2013, 0, 1)) / DAY;
