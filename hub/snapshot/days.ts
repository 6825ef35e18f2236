import { dayFacts } from '../../rules/days/index.ts';
import { type Celsius, type Instant, instant, minutes, type Percent } from '../../rules/units.ts';
import type { Calendar } from '../clock.ts';
import type { Day } from '../contract/index.ts';
import { baseOf, type Farm, WET } from '../farm/index.ts';
import type { Store } from '../store/index.ts';
import { columnsOf, pair, type Spots } from './spots.ts';

const MINUTE = 60_000;
const HOUR = 60 * MINUTE;
/** A spell that reaches into a day may have begun this many days before it. Ours. */
export const SPELL_DAYS = 3;
const BEFORE = SPELL_DAYS * 24 * HOUR;
/** Temperature and humidity read this far apart still belong together. Ours. */
const TOGETHER = 10 * MINUTE;

/** A gap longer than this is time not known. 30 min: disease accounting, common practice, no source;
 *  two and a half steps of a probe that reports more seldom: ours. */
export const longestGap = (everyMs: number) =>
  minutes(Math.min(LONGEST_GAP, Math.max(30, (2.5 * everyMs) / MINUTE)));
/** A reading never speaks for more than a day. Ours. */
const LONGEST_GAP = 1440; // min

/** How far past midnight to look, to join a day's last reading to the next day's first. */
export const joinedAfter = (everyMs: number) => Math.max(JOINED, longestGap(everyMs) * MINUTE);
const JOINED = 2 * HOUR; // ours

/** The days of a place: worked out once, kept, and made again when readings of that day change. */
export function makeDays(store: Store, spots: Spots, farm: () => Farm, calendar: () => Calendar) {
  const make = (placeId: string, day: string, now: number): Day | null => {
    const place = farm().place(placeId);
    if (!place) return null;
    const { begins, ends: midnight } = calendar().bounds(day);
    // What is still to come of today is not time without readings.
    const ends = instant(Math.max(begins + 1, Math.min(midnight, now)));
    const from = begins - BEFORE;
    for (const spot of spots.ordered(placeId, begins, ends)) {
      const here = spots.overlapping(placeId, spot, begins, ends).at(-1);
      const every = (here && store.probes.get(here.probe)?.everyMs) ?? 5 * MINUTE;
      const to = ends + joinedAfter(every);
      const temperature = spots.points(placeId, spot, 'temperature', from, to);
      if (!temperature.some(({ t }) => t >= begins && t < ends)) continue;
      const humidity = spots.points(placeId, spot, 'humidity', from, to);
      const wet = place.wet ?? WET;
      const facts = dayFacts(
        pair(columnsOf(temperature), columnsOf(humidity), Math.max(TOGETHER, every / 2)) as {
          t: Instant;
          temperature: Celsius;
          humidity: Percent | null;
        }[],
        {
          from: begins,
          to: ends,
          base: baseOf(farm(), place) as Celsius,
          wet: { at: wet.at as Percent, below: wet.below as Percent },
          maxGapMinutes: longestGap(every),
        },
      );
      return { day, ...facts };
    }
    return {
      day,
      min: null,
      max: null,
      mean: null,
      wetHours: null,
      unknownHours: (ends - begins) / HOUR,
      longestSpellHours: null,
      degreeDays: null,
      botrytisIndex: null,
    };
  };

  /** The first day anything was measured there. */
  const firstDay = (placeId: string): string | null => {
    let first = Number.POSITIVE_INFINITY;
    for (const { probe, from } of spots.overlapping(placeId, null, 0, Number.MAX_SAFE_INTEGER)) {
      const oldest = store.readings.oldestAt(probe, 'temperature');
      if (oldest !== undefined) first = Math.min(first, Math.max(oldest, from));
    }
    return Number.isFinite(first) ? calendar().dayOf(instant(first)) : null;
  };

  const isOver = (day: string, now: number) => now >= calendar().bounds(day).ends + JOINED;

  return {
    firstDay,
    /** Days from `from` to `to` (both of them), from the first measured to today. */
    between(placeId: string, from: string, to: string, now: number): Day[] {
      const today = calendar().dayOf(now);
      const first = firstDay(placeId);
      if (first === null) return [];
      const begin = from > first ? from : first;
      const end = to < today ? to : today;
      const kept = new Map(
        store.placeFacts.days(placeId, begin, end).map(({ day, facts }) => [day, facts]),
      );
      const lasting = store.trim.kept()?.firstDay ?? '';
      const days: Day[] = [];
      const fresh: Day[] = [];
      for (let day = begin; day <= end; day = calendar().add(day, 1)) {
        const facts = kept.get(day);
        const made: Day | null = facts ? JSON.parse(facts) : make(placeId, day, now);
        if (!made) continue;
        // Today is not over: it is worked out each time it is asked for. So is yesterday, while the
        // first readings after it still change it, and a day whose readings were let go of.
        if (!facts && day >= lasting && isOver(day, now)) fresh.push(made);
        days.push(made);
      }
      if (fresh.length > 0)
        store.spare(() => {
          for (const made of fresh)
            store.placeFacts.putDay(placeId, made.day, JSON.stringify(made));
        });
      return days;
    },
  };
}
export type Days = ReturnType<typeof makeDays>;
