/** Reasons to open, close or leave a house, the strongest first. Ours, from no source. */
export const reasonOrder = Object.freeze(['danger', 'cold', 'heat', 'wetness', 'comfort'] as const);

export type Reason = (typeof reasonOrder)[number];

/**
 * The reason that wins, and those it overrides, so that both are shown: "keep shut: wind; the house
 * will stay wet". Of two as strong, the first given.
 */
export function strongestReason<Pull extends { readonly reason: Reason }>(
  pulls: readonly Pull[],
): { readonly winner: Pull | null; readonly overridden: readonly Pull[] } {
  const rank = ({ reason }: Pull) => reasonOrder.indexOf(reason);
  const [winner = null, ...overridden] = pulls.toSorted((a, b) => rank(a) - rank(b));
  return { winner, overridden };
}
