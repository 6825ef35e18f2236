import type { Calendar } from '../clock.ts';
import type { Rollup } from '../store/index.ts';
import { type HeatRule, ruleKey } from './heatRule.ts';
import { hourlyDays, hoursOfPlace } from './hourlyDays.ts';
import type { PieceParts } from './pieceHeat.ts';
import type { OwnDay } from './placeMap.ts';

type Kept = {
  readonly changes: number;
  until: number;
  readonly hours: Rollup[];
  readonly days: Map<string, { of: number; readonly days: OwnDay[] }>;
};
export type PlaceHistory = ReturnType<typeof placeHistory>;

/** Hours and days of places before today, read once; each day only the day before is added. */
export function placeHistory(parts: PieceParts, calendar: () => Calendar) {
  const kept = new Map<string, Kept>();
  /** Counts changes of what was measured before today. */
  let changes = 0;

  const upTo = (place: string, today: string): Kept => {
    const until = calendar().bounds(today).begins;
    let own = kept.get(place);
    if (own === undefined || own.changes !== changes || own.until > until) {
      own = { changes, until: 0, hours: [], days: new Map() };
      kept.set(place, own);
    }
    if (own.until < until) {
      for (const hour of hoursOfPlace(parts, place, own.until, until)) own.hours.push(hour);
      own.until = until;
    }
    return own;
  };

  return {
    changes: () => changes,
    /** What was measured before today is not as it was. */
    changed() {
      changes += 1;
    },
    /** Days of a place before today, by one rule; oldest first. */
    days(place: string, rule: HeatRule, today: string): readonly OwnDay[] {
      const { hours, days } = upTo(place, today);
      const key = ruleKey(rule);
      const known = days.get(key) ?? { of: 0, days: [] };
      days.set(key, known);
      for (const day of hourlyDays(hours.slice(known.of), rule, calendar())) known.days.push(day);
      known.of = hours.length;
      return known.days;
    },
    /** Mean temperatures of hours that began from `from` to `to`, °C. */
    between(place: string, from: number, to: number, today: string) {
      const { hours } = upTo(place, today);
      let [low, high] = [0, hours.length];
      while (low < high) {
        const middle = (low + high) >> 1;
        if ((hours[middle]?.t ?? 0) < from) low = middle + 1;
        else high = middle;
      }
      const found: { t: number; value: number }[] = [];
      for (let i = low; i < hours.length; i++) {
        const { t, sum, n } = hours[i] as Rollup;
        if (t >= to) break;
        found.push({ t, value: sum / n });
      }
      return found;
    },
  };
}
