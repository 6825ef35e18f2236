import { medianInterval } from '../statistics/index.ts';
import { MINUTE } from '../units.ts';
import { expectWetRule, USUAL_MAX_GAP, type WetReading, type WetRule } from './wetRule.ts';

export type WetState = 'wet' | 'dry' | 'unknown';

/** Told about each piece of time in turn, ms; the pieces join without holes. */
export type WetVisitor = (state: WetState, from: number, to: number, temperature: number) => void;

/**
 * Walks a series once, cutting its time into wet, dry and unknown pieces.
 *
 * A reading speaks until the next one, when that is near enough; before a gap, and at the end, it
 * speaks for the usual step of the series and what follows is unknown. Wetness does not forget
 * across a gap: between `below` and `at` leaves stay as they were last known.
 *
 * A visitor and not a list: a year of readings would make 100,000 objects.
 * @throws RangeError for readings not in order of time, or humidity above 0..105 %
 */
export function walkWetness(readings: readonly WetReading[], rule: WetRule, visit: WetVisitor) {
  expectWetRule(rule);
  const { at, below } = rule;
  const maxGap = (rule.maxGapMinutes ?? USUAL_MAX_GAP) * MINUTE;
  const step = Math.min(
    medianInterval(readings.some(silent) ? readings.filter(speaks) : readings) ?? 0,
    maxGap,
  );

  let wet = false;
  let since = Number.NEGATIVE_INFINITY; // no reading with humidity yet
  let temperature = 0;
  for (const reading of readings) {
    const { t, humidity } = reading;
    if (humidity === null) continue;
    if (!(humidity > 0 && humidity <= 105)) {
      throw new RangeError(`Expected relative humidity from above 0 to 105 %, got ${humidity}`);
    }
    if (!(t >= since)) {
      throw new RangeError(`Expected readings in order of time, got ${t} after ${since}`);
    }
    if (t > since && since > Number.NEGATIVE_INFINITY) {
      const until = t - since <= maxGap ? t : since + step;
      visit(wet ? 'wet' : 'dry', since, until, temperature);
      if (until < t) visit('unknown', until, t, temperature);
    }
    wet = wet ? humidity >= below : humidity >= at;
    since = t;
    temperature = reading.temperature;
  }
  if (since > Number.NEGATIVE_INFINITY) {
    visit(wet ? 'wet' : 'dry', since, since + step, temperature);
  }
}

const silent = ({ humidity }: WetReading) => humidity === null;
const speaks = ({ humidity }: WetReading) => humidity !== null;
