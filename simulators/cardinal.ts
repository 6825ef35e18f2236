/**
 * How fast something alive goes at a temperature, 0..1: nothing at `min` and below, all at `best`,
 * nothing at `max` and above (°C).
 *
 * Source: the cardinal temperature model with inflection, Rosso, Lobry & Flandrois 1993, J. Theor.
 * Biol. 162, 447-463 (from memory). It holds where `best` is nearer to `max` than to `min`.
 */
export function cardinal(t: number, min: number, best: number, max: number): number {
  if (t <= min || t >= max) return 0;
  const above = (t - max) * (t - min) ** 2;
  const below = (best - min) * ((best - min) * (t - best) - (best - max) * (best + min - 2 * t));
  return Math.min(1, Math.max(0, above / below));
}
