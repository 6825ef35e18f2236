import type { MaybeTemperature } from '../heat/index.ts';
import { HOUR, type Instant, MINUTE } from '../units.ts';

const CALM = 2; // m/s; Snyder & de Melo-Abreu 2005, FAO vol. 1: the method is for less wind
// Without sensors for wind and cloud: common practice, no source.
const LEAST_FALL = 2; // K from sunset to two hours after
const MOST_RISE = 0.5; // K within them
const EVENING = 2 * HOUR;
const NEAR_THE_END = 20 * MINUTE; // ours: how far from either end the first and last reading may be
const LONGEST_GAP = 60 * MINUTE; // ours: a rise of half a kelvin may hide in a longer one

/**
 * Whether a night is one of radiation frost: clear and nearly calm. From sunset to two hours after,
 * the air outdoors falls by 2 K or more, never rises by more than half a kelvin, it does not rain,
 * and the air near the ground is colder than at 1.2 m. A wind of 2 m/s or more says no at once.
 * null when that can not be told from what was read.
 * @param evening readings of both heights in °C, rain in mm over the two hours, wind in m/s
 */
export function isClearCalm(evening: {
  readonly sunset: Instant;
  readonly air: readonly MaybeTemperature[];
  /** Near the ground; left out where no probe hangs there. */
  readonly ground?: readonly MaybeTemperature[] | undefined;
  /** null: the gauge was silent. Left out where there is no gauge. */
  readonly rain?: number | null | undefined;
  readonly wind?: number | null | undefined;
}): boolean | null {
  const { sunset, rain, wind = null } = evening;
  const air = known(evening.air, sunset);
  const ground = evening.ground && known(evening.ground, sunset);
  // Where there is no sensor for a sign, the other signs speak; one that is silent leaves a hole.
  const signs = [
    ...evenFall(air, sunset),
    rain === undefined || (rain === null ? null : rain === 0),
    ground === undefined ||
      (air.length === 0 || ground.length === 0 ? null : mean(ground) < mean(air)),
    wind === null || wind < CALM, // no sensor for it: the other signs speak
  ];
  if (signs.includes(false)) return false;
  return signs.includes(null) ? null : true;
}

/**
 * The one of these signs that needs a single probe: the air falls by 2 K or more in the two hours
 * after sunset, without rising. null when the readings leave it open.
 */
export function fallsEvenly(air: readonly MaybeTemperature[], sunset: Instant): boolean | null {
  return evenFall(known(air, sunset), sunset)[0] ?? null;
}

type Known = { readonly t: number; readonly value: number };

const known = (readings: readonly MaybeTemperature[], sunset: number): Known[] =>
  readings.flatMap(({ t, value }) =>
    value === null || t < sunset || t > sunset + EVENING ? [] : [{ t, value }],
  );

// Has it fallen enough, and without rising? A rise seen is a rise; a fall has to be seen whole.
function evenFall(air: readonly Known[], sunset: number): (boolean | null)[] {
  const [first] = air;
  const last = air.at(-1);
  if (first === undefined || last === undefined) return [null];
  let lowest = first.value;
  let before = first.t;
  let rises = false;
  let gap = false;
  for (const { t, value } of air) {
    if (value - lowest > MOST_RISE) rises = true;
    if (t - before > LONGEST_GAP) gap = true;
    lowest = Math.min(lowest, value);
    before = t;
  }
  const whole =
    first.t - sunset <= NEAR_THE_END && sunset + EVENING - last.t <= NEAR_THE_END && !gap;
  if (rises) return [false];
  return [whole ? first.value - last.value >= LEAST_FALL : null];
}

const mean = (readings: readonly Known[]) =>
  readings.reduce((sum, { value }) => sum + value, 0) / readings.length;
