import { type ForecastPair, forecastWeight } from '../../rules/batches/index.ts';
import { HOUR } from '../../rules/units.ts';
import type { Calendar } from '../clock.ts';
import type { Store } from '../store/index.ts';
import type { Foretold } from './aheadOf.ts';
import { type HeatRule, ruleKey } from './heatRule.ts';
import type { PlaceClimate } from './placeClimate.ts';
import type { Extremes } from './placeMap.ts';

/** Forecasts come in steps of 3 h or finer: a day of which one says less is not foretold. Ours. */
const LEAST = 7; // values
/** A forecast older than this is no news. Ours. */
const OLDEST = 36 * HOUR;
/** Days that teach how far a forecast is believed, and the hour by which it is to be there. Ours. */
const RECORD = 60; // days
const BY = 8 * HOUR; // after midnight
const LEADS = 5; // days ahead

type Issue = { readonly values: readonly { readonly t: number; readonly value: number }[] };

/** Heat that pushed forecasts promise, and how far they are believed by what came of them. */
export function makeForetold(store: Store, calendar: () => Calendar) {
  let key = '';
  const weights = new Map<string, (lead: number) => number>();
  const counted = new Map<string, Extremes | null>();

  /** A day's extremes outdoors by one issue. */
  const extremesIn = (id: string, issue: Issue, day: string): Extremes | null => {
    const name = `${id} ${day}`;
    const known = counted.get(name);
    if (known !== undefined) return known;
    const { begins, ends } = calendar().bounds(day);
    const values = issue.values.flatMap(({ t, value }) => (t >= begins && t < ends ? value : []));
    const made =
      values.length < LEAST ? null : { min: Math.min(...values), max: Math.max(...values) };
    counted.set(name, made);
    return made;
  };

  const issueOf = (source: string, at: number) => {
    const issue = store.foretold.issueBy(source, 'temperature', at);
    return issue && issue.issuedAt > at - OLDEST
      ? { id: `${source}@${issue.issuedAt}`, issue }
      : null;
  };

  /** @param mapOf extremes outdoors to units of the place */
  return function foretold(
    place: string,
    rule: HeatRule,
    climate: PlaceClimate,
    mapOf: () => ((outdoors: Extremes) => number | null) | null,
    now: number,
  ): Foretold | null {
    const today = calendar().dayOf(now);
    const next = `${store.foretold.version()} ${today}`;
    if (next !== key) {
      key = next;
      weights.clear();
      counted.clear();
    }
    const newest = store.foretold
      .sources()
      .flatMap((source) => {
        const found = issueOf(source, now);
        return found === null ? [] : [{ source, ...found }];
      })
      .sort((a, b) => b.issue.issuedAt - a.issue.issuedAt)[0];
    if (newest === undefined) return null;
    const map = mapOf();
    if (map === null) return null;
    const { source, id, issue } = newest;

    const learn = () => {
      const pairs = Array.from({ length: LEADS }, (_, lead) => {
        const own: ForecastPair[] = [];
        for (let back = 1; back <= RECORD; back++) {
          const day = calendar().add(today, -back);
          const by = calendar().bounds(calendar().add(day, -lead)).begins + BY;
          const past = issueOf(source, by);
          const outdoors = past && extremesIn(past.id, past.issue, day);
          const said = outdoors && map(outdoors);
          const [came, usual] = [climate.measured(day), climate.units(day)];
          if (said === null || came === null || usual === null) continue;
          own.push({ forecast: said - usual, observed: came - usual });
        }
        return own;
      });
      return (lead: number) => forecastWeight(lead, pairs[lead] ?? []);
    };
    const name = `${place} ${ruleKey(rule)} ${source}`;
    const weight = weights.get(name) ?? learn();
    weights.set(name, weight);
    return {
      units(day) {
        const outdoors = extremesIn(id, issue, day);
        return outdoors && map(outdoors);
      },
      weight: (lead) => (lead < 60 ? weight(lead) : 0),
    };
  };
}
