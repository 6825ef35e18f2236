import { type ForecastPair, forecastWeight } from '../../rules/batches/index.ts';
import { degreeDays } from '../../rules/heat/index.ts';
import { HOUR, instant } from '../../rules/units.ts';
import type { Calendar } from '../clock.ts';
import type { Store } from '../store/index.ts';
import type { Foretold } from './aheadOf.ts';
import { type HeatRule, limitsOf, ruleKey } from './heatRule.ts';
import type { PlaceClimate } from './placeClimate.ts';

/** Forecasts come in steps of 3 h or finer. */
const STEP = 190; // min
/** A day of which a forecast says less is not foretold. Ours. */
const LEAST = 18; // h
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
  const counted = new Map<string, number | null>();

  /** Units outdoors of a day by one issue. */
  const unitsIn = (id: string, issue: Issue, rule: HeatRule, day: string): number | null => {
    const name = `${id} ${ruleKey(rule)} ${day}`;
    const known = counted.get(name);
    if (known !== undefined) return known;
    const { begins, ends } = calendar().bounds(day);
    const readings = issue.values.map(({ t, value }) => ({ t: instant(t), value }));
    const window = { from: begins, to: ends, maxGapMinutes: STEP };
    const { degreeDays: units, unknownHours } = degreeDays(readings, {
      ...limitsOf(rule),
      ...window,
    });
    const hours = (ends - begins) / HOUR;
    const knownHours = hours - unknownHours;
    const made = knownHours < LEAST ? null : (units * hours) / knownHours;
    counted.set(name, made);
    return made;
  };

  const issueOf = (source: string, at: number) => {
    const issue = store.foretold.issueBy(source, 'temperature', at);
    return issue && issue.issuedAt > at - OLDEST
      ? { id: `${source}@${issue.issuedAt}`, issue }
      : null;
  };

  /** @param lineOf outdoors to the place */
  return function foretold(
    place: string,
    rule: HeatRule,
    climate: PlaceClimate,
    lineOf: () => ((outdoors: number) => number) | null,
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
    const line = lineOf();
    if (line === null) return null;
    const { source, id, issue } = newest;

    const learn = () => {
      const pairs = Array.from({ length: LEADS }, (_, lead) => {
        const own: ForecastPair[] = [];
        for (let back = 1; back <= RECORD; back++) {
          const day = calendar().add(today, -back);
          const by = calendar().bounds(calendar().add(day, -lead)).begins + BY;
          const past = issueOf(source, by);
          const said = past && unitsIn(past.id, past.issue, rule, day);
          const [came, usual] = [climate.measured(day), climate.units(day)];
          if (said === null || came === null || usual === null) continue;
          own.push({ forecast: line(said) - usual, observed: came - usual });
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
        const outdoors = unitsIn(id, issue, rule, day);
        return outdoors === null ? null : line(outdoors);
      },
      weight: (lead) => (lead < 60 ? weight(lead) : 0),
    };
  };
}
