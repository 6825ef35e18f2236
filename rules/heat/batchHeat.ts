import { type DegreeDays, degreeDaysOf } from '../units.ts';
import type { DayHeat } from './dayHeat.ts';

const MOST_GUESSED = 0.15; // share of a batch's time; common practice, no source

export type BatchHeat = {
  /** null when a day of it could not even be guessed. */
  readonly degreeDays: DegreeDays | null;
  /** Shares of the batch's time, 0..1. */
  readonly filled: number;
  readonly guessed: number;
  readonly unknown: number;
  /** Of the guessed days together, (°C d)². */
  readonly variance: number;
  /** Whether bases and spreads may be learned from it. */
  readonly teaches: boolean;
};

/** Heat units of a batch, day by day; a batch guessed, or unknown, for over 15 % teaches nothing. */
export function batchHeat(days: readonly DayHeat[]): BatchHeat {
  const sum = (of: (day: DayHeat) => number) => days.reduce((total, day) => total + of(day), 0);
  const share = (of: (day: DayHeat) => number) => (days.length === 0 ? 0 : sum(of) / days.length);
  const known = days.every((day) => day.degreeDays !== null);
  const guessed = share((day) => day.guessed);
  const unknown = share((day) => day.unknown);
  return {
    degreeDays: known ? degreeDaysOf(sum((day) => day.degreeDays ?? 0)) : null,
    filled: share((day) => day.filled),
    guessed,
    unknown,
    variance: sum((day) => day.variance),
    teaches: days.length > 0 && known && guessed + unknown <= MOST_GUESSED,
  };
}
