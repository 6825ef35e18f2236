import { type Covered, chanceShort, type DeliveryShare } from '../../rules/batches/index.ts';
import { traySpread } from './cropFacts.ts';
import type { GrowingFacts } from './growingFacts.ts';
import type { PlanPart } from './planTypes.ts';

const ANY_DF = Number.POSITIVE_INFINITY; // where nothing but weighed lots comes in: no spread

/**
 * Chance that one crop of a delivery is short; null where the spread of what comes into it is not
 * known. What of a batch no delivery takes is counted with the last that uses it.
 */
export function partShort(
  part: Omit<PlanPart, 'short'>,
  delivery: number,
  growing: readonly GrowingFacts[],
  uses: ReadonlyMap<string, readonly Covered[]>,
): number | null {
  const { crop, kg, covered, sowings } = part;
  const spread = traySpread(crop);
  const shares: DeliveryShare[] = [];
  for (const { supply, kilograms } of covered) {
    const facts = growing.find(({ batch }) => batch.id === supply);
    if (facts === undefined) {
      shares.push({ kilograms, sd: 0, ready: 1 }); // a lot: weighed, and it keeps until then
      continue;
    }
    const ready = facts.chanceBy(delivery);
    const over = crop.keepDays < delivery ? facts.chanceBy(delivery - crop.keepDays) : 0;
    if (ready === null || spread === null) return null;
    const all = uses.get(supply) ?? [];
    const last = Math.max(...all.map((one) => one.delivery)) === delivery;
    const spare = (facts.kg ?? 0) - all.reduce((sum, one) => sum + one.kilograms, 0);
    const own = kilograms + (last ? Math.max(0, spare) : 0);
    const share = facts.kg === null || facts.kg === 0 ? 1 : own / facts.kg;
    shares.push({
      kilograms: own,
      sd: spread.sd * facts.batch.traysLeft * share,
      // One that somebody saw ready keeps as long as it does: that is in its last day already.
      ready: facts.seenReady !== null ? ready : Math.max(0, ready - (over ?? 0)),
    });
  }
  for (const { ready, tooEarly, trays, expected } of sowings) {
    if (ready === null || spread === null) return null;
    shares.push({
      kilograms: expected,
      sd: spread.sd * trays,
      ready: Math.max(0, ready - (tooEarly ?? 0)),
    });
  }
  if (shares.length === 0) return kg > 0 ? 1 : 0;
  return chanceShort(kg, shares, spread?.df ?? ANY_DF);
}

/** Chance that at least one part is short, each apart; null where one of them is not known. */
export function together(chances: readonly (number | null)[]): number | null {
  let none = 1;
  for (const chance of chances) {
    if (chance === null) return null;
    none *= 1 - chance;
  }
  return 1 - none;
}
