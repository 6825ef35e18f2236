import type { PlaceDifference } from '../days/index.ts';

const WET_WEIGHT = 0.5; // as in placeScore

/** What the other place spares most of: heat, cold or wet leaves. */
export function troubleOf({ hot, cold, wet }: PlaceDifference): 'heat' | 'cold' | 'wet' {
  const fewer = (difference: PlaceDifference['hot']) => -(difference?.mean ?? 0);
  const weighed = { heat: fewer(hot), cold: fewer(cold), wet: WET_WEIGHT * fewer(wet) };
  if (weighed.heat >= weighed.cold && weighed.heat >= weighed.wet) return 'heat';
  return weighed.wet >= weighed.cold ? 'wet' : 'cold';
}
