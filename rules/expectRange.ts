/** The one way a rule refuses a number: what it was, the range it may have, what it got. */
export function expectRange(what: string, got: number, from: number, to: number, unit: string) {
  if (got >= from && got <= to) return; // NaN fails both comparisons, so it is refused too
  const range = `from ${from} to ${to}${unit === '' ? '' : ` ${unit}`}`;
  throw new RangeError(`Expected ${what} ${range}, got ${got}`);
}
