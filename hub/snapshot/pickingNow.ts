import type { PlaceNow } from '../../rules/decide/index.ts';
import { celsius, minutes } from '../../rules/units.ts';
import { type Farm, ripeDamageAt } from '../farm/index.ts';

/**
 * What picking a place now would save, on a day of its season; null outside it, or where nobody
 * said that anything is picked there. A season may run past the end of the year.
 */
export function pickingNow(
  farm: Farm,
  place: Farm['places'][number],
  today: string,
): PlaceNow['picking'] {
  const { picking } = place;
  if (picking === undefined) return null;
  const day = today.slice(5);
  const { from, to } = picking;
  const inSeason = from <= to ? day >= from && day <= to : day >= from || day <= to;
  const damage = ripeDamageAt(farm, place);
  if (!inSeason || damage === null) return null;
  return {
    minutes: minutes(picking.minutes),
    value: picking.value,
    damage: celsius(damage.at),
    damageFrom: damage.from ?? 'told in the farm file',
  };
}
