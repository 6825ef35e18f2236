import type { NightForecast, Strips } from '../../hub/contract/index.ts';

/** The fan's edges (10 % and 90 %) where its middle is lowest: the range of tonight's low, as the hub
 * drew it for that spot; null when it drew none. */
export function fanAtLow(
  strips: Strips | null,
  { place, spot }: Pick<NightForecast, 'place' | 'spot'>,
): readonly [number, number] | null {
  const strip = strips?.strips.find((found) => found.place === place && found.spot === spot);
  const [first, ...rest] = strip?.fan ?? [];
  if (!first) return null;
  const low = rest.reduce((best, point) => (point.middle < best.middle ? point : best), first);
  return [low.low, low.high];
}
