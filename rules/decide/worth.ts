import type { Evidence, Saving } from '../answer.ts';
import { by, put } from './how.ts';
import { fact, NOT_KNOWN } from './say.ts';
import type { Crop, PlaceNow } from './snapshot.ts';
import { OURS } from './sources.ts';

// What a task is expected to spare: value at risk times the drop in risk. The drop is a guess of
// ours and says so; the value is what the grower told, and without it there is no figure.

/**
 * By how much doing the task lowers what is lost, shown with the reasons: for opening up the harmful
 * hours it ends times the share of the crop that one costs (harmPerHour); for shade a guess. What
 * is spared is the value at risk times this.
 *
 * Source: ours, from no source.
 */
export const dropInRisk = (drop: number): Evidence =>
  fact('drop-in-risk', 100 * drop, '%', null, OURS, by('dropInRisk', put('drop', drop)));

/** Trays standing there at their usual yield and price. */
export function sparedTrays(
  { trays, standing }: Pick<PlaceNow, 'trays' | 'standing'>,
  crop: Crop | null,
  drop: number,
): Saving {
  if (standing) {
    const { kilograms, money } = standing;
    if (kilograms === null) return NOT_KNOWN;
    return { amount: kilograms * drop, money: money === null ? null : money * drop };
  }
  if (trays === null || crop === null || crop.perTray === null) return NOT_KNOWN;
  const amount = trays * crop.perTray * drop;
  return { amount, money: crop.price === null ? null : amount * crop.price };
}

export const sparedMoney = (value: number | null, drop: number): Saving => ({
  amount: null,
  money: value === null ? null : value * drop,
});

/**
 * Why a task is not asked: what it spares at best, as far as that is told, is less than its minutes
 * cost at the wage, as in a house where nothing stands. null where it is worth them, or nobody knows.
 *
 * Source: expected value; the drop in what is spared is a guess of ours.
 */
export function notWorthMinutes(saves: Saving, minutes: number, wage: number): Evidence | null {
  const cost = (minutes / 60) * wage;
  if (saves.money === null || saves.money >= cost) return null;
  const how = by('notWorthMinutes', put('work', minutes, 'min'), put('wage', wage, 'money'));
  return fact('work-spares', saves.money, 'money', cost, OURS, how);
}
