import { type Quantity, quantities } from '../../contract/index.ts';
import { shown } from '../../words/index.ts';
import { type Message, type Parsed, type RawReading, Refusal, type Refused } from '../message.ts';
import { inKeptUnit, numberIn } from '../units.ts';

// SenML in JSON, RFC 8428 (2018). Section numbers below are that document's.

const VERSION = 10; // section 4.4: the version this reads; a higher one is refused
const RELATIVE_BELOW = 2 ** 28; // section 4.5.3: smaller sums of bt and t are relative to now
const NAME = /^[A-Za-z0-9][A-Za-z0-9\-:./_]*$/; // section 4.5.1
const MOST_RECORDS = 2000; // ours: a day and more of one probe; keeps one message from filling memory
const BASE = ['bn', 'bt', 'bu', 'bv', 'bs', 'bver'] as const;
const LABELS = new Set<string>([...BASE, 'n', 'u', 'v', 'vs', 'vb', 'vd', 's', 't', 'ut']);

type SenmlRecord = Record<string, unknown>;
type Base = { bn: string; bt: number; bu: string | undefined; bv: number };

const text = (record: SenmlRecord, label: string): string | undefined => {
  const value = record[label];
  if (value === undefined || typeof value === 'string') return value;
  throw new Refusal('unknown-form', `Expected text in ${label}, got ${shown(value)}`);
};
const number = (record: SenmlRecord, label: string): number | undefined => {
  const value = record[label];
  if (value === undefined) return undefined;
  if (typeof value === 'number' && Number.isFinite(value)) return value;
  throw new Refusal('not-a-number', `Expected a number in ${label}, got ${shown(value)}`);
};

/** The quantity a resolved name speaks of: the name itself, or its part after the last : . / or _ */
export function quantityOf(name: string): Quantity {
  const found = quantities.find(
    (quantity) =>
      name === quantity ||
      (name.endsWith(quantity) && /[:./_]/.test(name.at(-quantity.length - 1) ?? '')),
  );
  if (found) return found;
  throw new Refusal(
    'unknown-quantity',
    `Expected a name that ends in one of ${quantities.join(', ')}, got ${shown(name)}`,
  );
}

function numericValue(record: SenmlRecord, quantity: Quantity, base: Base): number {
  const v = number(record, 'v');
  // Section 4.1: the base value is added to a numeric value.
  if (v !== undefined) return base.bv + v;
  if (typeof record.vb === 'boolean') return numberIn(record.vb, quantity, 'vb');
  throw new Refusal(
    'missing-field',
    `Expected a number in v or true/false in vb for ${quantity}, got ${shown(record.vs ?? record.vd ?? record.vb)}`,
  );
}

/** Base fields hold for their own record and all after it, until they appear again (section 4.1). */
function takeBase(fields: SenmlRecord, base: Base) {
  // Section 4.4: an unknown label is ignored, but not one that ends in "_".
  for (const label of Object.keys(fields))
    if (label.endsWith('_') && !LABELS.has(label))
      throw new Refusal('unknown-form', `Expected labels of RFC 8428, got ${shown(label)}`);
  base.bn = text(fields, 'bn') ?? base.bn;
  base.bt = number(fields, 'bt') ?? base.bt;
  base.bu = text(fields, 'bu') ?? base.bu;
  base.bv = number(fields, 'bv') ?? base.bv;
}

function resolve(
  record: SenmlRecord,
  base: Base,
  probe: string,
  receivedAt: number,
): RawReading | null {
  // Section 4.4: an unknown label is ignored, but not one that ends in "_".
  const values = ['v', 'vs', 'vb', 'vd'].filter((label) => record[label] !== undefined);
  if (values.length === 0 && record.n === undefined) return null; // base fields on their own
  if (values.length > 1)
    throw new Refusal('unknown-form', `Expected one value, got ${values.join(' and ')}`);
  const name = base.bn + (text(record, 'n') ?? '');
  if (!NAME.test(name))
    throw new Refusal(
      'bad-name',
      `Expected a SenML name (bn + n) of letters, digits, - : . / _, got ${shown(name)}`,
    );
  const quantity = quantityOf(name);
  const seconds = base.bt + (number(record, 't') ?? 0);
  const t = seconds < RELATIVE_BELOW ? receivedAt + seconds * 1000 : seconds * 1000;
  const value = numericValue(record, quantity, base);
  const unit = record.vb === undefined ? (text(record, 'u') ?? base.bu) : undefined;
  return { probe, t: Math.round(t), ...inKeptUnit(quantity, value, unit) };
}

/** A SenML pack for one probe: the good records of it, and what was wrong with the others. */
export function readSenml(pack: unknown, probe: string, { receivedAt }: Message): Parsed {
  if (!Array.isArray(pack))
    throw new Refusal('unknown-form', `Expected a SenML pack (a JSON array), got ${shown(pack)}`);
  if (pack.length > MOST_RECORDS)
    throw new Refusal(
      'too-long',
      `Expected at most ${MOST_RECORDS} records in a pack, got ${pack.length}`,
    );
  const base: Base = { bn: '', bt: 0, bu: undefined, bv: 0 };
  const readings: RawReading[] = [];
  const refused: Refused[] = [];
  /** A record whose base cannot be understood leaves those after it without one. */
  let lost: Refusal | null = null;
  for (const [index, record] of pack.entries()) {
    try {
      if (lost) throw lost;
      if (typeof record !== 'object' || record === null || Array.isArray(record))
        throw new Refusal('unknown-form', `Expected a SenML record, got ${shown(record)}`);
      const fields = record as SenmlRecord;
      const version = number(fields, 'bver');
      if (version !== undefined && version > VERSION) {
        const sentence = `Expected bver up to ${VERSION}, got ${version}`;
        return { readings: [], refused: [{ source: probe, reason: 'unknown-form', sentence }] };
      }
      try {
        takeBase(fields, base);
      } catch (error) {
        if (error instanceof Refusal) lost = error;
        throw error;
      }
      const reading = resolve(fields, base, probe, receivedAt);
      if (reading) readings.push(reading);
    } catch (error) {
      if (!(error instanceof Refusal)) throw error;
      refused.push({
        source: probe,
        reason: error.reason,
        sentence: `${error.message} (record ${index + 1})`,
      });
    }
  }
  return { readings, refused };
}
