import { probeName, type Quantity } from '../../contract/index.ts';
import { shown } from '../../words/index.ts';
import { bounds } from '../bounds.ts';
import { type Foretold, type Message, type Parsed, Refusal, type Refused } from '../message.ts';
import { readSenml } from './senml.ts';

// A forecast that somebody pushes: a SenML pack (RFC 8428) whose times lie ahead. Whose it is, its
// base name says: `met:` or `met:temperature` is a forecast of `met`.

const HOUR = 3_600_000; // ms
const NAMELESS = 'forecast';
/** The hour that runs belongs to a forecast of steps of an hour. Ours. */
const BEHIND = 3 * HOUR;
const AHEAD = 16 * 24 * HOUR; // ours: no forecast knows a night further off

/** The source's name in the first base name; text after its last separator is the quantity's. */
function sourceOf(pack: unknown, quantity: Quantity | null): string {
  const first: unknown = Array.isArray(pack) ? pack[0] : null;
  const bn = typeof first === 'object' && first !== null && 'bn' in first ? first.bn : '';
  if (typeof bn !== 'string') return NAMELESS;
  const bare = quantity !== null && bn.endsWith(quantity) ? bn.slice(0, -quantity.length) : bn;
  const name = bare.replace(/[:./_-]+$/, '');
  return probeName.safeParse(name).success ? name : NAMELESS;
}

/** A record without any name is of the quantity that the topic names. */
function named(pack: unknown, quantity: Quantity | null): unknown {
  if (quantity === null || !Array.isArray(pack)) return pack;
  let base = '';
  return pack.map((record: unknown) => {
    if (typeof record !== 'object' || record === null) return record;
    if ('bn' in record && typeof record.bn === 'string') base = record.bn;
    if ('n' in record || base.endsWith(quantity) || !('v' in record)) return record;
    return { ...record, n: quantity };
  });
}

/** @param quantity what the topic names; null for a pack that names it itself. */
export function readForetold(body: unknown, quantity: Quantity | null, message: Message): Parsed {
  const { topic, receivedAt } = message;
  const { readings, refused } = readSenml(named(body, quantity), topic, message);
  const source = sourceOf(body, quantity);
  const ahead: Foretold[] = [];
  const doubted: Refused[] = [...refused];
  const doubt = (reason: Refused['reason'], sentence: string) =>
    doubted.push({ source: topic, reason, sentence });
  for (const reading of readings) {
    const { value, t } = reading;
    const { from, to } = bounds[reading.quantity];
    if (quantity !== null && reading.quantity !== quantity)
      doubt('unknown-quantity', `Expected ${quantity} in ${topic}, got ${reading.quantity}`);
    else if (t === null || t < receivedAt - BEHIND || t > receivedAt + AHEAD)
      doubt(
        'bad-time',
        `Expected a time from now to 16 days ahead in a forecast, got ${t === null ? 'none' : shown(new Date(t).toISOString())}`,
      );
    else if (value < from || value > to)
      doubt('out-of-range', `Expected ${reading.quantity} from ${from} to ${to}, got ${value}`);
    else ahead.push({ source, quantity: reading.quantity, t, value });
  }
  if (ahead.length === 0 && doubted.length === 0)
    throw new Refusal('missing-field', 'Expected values ahead in a forecast, got none');
  return { readings: [], refused: doubted, ahead };
}
