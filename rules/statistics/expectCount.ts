import { expectRange } from '../expectRange.ts';

/** Refuses a count that is not a whole number from `from` to `to`. */
export function expectCount(
  what: string,
  got: number,
  from = 0,
  to: number = Number.MAX_SAFE_INTEGER,
) {
  expectRange(what, got, from, to, '');
  if (!Number.isInteger(got)) {
    throw new RangeError(`Expected whole ${what} from ${from} to ${to}, got ${got}`);
  }
}
