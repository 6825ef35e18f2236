// Four ways of taking in what a night has shown so far, on the curve of Snyder & de Melo-Abreu 2005
// (FAO, vol. 1): T = T0 - fall √[(t - 2)/(N - 2)].

/** A temperature so many hours after sunset. */
export type HourRead = { readonly after: number; readonly value: number };
export const WAYS = ['weighed', 'kept', 'mean', 'expected'] as const;
export type Way = (typeof WAYS)[number];

const BEFORE_REFIT = 3; // hours after sunset, ours: sooner, a tenth of a degree swings the slope

/**
 * The low by each way. `kept`: the newest reading and the cooling still to come; `mean`: that and
 * the slope fitted again through all readings, half each; `weighed`: their mean and what was
 * expected beforehand, by the share of the fall that is over; `expected`: as beforehand.
 *
 * Source: curve as above; the ways are common practice, no source.
 */
export function nightWays(night: {
  /** Two hours after sunset, °C. */
  readonly start: number;
  /** The low expected beforehand, °C. */
  readonly expected: number;
  readonly nightHours: number;
  /** Later than two hours after sunset, in order. */
  readonly reads: readonly HourRead[];
  readonly last: HourRead;
}): Readonly<Record<Way, number>> {
  const { start, expected, nightHours, reads, last } = night;
  const span = nightHours - 2;
  const share = Math.sqrt(Math.min(1, (last.after - 2) / span));
  const fall = Math.max(0, start - expected);
  const kept = last.value - fall * (1 - share);
  const slope = last.after < BEFORE_REFIT ? null : fittedFall(start, reads);
  const again = slope === null ? kept : start - slope * Math.sqrt(span);
  const mean = (kept + again) / 2;
  return { weighed: (1 - share) * expected + share * mean, kept, mean, expected };
}

/** k of T0 - k √(t - 2), by least squares through the start. */
function fittedFall(start: number, reads: readonly HourRead[]): number | null {
  let above = 0;
  let below = 0;
  for (const { after, value } of reads) {
    above += (start - value) * Math.sqrt(after - 2);
    below += after - 2;
  }
  return below > 0 ? above / below : null;
}
