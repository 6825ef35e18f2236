/** What heat units are counted between, °C; no upper threshold where it is null. */
export type HeatRule = { readonly lower: number; readonly upper: number | null };

/** The rule as the formulas take it. */
export const limitsOf = ({ lower, upper }: HeatRule) =>
  upper === null ? { lower } : { lower, upper };

export const ruleKey = ({ lower, upper }: HeatRule) => `${lower}/${upper}`;
