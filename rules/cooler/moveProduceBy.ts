import { expectRange } from '../expectRange.ts';
import { HOUR, type Instant, instant, MINUTE, type Minutes } from '../units.ts';
import { produceTime, type StoppedRoom } from './produceTemperature.ts';
import { warmingTime } from './warmingTime.ts';

export type Crate = {
  /** Middle of the crate when cooling stopped, °C; null for not known. */
  readonly produce: number | null;
  readonly produceTauHours: number;
};

export type MoveBy = {
  /** When the air reaches the limit; null for never. */
  readonly airAt: Instant | null;
  /** When the first of the crates of known temperature reaches it; null for never or none known. */
  readonly produceAt: Instant | null;
  /** `produceAt` less the time it takes to carry everything out. May lie in the past: begin now. */
  readonly moveBy: Instant | null;
  /** Crates of which nothing is known; the deadline does not speak for them. */
  readonly unknownCrates: number;
};

/**
 * Deadline for moving produce out of a room whose cooling stopped.
 *
 * Source: warmingTime and produceTime; the product's clock and not the air's sets the deadline.
 * @param room outside and air temperature, °C, and time constant, h, at the stop; `limit` °C
 * @throws RangeError as produceTemperature, or handling time outside 0..1440 min
 */
export function moveProduceBy(
  stoppedAt: Instant,
  room: Pick<StoppedRoom, 'outside' | 'air' | 'tauHours'> & { readonly limit: number },
  crates: readonly Crate[],
  handling: Minutes,
): MoveBy {
  expectRange('handling time', handling, 0, 1440, 'min');
  const { outside, air, tauHours, limit } = room;
  const airHours = warmingTime({ inside: air, outside, target: limit, tauHours });
  let first: number | null = null;
  let unknownCrates = 0;
  for (const { produce, produceTauHours } of crates) {
    if (produce === null) {
      unknownCrates += 1;
      continue;
    }
    const hours = produceTime({ ...room, produce, produceTauHours });
    if (hours !== null && (first === null || hours < first)) first = hours;
  }
  const produceAt = first === null ? null : instant(stoppedAt + first * HOUR);
  return {
    airAt: airHours === null ? null : instant(stoppedAt + airHours * HOUR),
    produceAt,
    moveBy: produceAt === null ? null : instant(produceAt - handling * MINUTE),
    unknownCrates,
  };
}
