type Unknowable<Input> = { [Name in keyof Input]: Input[Name] | null };

/**
 * For a formula that takes its numbers by name: unknown in, unknown out.
 *
 * @param formula of an object of known values; it never sees a null in a named value.
 * @returns the same formula, which answers null when any value named in its object is null.
 */
export function ofKnown<Input extends object, Rest extends readonly unknown[], Result>(
  formula: (input: Input, ...rest: Rest) => Result,
): {
  (input: Input, ...rest: Rest): Result;
  (input: Unknowable<Input>, ...rest: Rest): Result | null;
} {
  return ((input: Input, ...rest: Rest) =>
    Object.values(input).includes(null) ? null : formula(input, ...rest)) as never;
}
