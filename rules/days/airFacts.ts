import { meanAboveLine } from '../heat/index.ts';
import { medianInterval } from '../statistics/index.ts';
import { type Celsius, celsius, type DegreeDays, degreeDaysOf, HOUR } from '../units.ts';
import type { WetReading } from '../wetness/index.ts';

const DAY = 24 * HOUR;

type Window = {
  readonly from: number;
  readonly to: number;
  readonly base: number;
  /** ms */
  readonly maxGap: number;
};

/** What temperature alone tells of a day, and how much of it readings speak for, ms. */
export type AirFacts = {
  readonly min: Celsius | null;
  readonly max: Celsius | null;
  readonly mean: Celsius | null;
  readonly degreeDays: DegreeDays | null;
  readonly spoken: number;
};

// One pass with plain numbers: the hub asks this for every place after every late reading, so
// neither degreeDays nor the walk over segments is handed a list made for the purpose.
export function airFacts(readings: readonly WetReading[], window: Window): AirFacts {
  const { from, to, base, maxGap } = window;
  const step = Math.min(medianInterval(readings) ?? 0, maxGap);
  let count = 0;
  let sum = 0;
  let min = Number.POSITIVE_INFINITY;
  let max = Number.NEGATIVE_INFINITY;
  let joined = 0; // ms that a line between two readings covers
  let warmth = 0; // °C ms
  let spoken = 0;
  let before: WetReading | null = null;
  for (const reading of readings) {
    const { t, temperature } = reading;
    if (!(temperature > -273.15 && temperature < 1000)) {
      throw new RangeError(`Expected temperature from -273.15 to 1000 °C, got ${temperature}`);
    }
    if (t >= from && t < to) {
      count += 1;
      sum += temperature;
      if (temperature < min) min = temperature;
      if (temperature > max) max = temperature;
    }
    if (before !== null) {
      if (t < before.t) {
        throw new RangeError(`Expected readings in order of time, got ${t} after ${before.t}`);
      }
      const near = t - before.t <= maxGap;
      const begins = Math.max(before.t, from);
      spoken += Math.max(0, Math.min(near ? t : before.t + step, to) - begins);
      const ends = Math.min(t, to);
      if (near && ends > begins) {
        const slope = (temperature - before.temperature) / (t - before.t);
        const start = before.temperature + slope * (begins - before.t);
        const end = before.temperature + slope * (ends - before.t);
        warmth += (ends - begins) * meanAboveLine(start, end, base);
        joined += ends - begins;
      }
    }
    before = reading;
  }
  if (before !== null) {
    spoken += Math.max(0, Math.min(before.t + step, to) - Math.max(before.t, from));
  }
  return {
    min: count === 0 ? null : celsius(min),
    max: count === 0 ? null : celsius(max),
    mean: count === 0 ? null : celsius(sum / count),
    degreeDays: joined === 0 ? null : degreeDaysOf(warmth / DAY),
    spoken,
  };
}
