/**
 * Refuses a list with anything in it that is no finite number. null would otherwise count as 0 in
 * every comparison and sum: what is not known has to be left out by the caller, who knows why.
 */
export function expectNumbers(what: string, values: readonly number[]) {
  for (const value of values) {
    if (!Number.isFinite(value)) {
      throw new RangeError(
        `Expected ${what} from ${-Number.MAX_VALUE} to ${Number.MAX_VALUE}, got ${value}`,
      );
    }
  }
}
