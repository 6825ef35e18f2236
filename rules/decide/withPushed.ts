import { pooledLow, sourceRecord, sourceWeight } from '../frost/index.ts';
import { celsius, HOUR } from '../units.ts';
import { within } from './column.ts';
import type { Beforehand, Low } from './lowBeforehand.ts';
import { AFTER_RISE, type Night } from './night.ts';
import type { Column, NightRecord, PushedForecast, SourceSaid, Stage } from './snapshot.ts';

// What others foretell, beside what was learned here.

const LONGEST_GAP = 3 * HOUR; // ours: forecasts of three-hourly steps tell a night, coarser ones hide it

/**
 * The lowest of a forecast's temperatures from sunset to an hour after sunrise; null when it does
 * not reach that far, or steps over more than three hours.
 */
export function lowForetold(column: Column, set: number, rise: number) {
  const to = rise + AFTER_RISE;
  const window = within(column, set, to);
  let low = Number.POSITIVE_INFINITY;
  let last = set;
  for (let i = window.from; i < window.to; i++) {
    const t = column.t[i] ?? set;
    if (t - last > LONGEST_GAP) return null;
    last = t;
    low = Math.min(low, column.value[i] ?? low);
  }
  return to - last > LONGEST_GAP || low === Number.POSITIVE_INFINITY ? null : celsius(low);
}

/**
 * The forecast learned here, with those pushed to the hub taken in as far as each has earned it at
 * this spot and at this time of day: sourceRecord and sourceWeight. What each said and was worth
 * comes along, also where it has no say.
 *
 * Source: inverse-variance weights, textbook; shrinkage and the ten nights of silence are ours.
 */
export function withPushed(
  own: Beforehand,
  nights: readonly NightRecord[],
  pushed: readonly PushedForecast[],
  stage: Stage,
  night: Night,
): { readonly low: Low; readonly sources: readonly SourceSaid[] } {
  const lows = new Map(nights.map(({ night: name, low }) => [name, low]));
  let { low } = own;
  const sources = pushed.map((each): SourceSaid => {
    const said = lowForetold(each.temperature, night.set, night.rise);
    const past = each.nights.flatMap((one) => {
      const [foretold, came] = [one.lows[stage], lows.get(one.night) ?? null];
      return foretold === null || came === null ? [] : [{ said: foretold, low: came }];
    });
    const record = sourceRecord(past);
    const corrected = said === null ? null : celsius(said + record.correction);
    const weight = corrected === null ? 0 : sourceWeight(record, own.error);
    if (corrected !== null && record.error !== null && weight > 0) {
      const theirs = { mean: corrected, sd: record.error, df: record.nights - 1 };
      low = pooledLow(low, theirs, weight);
    }
    const { source, issuedAt } = each;
    const { error } = record;
    return {
      ...{ source, issuedAt, said, corrected, nights: record.nights, error },
      ...{ ownError: own.error, weight },
    };
  });
  return { low, sources };
}
