import { dewPointDepression, knownAir, knownHumidity } from '../air/index.ts';
import { expectRange } from '../expectRange.ts';
import { type Celsius, type Instant, type Kelvin, kelvin, type Percent } from '../units.ts';
import { expectWetRule, type WetRule } from './wetRule.ts';

/** What one reading says of leaves; `between` two levels they are as they were before. */
export type Sign = 'wet' | 'dry' | 'between';

export type SignReading = {
  readonly t: Instant;
  /** null where it was not read. */
  readonly temperature: Celsius | null;
  /** null: this reading says nothing, as if it had not come. */
  readonly sign: Sign | null;
};

/** Canopy air as a probe sends it; null is not known. */
export type AirRead = {
  readonly t: Instant;
  readonly temperature: Celsius | null;
  readonly humidity: Percent | null;
};

const sign = (wet: boolean, dry: boolean): Sign => (wet ? 'wet' : dry ? 'dry' : 'between');

/**
 * Signs of wetness by relative humidity: wet from `at`, dry under `below`. Humidity outside
 * 0..105 % says nothing.
 * @throws RangeError for a rule whose `below` is above `at`
 */
export function signsByHumidity(readings: readonly AirRead[], rule: WetRule): SignReading[] {
  expectWetRule(rule);
  return readings.map(({ t, temperature, humidity }) => {
    const known = knownHumidity(humidity);
    if (known === null) return { t, temperature, sign: null };
    return { t, temperature, sign: sign(known >= rule.at, known < rule.below) };
  });
}

/** Wet below `wetUnder`, dry above `dryOver`, both K of dew-point depression. */
export type DepressionRule = { readonly wetUnder: Kelvin; readonly dryOver: Kelvin };

/** Common practice for the 2 K (leaves run 1-3 K colder than air on clear nights); release ours. */
export const usualDepression: DepressionRule = Object.freeze({
  wetUnder: kelvin(2),
  dryOver: kelvin(2.4),
});

/**
 * Signs of wetness by dew-point depression, instead of humidity: nearly the same line. Choose one
 * way for a place and keep to it. A reading without temperature or humidity says nothing.
 * @throws RangeError for a rule whose `dryOver` is under `wetUnder`
 */
export function signsByDepression(
  readings: readonly AirRead[],
  { wetUnder, dryOver }: DepressionRule = usualDepression,
): SignReading[] {
  expectRange('depression below which leaves are wet', wetUnder, 0, 20, 'K');
  expectRange('depression above which leaves are dry', dryOver, wetUnder, 20, 'K');
  return readings.map(({ t, temperature, humidity }) => {
    const known = knownAir(temperature, humidity);
    if (known === null) return { t, temperature, sign: null };
    const depression = dewPointDepression(known.temperature, known.humidity);
    return { t, temperature, sign: sign(depression < wetUnder, depression > dryOver) };
  });
}

/** A leaf-wetness probe's reading: % of its wet signal. */
export type LeafProbeRead = {
  readonly t: Instant;
  readonly temperature: Celsius | null;
  readonly wetness: Percent | null;
};

// Half the signal is the usual switch-over of such grids (common practice, no source); the release
// is ours. Every make and coat of paint differs: set it by looking at the leaves.
const LEAF_WET_AT = 50; // %
const LEAF_DRY_BELOW = 40; // %

/**
 * Signs of wetness from a leaf-wetness probe, where there is one: it sees rain, dew and drip that
 * humidity cannot. Values outside 0..100 % say nothing.
 * @throws RangeError for a `below` above `at`
 */
export function signsByLeafProbe(
  readings: readonly LeafProbeRead[],
  {
    at = LEAF_WET_AT,
    below = LEAF_DRY_BELOW,
  }: { readonly at?: number; readonly below?: number } = {},
): SignReading[] {
  expectRange('leaf wetness at which leaves are wet', at, 1, 100, '%');
  expectRange('leaf wetness below which leaves are dry', below, 0, at, '%');
  return readings.map(({ t, temperature, wetness }) => {
    if (wetness === null || !(wetness >= 0 && wetness <= 100))
      return { t, temperature, sign: null };
    return { t, temperature, sign: sign(wetness >= at, wetness < below) };
  });
}
