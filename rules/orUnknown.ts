type WithUnknown<Args extends readonly unknown[]> = { [Index in keyof Args]: Args[Index] | null };

/**
 * Lets a formula take unknown for any of its numbers: unknown in, unknown out.
 *
 * @param formula of known values; it never sees a null.
 * @returns the same formula, which answers null when any value it is given is null.
 */
export function orUnknown<Args extends readonly unknown[], Result>(
  formula: (...args: Args) => Result,
): {
  (...args: Args): Result;
  (...args: WithUnknown<Args>): Result | null;
} {
  return ((...args: WithUnknown<Args>) =>
    args.includes(null) ? null : formula(...(args as unknown as Args))) as never;
}
