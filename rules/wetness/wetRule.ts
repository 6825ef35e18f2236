import { expectRange } from '../expectRange.ts';
import type { Celsius, Instant, Percent } from '../units.ts';

/**
 * When leaves count as wet: from humidity `at`, until it has fallen under `below`.
 *
 * Defaults of the farm file are 90 and 87. A constant threshold was right in 87-92 % of hours in
 * a four-region test (Sentelhas et al. 2008, Agric. For. Meteorol. 148:392); 87 is ours.
 */
export type WetRule = {
  readonly at: Percent | number;
  readonly below: Percent | number;
  /** A longer time between two readings is a gap; 90 when not given. */
  readonly maxGapMinutes?: number;
};

/** How long a dry break has to be, in hours, to end a wet spell. */
export type SpellRule = WetRule & { readonly mergeGapHours: number };

/** A reading of canopy air; null humidity is a reading that says nothing about wetness. */
export type WetReading = {
  readonly t: Instant;
  readonly temperature: Celsius;
  readonly humidity: Percent | null;
};

export const USUAL_MAX_GAP = 90; // min; ours: three missed half-hourly messages

export function expectWetRule({ at, below, maxGapMinutes = USUAL_MAX_GAP }: WetRule) {
  expectRange('humidity at which leaves are wet', at, 1, 100, '%');
  expectRange('humidity below which leaves are dry', below, 1, at, '%');
  expectRange('longest time between readings', maxGapMinutes, 1, 1440, 'min');
}
