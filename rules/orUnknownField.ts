type Unknowing<T> = T extends readonly unknown[] ? T : { [Key in keyof T]: T[Key] | null };
type AllUnknowing<Args extends readonly unknown[]> = {
  [Index in keyof Args]: Unknowing<Args[Index]> | null;
};

/**
 * Lets a formula whose numbers come as named fields take unknown for any of them: unknown in,
 * unknown out. Looks at the arguments and at their fields, no deeper.
 *
 * @param formula of known values; it never sees a null.
 * @returns the same formula, which answers null when any field or argument it is given is null.
 */
export function orUnknownField<Args extends readonly unknown[], Result>(
  formula: (...args: Args) => Result,
): {
  (...args: Args): Result;
  (...args: AllUnknowing<Args>): Result | null;
} {
  return ((...args: readonly unknown[]) =>
    args.some(hasUnknown) ? null : formula(...(args as unknown as Args))) as never;
}

const hasUnknown = (value: unknown): boolean =>
  value === null || (typeof value === 'object' && Object.values(value).includes(null));
