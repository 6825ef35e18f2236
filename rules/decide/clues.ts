import { dewPoint } from '../air/index.ts';
import { celsius, HOUR, type Instant, instant, MINUTE } from '../units.ts';
import { around, firstAt, highest, newest, type Read } from './column.ts';
import { AFTER_RISE, type Night } from './night.ts';
import type { Column, Predictor, SpotNow } from './snapshot.ts';

// The readings of today that a forecast of the night rests on.

export type Clues = {
  /** Two hours after sunset; null before that, or when nothing was read then. */
  readonly evening: Predictor | null;
  /** Around 15:00 of the day before the night. */
  readonly afternoon: Predictor | null;
  /** An hour after sunrise of the day before the night. */
  readonly morning?: Predictor | null;
  /** The warmest of the day so far. */
  readonly warmest: ReturnType<typeof celsius>;
};

/** The morning's reading may be this old: an hourly station has one. Ours, from no source. */
export const MORNING_REACH = 65 * MINUTE;

/** The dew point of the spot itself, or where humidity is not read there, of the air outside. */
function dewPointAt(spot: SpotNow, outside: SpotNow | null, at: number, from: number, to: number) {
  const { air } = spot.air.length > 0 ? spot : (outside ?? spot);
  const next = firstAt(air.length, (i) => air[i]?.t ?? Number.POSITIVE_INFINITY, at);
  const near = [air[next], air[next - 1]].find(
    (read) => read && read.t >= from && read.t <= to && read.humidity > 0 && read.humidity <= 105,
  );
  return near ? dewPoint(near.temperature, near.humidity) : null;
}

function predictorAt(
  spot: SpotNow,
  outside: SpotNow | null,
  at: number,
  now: Instant,
): Predictor | null {
  const column = spot.columns.temperature;
  const temperature = column === undefined ? null : around(column, at, now);
  if (temperature === null) return null;
  const near = dewPointAt(spot, outside, at, at - HOUR / 2, Math.min(now, at + HOUR / 2));
  return { temperature, dewPoint: near };
}

/**
 * The last reading by an hour after sunrise. Nothing later: the forecast is made then, and a year
 * of nights has to be learned from what was known at the same hour.
 */
function morningOf(spot: SpotNow, outside: SpotNow | null, at: Instant): Predictor | null {
  const read = newest(spot.columns.temperature, at);
  if (read === null || at - read.t > MORNING_REACH) return null;
  return {
    temperature: celsius(read.value),
    dewPoint: dewPointAt(spot, outside, at, at - MORNING_REACH, at),
  };
}

export function cluesFor(
  spot: SpotNow,
  outside: SpotNow | null,
  column: Column,
  night: Night,
  now: Instant,
  last: Read,
): Clues {
  const evening = instant(night.set + 2 * HOUR);
  const beforeAfternoon = now < night.afternoon;
  // In the morning the last afternoon is yesterday's, so the look back is longer.
  const back = beforeAfternoon ? 24 * HOUR : 12 * HOUR;
  const warmest = highest(column, now - back, now) ?? last;
  return {
    evening: now < evening ? null : predictorAt(spot, outside, evening, now),
    afternoon: beforeAfternoon ? null : predictorAt(spot, outside, night.afternoon, now),
    morning: morningOf(spot, outside, instant(night.riseBefore + AFTER_RISE)),
    warmest: celsius(warmest.value),
  };
}
