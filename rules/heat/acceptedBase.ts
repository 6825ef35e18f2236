import { expectRange } from '../expectRange.ts';
import { type Celsius, celsius } from '../units.ts';
import { baseTemperature, type Sowing } from './baseTemperature.ts';

// When a base learned from own sowings may replace the starting one: common practice, no source.
const FEWEST = 6; // batches
const NARROWEST = 4; // K between the coolest and the warmest batch
const CLEAR_OF_BASE = 1; // K that every batch has to be warmer than the base
const FURTHEST = 5; // K from the starting value

/** Which base to use, and why not the learned one: too few, too alike, too near it, too far off. */
export type BaseInUse = {
  readonly base: Celsius;
  readonly verdict: 'learned' | 'too-few' | 'too-alike' | 'undetermined' | 'too-cold' | 'too-far';
  /** Lowest and highest of the four methods: how unsure the learned base is. null when not found. */
  readonly range: readonly [Celsius, Celsius] | null;
};

/**
 * The base temperature to count heat units from: learned from the grower's sowings where there are
 * enough of them, unlike enough, and the result is sensible; otherwise the starting value. The
 * learned one is that of least variation in proportion (method 3 of Yang, Logan & Coffey 1995).
 * Refit once a season at most, and count stored totals anew.
 * @throws RangeError for sowings baseTemperature refuses, or a start outside -10..30 °C
 */
export function acceptedBase(sowings: readonly Sowing[], start: number): BaseInUse {
  expectRange('starting base temperature', start, -10, 30, '°C');
  const keep = (verdict: BaseInUse['verdict'], range: BaseInUse['range'] = null): BaseInUse => ({
    base: celsius(start),
    verdict,
    range,
  });
  if (sowings.length < FEWEST) return keep('too-few');
  const found = baseTemperature(sowings);
  const temperatures = sowings.map(({ temperature }) => temperature);
  const coolest = Math.min(...temperatures);
  if (Math.max(...temperatures) - coolest < NARROWEST) return keep('too-alike');

  const methods = Object.values(found).filter((base) => base !== null);
  const range =
    methods.length === 0
      ? null
      : ([celsius(Math.min(...methods)), celsius(Math.max(...methods))] as const);
  const base = found.cvDays;
  if (base === null) return keep('undetermined', range);
  if (!(coolest > base + CLEAR_OF_BASE)) return keep('too-cold', range);
  if (Math.abs(base - start) > FURTHEST) return keep('too-far', range);
  return { base, verdict: 'learned', range };
}
