import { cusum, ewmaChart, median } from '../statistics/index.ts';
import type { Instant } from '../units.ts';
import { type EnergyLine, energyLine } from './energyIndex.ts';

/** One day of a room, by its meter and probes. null: not known. */
export type EnergyDay = {
  readonly from: Instant;
  readonly kilowattHours: number | null;
  /** Mean outside less mean inside, K. */
  readonly gap: number | null;
  /** Share of the time that the unit ran. */
  readonly duty: number | null;
};

export type EnergyTrend = {
  /** Energy over the difference outside to inside, fitted on the days before the last two weeks or all. */
  readonly line: EnergyLine | null;
  /** kWh a day by which the newest days lie above what the line gives for their weather. */
  readonly above: number | null;
  /** That as a share of the usual day, smoothed. */
  readonly share: number | null;
  /** Whether it is more than chance. */
  readonly signal: 'more' | 'less' | null;
  /** The day since which it has been so. */
  readonly since: Instant | null;
};

const LAMBDA = 0.3; // usual weight of the newest day; e-Handbook 6.3.2.4
const SLACK = 0.5; // of a standard deviation: half a shift that matters; e-Handbook 6.3.2.3
const LIMIT = 5; // standard deviations; common practice for daily values
const BASE_DAYS = 14; // days the line is fitted on at least; common practice for "good days"
const LEAST_SD = 0.04; // of the usual day: a meter and two probes know no better. Ours
const MAD = 1.4826; // of a normal law, by definition

/**
 * Whether a room needs more energy than its weather explains: ice on the coil, a worn seal, a door
 * used more. The line of energy on the difference outside to inside is fitted on the first two weeks
 * of the days given; what later days lie above it goes through an EWMA chart and a CUSUM, one value a
 * day. null parts while there are too few days.
 *
 * Source: NIST/SEMATECH e-Handbook 6.3.2.3 and 6.3.2.4; what they are applied to is ours.
 */
export function energyTrend(days: readonly EnergyDay[]): EnergyTrend {
  const usable = days.filter(({ kilowattHours, gap }) => kilowattHours !== null && gap !== null);
  const base = usable.slice(0, BASE_DAYS);
  const line = energyLine(base);
  const nothing = { line, above: null, share: null, signal: null, since: null };
  if (line === null || usable.length < BASE_DAYS) return nothing;
  const residual = ({ kilowattHours, gap }: EnergyDay) =>
    kilowattHours === null || gap === null
      ? null
      : kilowattHours - (line.intercept + line.slope * gap);
  const usual = median(base.map(({ kilowattHours }) => kilowattHours ?? 0));
  const first = base.map((day) => residual(day) ?? 0);
  const sd = Math.max(LEAST_SD * usual, MAD * median(first.map(Math.abs)));
  if (!(sd > 0)) return nothing;
  const begin = days.indexOf(base.at(-1) as EnergyDay) + 1;
  const later = days.slice(begin).map(residual);
  if (later.length === 0) return nothing;
  const chart = ewmaChart(later, { target: 0, sd, lambda: LAMBDA });
  const sums = cusum(later, { target: 0, slack: SLACK * sd, limit: LIMIT * sd });
  const newest = chart.at(-1);
  const sum = sums.points.at(-1);
  const above = newest?.z ?? 0;
  const beyond = newest !== undefined && (above > newest.high || above < newest.low);
  const signal = beyond || sum?.signal != null ? (above > 0 ? 'more' : 'less') : null;
  const since = sums.began === null ? null : (days[begin + sums.began]?.from ?? null);
  return { line, above, share: usual > 0 ? above / usual : null, signal, since: signal && since };
}
