import type { Quantity } from '../../contract/index.ts';
import { shown } from '../../words/index.ts';
import { type Parsed, Refusal } from '../message.ts';
import { readTime } from '../readTime.ts';
import { inKeptUnit } from '../units.ts';

/**
 * One value: a bare number, true or false, or `{"v": …, "t": …, "u": …}`.
 *
 * @throws Refusal naming the field and what it held.
 */
export function readSingle(body: unknown, probe: string, quantity: Quantity): Parsed {
  const object = typeof body === 'object' && body !== null && !Array.isArray(body);
  const fields = object ? (body as Record<string, unknown>) : { v: body };
  const v = typeof fields.v === 'boolean' ? Number(fields.v) : fields.v;
  if (v === undefined)
    throw new Refusal('missing-field', `Expected a number in v, got ${shown(body)}`);
  if (typeof v !== 'number')
    throw new Refusal(
      'not-a-number',
      `Expected a number in ${object ? 'v' : quantity}, got ${shown(v)}`,
    );
  if (fields.u !== undefined && typeof fields.u !== 'string')
    throw new Refusal('unknown-unit', `Expected text in u, got ${shown(fields.u)}`);
  const t = fields.t === undefined || fields.t === null ? null : readTime(fields.t, 't');
  return { readings: [{ probe, t, ...inKeptUnit(quantity, v, fields.u) }], refused: [] };
}
