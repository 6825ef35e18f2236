import type { Quantity } from '../contract/index.ts';
import { shown } from '../words/index.ts';
import { type RawReading, Refusal } from './message.ts';

type Convert = (value: number) => number;
const same: Convert = (value) => value;
const times =
  (factor: number): Convert =>
  (value) =>
    value * factor;

// Units by SenML: RFC 8428 section 12.1 and the secondary units of RFC 8798. `Fah` is in neither:
// a convenience of ours. The first unit of each row is the one readings are kept in.
const temperatures: Readonly<Record<string, Convert>> = {
  Cel: same,
  K: (value) => value - 273.15,
  Fah: (value) => (value - 32) / 1.8,
};
const shares: Readonly<Record<string, Convert>> = { '%': same, '/': times(100) };
const units: Readonly<Record<Quantity, Readonly<Record<string, Convert>>>> = {
  temperature: temperatures,
  'soil-temperature': temperatures,
  humidity: { '%RH': same, '%': same, '/': times(100) },
  'soil-moisture': shares,
  'leaf-wetness': shares,
  light: { lx: same },
  rain: { mm: same, m: times(1000) },
  wind: { 'm/s': same, 'km/h': times(1 / 3.6) },
  power: { W: same, kW: times(1000), mW: times(0.001) },
  energy: { kWh: same, Wh: times(0.001), J: times(1 / 3_600_000), MJ: times(1 / 3.6) },
  door: { '': same, '/': same },
  battery: { '%': same, '%EL': same, '/': times(100), V: same, mV: times(0.001) },
};

/** What true is as a number, for the quantities that can be true or false. */
const whenTrue: Partial<Record<Quantity, number>> = { door: 1, 'leaf-wetness': 100 };

/**
 * A number, or true or false where the quantity has it (a door, a wet leaf).
 *
 * @throws Refusal naming the field when it is neither.
 */
export function numberIn(value: unknown, quantity: Quantity, field: string): number {
  if (typeof value === 'number') return value;
  const yes = whenTrue[quantity];
  if (typeof value === 'boolean' && yes !== undefined) return value ? yes : 0;
  const wanted = yes === undefined ? 'a number' : 'a number, true or false';
  throw new Refusal(
    value === undefined ? 'missing-field' : 'not-a-number',
    `Expected ${wanted} in ${field} for ${quantity}, got ${shown(value)}`,
  );
}

/**
 * A value in the unit it is kept in. Without a unit it is taken to be in that unit already; a
 * battery without a unit is in %, because taking a dying 3 % for 3 V would look like all is well.
 *
 * @throws Refusal for a unit that this quantity does not have, or a value that is no number.
 */
export function inKeptUnit(
  quantity: Quantity,
  value: number,
  unit: string | undefined,
): Pick<RawReading, 'quantity' | 'value'> {
  if (!Number.isFinite(value))
    throw new Refusal('not-a-number', `Expected a number in ${quantity}, got ${shown(value)}`);
  if (unit === undefined || unit === '') return { quantity, value };
  const row = units[quantity];
  const convert = Object.hasOwn(row, unit) ? row[unit] : undefined;
  if (!convert)
    throw new Refusal(
      'unknown-unit',
      `Expected ${Object.keys(row).filter(Boolean).join(', ') || 'no unit'} as the unit of ${quantity}, got ${shown(unit)}`,
    );
  const volts = quantity === 'battery' && (unit === 'V' || unit === 'mV');
  const kept = convert(value);
  if (!Number.isFinite(kept))
    throw new Refusal('not-a-number', `Expected a number in ${quantity}, got ${value} ${unit}`);
  return { quantity: volts ? 'battery-voltage' : quantity, value: kept };
}
