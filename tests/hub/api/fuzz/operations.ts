import { oddText, oddValue } from './odd.ts';
import type { Random } from './random.ts';

export type Schema = {
  type?: string | string[];
  enum?: unknown[];
  const?: unknown;
  format?: string;
  properties?: Record<string, Schema>;
  required?: string[];
  items?: Schema;
  anyOf?: Schema[];
  minimum?: number;
  maximum?: number;
};
export type Operation = {
  readonly method: string;
  readonly path: string;
  readonly params: readonly { name: string; in: string; schema: Schema }[];
  readonly body: Schema | null;
};

type Described = {
  parameters?: { name: string; in: string; schema?: Schema }[];
  requestBody?: { content: Record<string, { schema: Schema }> };
};

/** Every operation of an OpenAPI document. */
export const operationsOf = (document: {
  paths: Record<string, Record<string, Described>>;
}): Operation[] =>
  Object.entries(document.paths).flatMap(([path, item]) =>
    Object.entries(item).map(([method, described]) => ({
      method: method.toUpperCase(),
      path,
      params: (described.parameters ?? []).map(({ name, in: place, schema = {} }) => ({
        ...{ name, in: place, schema },
      })),
      body: described.requestBody?.content['application/json']?.schema ?? null,
    })),
  );

const KNOWN: Readonly<Record<string, readonly string[]>> = {
  id: ['long-house', 'outside', 'cool-room', 'p1', 'mast'],
  place: ['long-house', 'outside', 'cool-room'],
  name: ['dewPoint', 'Nobody', 'wetSpells'],
  from: ['2026-05-01T00:00:00Z', '2026-05-01', '2025-01-01T00:00:00Z'],
  to: ['2026-05-11T00:00:00Z', '2026-05-11'],
};

/** A value that a schema lets through, most of the time. */
export function rightValue(schema: Schema, name: string, random: Random): unknown {
  if (schema.enum) return random.pick(schema.enum);
  if (schema.const !== undefined) return schema.const;
  if (schema.anyOf) return rightValue(random.pick(schema.anyOf), name, random);
  const type = Array.isArray(schema.type) ? random.pick(schema.type) : schema.type;
  if (type === 'object')
    return Object.fromEntries(
      Object.entries(schema.properties ?? {})
        .filter(([key]) => schema.required?.includes(key) || random.chance(0.5))
        .map(([key, one]) => [key, rightValue(one, key, random)]),
    );
  if (type === 'array') return [rightValue(schema.items ?? {}, name, random)];
  if (type === 'integer' || type === 'number') {
    const from = Math.max(schema.minimum ?? 0, -1e6);
    return from + random.below(Math.min(schema.maximum ?? 100, 1e6) - from + 1);
  }
  if (type === 'boolean') return random.chance(0.5);
  if (type === 'null') return null;
  const known = KNOWN[name];
  if (known) return random.pick(known);
  if (schema.format === 'date-time') return '2026-05-10T10:00:00Z';
  if (schema.format === 'date') return '2026-05-10';
  return random.chance(0.5) ? 'abcdefghijkl' : oddText(random);
}

/** The same value with one thing wrong somewhere in it. */
export function spoilt(value: unknown, random: Random): unknown {
  if (Array.isArray(value) && random.chance(0.5)) return value.map((one) => spoilt(one, random));
  if (typeof value === 'object' && value !== null && random.chance(0.9)) {
    const copy: Record<string, unknown> = { ...value };
    const keys = Object.keys(copy);
    const key = keys.length > 0 ? random.pick(keys) : 'extra';
    const how = random.below(4);
    if (how === 0) delete copy[key];
    else if (how === 1) copy[oddText(random) || 'extra'] = oddValue(random);
    else if (how === 2) copy[key] = spoilt(copy[key], random);
    else copy[key] = oddValue(random);
    return copy;
  }
  return oddValue(random);
}
