import { expectRange } from '../expectRange.ts';
import { orUnknownField } from '../orUnknownField.ts';
import { type Celsius, celsius, type Hours, hours } from '../units.ts';
import { expectTimeConstant } from './warmingTime.ts';

/** A room from the moment its cooling stopped, and the produce in it. */
export type StoppedRoom = {
  readonly outside: number;
  /** Room air when cooling stopped, °C. */
  readonly air: number;
  /** Middle of the crate when cooling stopped, °C. */
  readonly produce: number;
  /** Time constant of the room, h. */
  readonly tauHours: number;
  /** Time constant of the produce in its package, h. */
  readonly produceTauHours: number;
};

const AS_GOOD_AS_EQUAL = 1e-6; // h; nearer than this the general form divides by nothing

/**
 * Temperature of the produce `after` hours without cooling. The air drives the produce and not the
 * other way round; the heat that produce breathes out is left out.
 *
 * Source: two first-order lags in a row (Newton's law of cooling, twice).
 * @throws RangeError for temperatures outside -60..80 °C, time constants not above 0, or past time
 */
export const produceTemperature = orUnknownField(function produceTemperature(
  room: StoppedRoom,
  after: number,
): Celsius {
  expectRoom(room);
  expectRange('hours after the stop', after, 0, 100_000, 'h');
  return celsius(produceAfter(room, after));
});

function produceAfter(room: StoppedRoom, after: number): number {
  const { outside, air, produce, tauHours, produceTauHours } = room;
  const airGap = outside - air;
  const produceGap = outside - produce;
  const own = Math.exp(-after / produceTauHours);
  if (Math.abs(tauHours - produceTauHours) < AS_GOOD_AS_EQUAL) {
    return outside - airGap * (after / tauHours) * own - produceGap * own;
  }
  const driven = (airGap * tauHours) / (tauHours - produceTauHours);
  return outside - driven * Math.exp(-after / tauHours) - (produceGap - driven) * own;
}

/**
 * Hours until the produce reaches `limit`; 0 when it is there already, null while outside stays at
 * or below the limit (produce then never gets there for good), or a value is not known.
 * @throws RangeError as produceTemperature
 */
export const produceTime = orUnknownField(function produceTime(
  room: StoppedRoom & { readonly limit: number },
): Hours | null {
  expectRoom(room);
  const { outside, produce, limit, tauHours, produceTauHours } = room;
  expectRange('limit', limit, -60, 80, '°C');
  if (produce >= limit) return hours(0);
  if (outside <= limit) return null;
  let late = Math.max(tauHours, produceTauHours);
  // It gets there for certain, because outside is above the limit: widen until it has.
  while (produceAfter(room, late) < limit && Number.isFinite(late)) late *= 1.5;
  let early = 0;
  for (let step = 0; step < 60; step += 1) {
    const middle = (early + late) / 2;
    if (produceAfter(room, middle) < limit) early = middle;
    else late = middle;
  }
  return hours(late);
});

function expectRoom({ outside, air, produce, tauHours, produceTauHours }: StoppedRoom) {
  expectRange('outside temperature', outside, -60, 80, '°C');
  expectRange('air temperature', air, -60, 80, '°C');
  expectRange('produce temperature', produce, -60, 80, '°C');
  expectTimeConstant(tauHours);
  expectTimeConstant(produceTauHours);
}
