const MORNINGS = { wet: 3, of: 5 } as const; // common practice, no source

/**
 * Whether a closed canopy was still wet on 3 of the last 5 mornings, when it is thinned or cut back
 * on a drying morning. null when the mornings not known could tip it.
 * @param mornings newest last; true wet, null not known
 */
export function wetMornings(mornings: readonly (boolean | null)[]): boolean | null {
  const last = mornings.slice(-MORNINGS.of);
  const surely = last.filter((wet) => wet === true).length;
  const perhaps = surely + last.filter((wet) => wet === null).length + MORNINGS.of - last.length;
  if (surely >= MORNINGS.wet) return true;
  return perhaps >= MORNINGS.wet ? null : false;
}
