import type { Bounds, PieceSpell } from '../wetness/index.ts';

/** Wet spells at both bounds of wetness. */
export type Spells = {
  readonly least: readonly PieceSpell[];
  readonly most: readonly PieceSpell[];
};

/**
 * Least and most among spells at both bounds of wetness: a value of each spell at both ends of what
 * is not known, worst spell first. Never below 0.
 */
export function worstOfSpells(
  { least, most }: Spells,
  boundsOf: (spell: PieceSpell) => Bounds,
): Bounds {
  const worst = (list: readonly PieceSpell[]): Bounds => {
    let bounds: Bounds = [0, 0];
    for (const spell of list) {
      const [low, high] = boundsOf(spell);
      bounds = [Math.max(bounds[0], low), Math.max(bounds[1], high)];
    }
    return bounds;
  };
  const atLeast = worst(least);
  return [atLeast[0], most === least ? atLeast[1] : worst(most)[1]];
}
