import { expectRange } from '../expectRange.ts';
import type { MaybeTemperature } from '../heat/index.ts';
import { straightLine } from '../statistics/index.ts';
import { HOUR, type Hours, hours } from '../units.ts';

/** How straight the line must be to be believed. Ours: a door or a defrost bends it below this. */
export const STRAIGHT_ENOUGH = 0.98;

export type TimeConstant = {
  /** Infinity where the readings do not move towards the temperature outside them. */
  readonly tauHours: Hours;
  /** Share of the variation that the straight line explains; trust it from STRAIGHT_ENOUGH up. */
  readonly r2: number;
};

/**
 * How fast this room warms, from readings while cooling was known to be off and the door shut:
 * the slope of ln(outside - inside) on time. Leave out the first ten minutes, when the air still
 * mixes, and ask for half an hour and 2 K at least (offPeriodFit does): a shorter stretch gives a
 * number without worth. Readings that are not known are left out.
 *
 * Source: Newton's law of cooling, least squares on the logarithm.
 * @param outside mean outside temperature of the stretch, °C, steady within 2 K; null for not known
 * @returns null when outside is not known
 * @throws RangeError for fewer than 3 readings, all at one time, or one not below outside
 */
export function fitTimeConstant(
  readings: readonly MaybeTemperature[],
  outside: number,
): TimeConstant;
export function fitTimeConstant(
  readings: readonly MaybeTemperature[],
  outside: number | null,
): TimeConstant | null;
export function fitTimeConstant(
  readings: readonly MaybeTemperature[],
  outside: number | null,
): TimeConstant | null {
  if (outside === null) return null;
  expectRange('outside temperature', outside, -60, 80, '°C');
  const { tauHours, r2 } = fitLag(readings, (value) => {
    if (!(value > -60 && value < outside)) {
      throw new RangeError(
        `Expected inside temperature from -60 to below ${outside} °C, got ${value}`,
      );
    }
    return outside - value;
  });
  return { tauHours, r2 };
}

/**
 * How slowly produce in its package follows the room, from a probe in the middle of a crate after
 * it was put away: the slope of ln(produce - room) on time.
 *
 * Source: Newton's law of cooling, least squares on the logarithm.
 * @param room mean room temperature of the stretch, °C; null for not known
 * @returns null when the room is not known
 * @throws RangeError for fewer than 3 readings, all at one time, or one not above the room
 */
export function fitProduceTimeConstant(
  readings: readonly MaybeTemperature[],
  room: number | null,
): TimeConstant | null {
  if (room === null) return null;
  expectRange('room temperature', room, -60, 80, '°C');
  const { tauHours, r2 } = fitLag(readings, (value) => {
    if (!(value > room && value < 80)) {
      throw new RangeError(
        `Expected produce temperature from above ${room} to 80 °C, got ${value}`,
      );
    }
    return value - room;
  });
  return { tauHours, r2 };
}

/** The same fit with the standard error of tau: tau se(slope) / |slope|; null for two points. */
export function fitLag(
  readings: readonly MaybeTemperature[],
  gapOf: (value: number) => number,
): TimeConstant & { readonly seHours: Hours | null } {
  const known = readings.flatMap(({ t, value }) => (value === null ? [] : [{ t, value }]));
  expectRange('number of readings', known.length, 3, Number.MAX_SAFE_INTEGER, '');
  const start = known[0]?.t ?? 0;
  const line = straightLine(
    known.map(({ t }) => (t - start) / HOUR),
    known.map(({ value }) => Math.log(gapOf(value))),
  );
  if (line === null) throw new RangeError('Expected readings at different times, got all at one');
  const { slope, slopeError, r2 } = line;
  if (slope >= 0) return { tauHours: hours(Number.POSITIVE_INFINITY), r2, seHours: null };
  const tauHours = hours(-1 / slope);
  const seHours = slopeError === null ? null : hours((tauHours * slopeError) / -slope);
  return { tauHours, r2, seHours };
}
