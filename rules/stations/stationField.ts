// How a station file is refused: one sentence that names the line and the field.

/** A whole number from fixed columns; blank is null. */
export function wholeNumber(text: string, field: string, line: number): number | null {
  const trimmed = text.trim();
  if (trimmed === '') return null;
  if (!/^-?\d+$/.test(trimmed)) refuse('a whole number', field, line, text);
  return Number(trimmed);
}

/** The same, but it has to be there and in range. */
export function wholeFrom(
  text: string,
  from: number,
  to: number,
  field: string,
  line: number,
): number {
  const value = wholeNumber(text, field, line);
  if (value === null || value < from || value > to) {
    refuse(`${field} from ${from} to ${to}`, field, line, text);
  }
  return value;
}

/** @throws RangeError always. */
export function refuse(expected: string, field: string, line: number, got: string): never {
  throw new RangeError(`Expected ${expected} in ${field} of line ${line}, got "${got}"`);
}
