import { expectRange } from '../expectRange.ts';
import type { TemperatureReading } from '../heat/index.ts';
import { HOUR, type Hours, hours } from '../units.ts';

/** How straight the line must be to be believed. Ours: a door or a defrost bends it below this. */
export const STRAIGHT_ENOUGH = 0.98;

export type TimeConstant = {
  /** Infinity where the readings do not warm. */
  readonly tauHours: Hours;
  /** Share of the variation that the straight line explains; trust it from STRAIGHT_ENOUGH up. */
  readonly r2: number;
};

/**
 * How fast this room warms, from readings while cooling was known to be off and the door shut:
 * the slope of ln(outside - inside) on time. Leave out the first ten minutes, when the air still
 * mixes, and ask for half an hour and 2 K at least: a shorter stretch gives a number without worth.
 *
 * Source: Newton's law of cooling, least squares on the logarithm.
 * @param outside mean outside temperature of the stretch, °C, steady within 2 K
 * @throws RangeError for fewer than 3 readings, all at one time, or one not below outside
 */
export function fitTimeConstant(
  readings: readonly TemperatureReading[],
  outside: number,
): TimeConstant {
  expectRange('outside temperature', outside, -60, 80, '°C');
  expectRange('number of readings', readings.length, 3, Number.MAX_SAFE_INTEGER, '');
  const start = readings[0]?.t ?? 0;
  const x = readings.map(({ t }) => (t - start) / HOUR);
  const y = readings.map(({ value }) => {
    if (!(value > -60 && value < outside)) {
      throw new RangeError(
        `Expected inside temperature from -60 to below ${outside} °C, got ${value}`,
      );
    }
    return Math.log(outside - value);
  });
  const meanX = mean(x);
  const meanY = mean(y);
  let xx = 0;
  let xy = 0;
  let yy = 0;
  x.forEach((value, index) => {
    const dx = value - meanX;
    const dy = (y[index] ?? 0) - meanY;
    xx += dx * dx;
    xy += dx * dy;
    yy += dy * dy;
  });
  if (!(xx > 0)) throw new RangeError('Expected readings at different times, got all at one');
  return {
    tauHours: hours(xy < 0 ? -xx / xy : Number.POSITIVE_INFINITY),
    r2: yy === 0 ? 0 : (xy * xy) / (xx * yy),
  };
}

const mean = (values: readonly number[]) =>
  values.reduce((sum, value) => sum + value, 0) / values.length;
