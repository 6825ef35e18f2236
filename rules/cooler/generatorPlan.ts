import { expectRange } from '../expectRange.ts';
import { type Hours, hours } from '../units.ts';
import { carbonDioxide, type Fuel } from './fuelUse.ts';
import { warmingTime } from './warmingTime.ts';

export type GeneratorPlan = {
  /** Hours until it has to run, by the short end of the room's time constant; null for not needed. */
  readonly runIn: Hours | null;
  /** Hours it then has to run to bring the room back to the bottom of its cycle; null for not known. */
  readonly runFor: Hours | null;
  /** Litres that run burns, kg of CO2 from burning them, and what they cost; null where not told. */
  readonly litres: number | null;
  readonly carbonDioxide: number | null;
  readonly money: number | null;
  /** Hours the room then holds by itself, from the bottom of its cycle up to the limit; null for ever. */
  readonly thenHolds: Hours | null;
};

/** Energy on the difference outside to inside, as energyLine fits it: what of it hangs on the weather. */
type Need = { readonly slope: number; readonly intercept: number };

const MOST_SHARE = 0.95; // ours: a unit that runs all day still brings a room down in the end
const LEAST_GAP = 3; // K, common practice as for energyIndex: below it nothing is in proportion
const MOST_TIMES = 2; // the usual share, while no line is known. Ours

/**
 * The unit's share of running at these temperatures. Doors, fans, defrosts and breathing produce ask
 * for their part in any weather, so the share grows as the energy does; where no line of it is known
 * yet, in proportion to the difference, twice the usual at the most.
 */
function shareFor(usual: number, usualGap: number | null, gap: number, need: Need | null) {
  if (usualGap === null) return Math.min(MOST_SHARE, usual);
  if (need !== null && need.slope >= 0 && need.intercept >= 0) {
    const before = need.intercept + need.slope * Math.max(0, usualGap);
    if (before > 0)
      return Math.min(MOST_SHARE, (usual * (need.intercept + need.slope * gap)) / before);
  }
  if (usualGap < LEAST_GAP) return Math.min(MOST_SHARE, usual);
  return Math.min(MOST_SHARE, usual * Math.min(MOST_TIMES, gap / usualGap));
}

const PULL_MORE = 0.25; // h more than the balance says, for starting up and a last defrost. Ours

/**
 * When the set that feeds a cool room has to run next if it stands still now, for how long, and what
 * that burns. The heat that comes in while it stands has to be carried out again on top of what comes
 * in while it runs: with a running share d, off for h hours asks for h d / (1 - d) hours of running.
 *
 * Source: Newton's law of cooling for the time; the balance of heat for the run; litres and price are
 * the farm's own figures, CO2 as carbonDioxide.
 * @param room °C; the short time constant, h; `share` of the time that the unit runs in its cycle,
 *   and the difference outside to inside, K, at which that was learned (null: not known); the
 *   line of its energy, where one is known
 * @throws RangeError for temperatures outside -60..80 °C or a share outside 0..1
 */
export function generatorPlan(
  room: {
    readonly inside: number | null;
    readonly outside: number | null;
    readonly limit: number;
    readonly bottom: number;
    readonly tauHours: number;
    readonly share: number | null;
    readonly shareGap: number | null;
    readonly need?: Need | null;
  },
  burns: {
    readonly litresPerHour: number;
    readonly fuel: Fuel;
    readonly price: number | null;
  } | null,
): GeneratorPlan {
  const { inside, outside, limit, bottom, tauHours, share, shareGap, need = null } = room;
  const runIn = warmingTime({
    inside: inside as number,
    outside: outside as number,
    target: limit,
    tauHours,
  });
  const nothing = { runFor: null, litres: null, carbonDioxide: null, money: null, thenHolds: null };
  if (inside === null || outside === null) return { runIn: null, ...nothing };
  const thenHolds = warmingTime({ inside: bottom, outside, target: limit, tauHours });
  if (runIn === null || share === null) return { runIn, ...nothing, thenHolds };
  expectRange('running share', share, 0, 1, '');
  const gap = Math.max(1, outside - (limit + bottom) / 2);
  const d = Math.max(0.02, shareFor(share, shareGap, gap, need));
  const asWarmAs = warmingTime({
    inside: bottom,
    outside,
    target: Math.max(limit, inside),
    tauHours,
  });
  const runFor = asWarmAs === null ? null : hours((asWarmAs * d) / (1 - d) + PULL_MORE);
  const litres = runFor === null || burns === null ? null : runFor * burns.litresPerHour;
  return {
    runIn,
    runFor,
    litres,
    carbonDioxide: litres === null || burns === null ? null : carbonDioxide(litres, burns.fuel),
    money: litres === null || burns?.price == null ? null : litres * burns.price,
    thenHolds,
  };
}
