/** The one way a rule refuses a number: what it was, the range it may have, what it got. */
export function expectRange(what: string, got: number, from: number, to: number, unit: string) {
  // NaN fails both comparisons, so it is refused too; null would pass as 0, so its kind is asked.
  if (typeof got === 'number' && got >= from && got <= to) return;
  const range = `from ${from} to ${to}${unit === '' ? '' : ` ${unit}`}`;
  throw new RangeError(`Expected ${what} ${range}, got ${got}`);
}
