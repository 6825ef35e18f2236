/** Plain JSON values that say the same; the order of a map's fields says nothing. */
export function sameValue(a: unknown, b: unknown): boolean {
  if (a === b) return true;
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return false;
  if (Array.isArray(a) || Array.isArray(b))
    return (
      Array.isArray(a) &&
      Array.isArray(b) &&
      a.length === b.length &&
      a.every((one, i) => sameValue(one, b[i]))
    );
  const fields = new Set([...Object.keys(a), ...Object.keys(b)]);
  return [...fields].every((field) =>
    sameValue((a as Record<string, unknown>)[field], (b as Record<string, unknown>)[field]),
  );
}
