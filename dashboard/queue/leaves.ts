// What was said, taken apart: each plain value with where it stands, for words and for mending.

export type Leaf = {
  /** Names and numbers from the outside in: `['take', 'kg']`. */
  readonly where: readonly (string | number)[];
  /** The last name in it: what the value is. */
  readonly field: string;
  readonly value: string | number | boolean;
};

export function leavesOf(body: unknown, where: readonly (string | number)[] = []): Leaf[] {
  if (typeof body === 'string' || typeof body === 'number' || typeof body === 'boolean') {
    const field = where.findLast((name) => typeof name === 'string');
    return [{ where, field: String(field ?? ''), value: body }];
  }
  if (typeof body !== 'object' || body === null) return [];
  const entries: [string | number, unknown][] = Array.isArray(body)
    ? body.map((value, i) => [i, value])
    : Object.entries(body);
  return entries.flatMap(([name, value]) => leavesOf(value, [...where, name]));
}

/** The same with another value in one place; nothing that was there is changed. */
export function withLeaf(
  body: unknown,
  [name, ...deeper]: readonly (string | number)[],
  value: unknown,
): unknown {
  if (name === undefined) return value;
  if (Array.isArray(body))
    return body.map((one, i) => (i === name ? withLeaf(one, deeper, value) : one));
  const fields = (typeof body === 'object' && body !== null ? body : {}) as Record<string, unknown>;
  return { ...fields, [name]: withLeaf(fields[name], deeper, value) };
}
