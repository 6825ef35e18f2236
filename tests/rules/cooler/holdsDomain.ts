import { expect } from 'vitest';

/** Function, what it calls the number, least and most allowed, unit, and a call with that number. */
export type Domain = readonly [
  name: string,
  what: string,
  from: number,
  to: number,
  unit: string,
  call: (value: number) => unknown,
];

// Next number to be refused: 1 % past a bound, or of the span where the bound is 0.
const belowOf = (from: number, to: number) =>
  from === Number.MIN_VALUE ? 0 : from - 0.01 * Math.abs(from === 0 ? to : from);
const aboveOf = (from: number, to: number) => to + 0.01 * Math.abs(to === 0 ? from : to);

/** Expects both bounds to be taken, and a number just past either to be refused in one sentence. */
export function holdsDomain([, what, from, to, unit, call]: Domain) {
  for (const bound of [from, to]) expect(() => call(bound)).not.toThrow();
  const range = `${what} from ${from} to ${to}${unit === '' ? '' : ` ${unit}`}`;
  for (const past of [belowOf(from, to), aboveOf(from, to)]) {
    expect(() => call(past)).toThrow(new RangeError(`Expected ${range}, got ${past}`));
  }
}
