import type { Quantity } from '../../contract/index.ts';
import { shown } from '../../words/index.ts';
import { type Parsed, Refusal } from '../message.ts';
import { readTime } from '../readTime.ts';
import { inKeptUnit, numberIn } from '../units.ts';

/**
 * One value: a bare number, true or false, or `{"v": …, "t": …, "u": …}`.
 *
 * @throws Refusal naming the field and what it held.
 */
export function readSingle(body: unknown, probe: string, quantity: Quantity): Parsed {
  const object = typeof body === 'object' && body !== null && !Array.isArray(body);
  const fields = object ? (body as Record<string, unknown>) : { v: body };
  const v = numberIn(fields.v, quantity, object ? 'v' : 'the message');
  if (fields.u !== undefined && typeof fields.u !== 'string')
    throw new Refusal('unknown-unit', `Expected text in u, got ${shown(fields.u)}`);
  const t = fields.t === undefined || fields.t === null ? null : readTime(fields.t, 't');
  return { readings: [{ probe, t, ...inKeptUnit(quantity, v, fields.u) }], refused: [] };
}
