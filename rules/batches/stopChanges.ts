import { expectRange } from '../expectRange.ts';
import { bestStop, type FruitPatch } from './bestStop.ts';

const STEPS = 60; // looked at on the way; ours
const HALVINGS = 20; // a price to a hundred-thousandth of what is looked through; ours
const DEAREST = 3; // times the price told; ours
const SOONEST = 42; // days; ours

/** What would have to be otherwise for another day to be the best to stop, and which. */
export type StopChange = {
  readonly what: 'price-below' | 'price-above' | 'frost-sooner' | 'wetter';
  /** Money per kg; days; chance of a wet day. */
  readonly value: number;
  /** The best day then; 0 is today. */
  readonly best: number;
};

/**
 * How far the best day to stop depends on what is not sure: the price at which it would change,
 * below and above; by how many days frost would have to come sooner; how often days would have to
 * be wet. What changes nothing within reach is left out.
 *
 * Source: ours; bestStop worked out again with each figure changed alone.
 * @param pickingPerKg what picking a kilogram costs; `margin` of the patch is the price less it
 * @throws RangeError as bestStop
 */
export function stopChanges(patch: FruitPatch, pickingPerKg: number): readonly StopChange[] {
  expectRange('cost of picking', pickingPerKg, 0, 1e6, '');
  const price = patch.margin + pickingPerKg;
  const best = (changed: Partial<FruitPatch>) => bestStop({ ...patch, ...changed }).day ?? 0;
  const now = best({});
  const atPrice = (each: number) => best({ margin: each - pickingPerKg });
  const atWet = (wetChance: number) => best({ wetChance });
  const found: StopChange[] = [];
  const add = (what: StopChange['what'], value: number | null, day: (value: number) => number) => {
    if (value !== null) found.push({ what, value, best: day(value) });
  };
  add('price-below', turn(price, 0, atPrice, now), atPrice);
  add('price-above', turn(price, DEAREST * price, atPrice, now), atPrice);
  const sooner = (days: number) =>
    best({
      killed: earlier(patch.killed, days),
      cohorts: patch.cohorts.map((each) =>
        each.killed === undefined ? each : { ...each, killed: earlier(each.killed, days) },
      ),
    });
  for (let days = 1; days <= SOONEST; days += 1) {
    if (sooner(days) === now) continue;
    add('frost-sooner', days, sooner);
    break;
  }
  add('wetter', turn(patch.wetChance, 1, atWet, now), atWet);
  return found;
}

/** The first value on the way from `from` to `to` at which the answer is no longer `now`. */
function turn(
  from: number,
  to: number,
  answer: (value: number) => number,
  now: number,
): number | null {
  if (from === to) return null;
  let same = from;
  for (let step = 1; step <= STEPS; step += 1) {
    let other = from + ((to - from) * step) / STEPS;
    if (answer(other) === now) {
      same = other;
      continue;
    }
    for (let halving = 0; halving < HALVINGS; halving += 1) {
      const middle = (same + other) / 2;
      if (answer(middle) === now) same = middle;
      else other = middle;
    }
    return other;
  }
  return null;
}

// What lay beyond the last night goes on as that night.
const earlier = (killed: readonly number[], days: number): number[] =>
  killed.map((_, index) => killed[Math.min(killed.length - 1, index + days)] ?? 0);
