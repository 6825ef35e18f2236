import type { NightForecast } from '../../rules/decide/index.ts';
import {
  actThreshold,
  bandOf,
  baseRateBefore,
  forecastScores,
  type ScoredForecast,
} from '../../rules/frost/index.ts';
import { wilson } from '../../rules/statistics/index.ts';
import type { MethodScores, Scorecard } from '../contract/index.ts';
import { scoreWords, sourceWords } from '../words/index.ts';
import { newest } from './newest.ts';
import type { ApiParts } from './parts.ts';
import { iso, nameOf } from './present.ts';

const LISTED = 30; // nights
/** Forecasts older than this are kept, and no longer part of the scores. Ours: two seasons and more. */
const LOOK_BACK = 800; // days
/** Without cost and loss of its own a place is warned of when frost is as likely as not. Ours. */
const AS_LIKELY_AS_NOT = 0.5;

/** As the day goes; first nights last. */
const IN_ORDER: readonly NightForecast['method'][] = [
  'recent-nights',
  'afternoon',
  'evening',
  'through-the-night',
  'station',
  'wide-default',
];

type Issued = Omit<NightForecast, 'fan'>;
type Scored = ScoredForecast & { readonly issuedAt: number };

const rounded = (value: number, digits = 2) => Number(value.toFixed(digits));
const roundedOrNull = (value: number | null, digits = 2) =>
  value === null ? null : rounded(value, digits);

function methodScores(method: string, nights: readonly Scored[], warnFrom: number): MethodScores {
  const scores = forecastScores(nights);
  if (scores === null) throw new RangeError('Expected 1 or more forecasts to score, got 0');
  const { n, happened, enough, skill } = scores;
  const warned = bandOf(nights, warnFrom, 1);
  const told = {
    ...{ n, happened, enough, warnFrom, method },
    often: bandOf(nights, 0.7, 1),
    seldom: bandOf(nights, 0, 0.3),
    misses: happened - warned.happened,
    falseAlarms: warned.n - warned.happened,
    inside: scores.inside,
    error: scores.error,
    persistenceError: scores.persistenceError,
    at: nights.at(-1)?.at ?? 0,
    skill: skill.climatology,
  };
  return {
    ...{ method, n, happened, enough },
    bias: rounded(scores.bias),
    error: rounded(scores.error),
    persistenceError: roundedOrNull(scores.persistenceError),
    inside: { n: scores.inside, between: n === 0 ? null : [...wilson(scores.inside, n)] },
    brier: rounded(scores.brier, 4),
    skill: enough
      ? {
          climatology: roundedOrNull(skill.climatology, 3),
          persistence: roundedOrNull(skill.persistence, 3),
        }
      : null,
    bands: enough
      ? scores.bands.map(({ between, ...band }) => ({ ...band, between: between && [...between] }))
      : [],
    misses: told.misses,
    falseAlarms: told.falseAlarms,
    list: nights
      .slice(-LISTED)
      .reverse()
      .map(({ night, issuedAt, low, p, at, came }) => ({
        ...{ night, issuedAt: iso(issuedAt), mean: rounded(low.mean), p: rounded(p, 4), at },
        ...{ low: rounded(came), below: came < at },
      })),
    words: scoreWords(told),
  };
}

/** Every forecast of a night that is over, held against what came; or those of the nights named. */
export function scorecardOf(
  parts: ApiParts,
  nightsOf?: { readonly from: string; readonly to: string },
): Scorecard {
  const looked = newest(parts);
  const { nights } = parts.snapshots;
  const ended = nights.lastEnded(looked.at);
  const last = nightsOf !== undefined && nightsOf.to < ended ? nightsOf.to : ended;
  const first = nightsOf?.from ?? parts.calendar().add(last, -LOOK_BACK);
  const bySpot = new Map<string, Issued[]>();
  for (const body of parts.store.forecasts.firstsBetween(first, last)) {
    const issued: Issued = JSON.parse(body);
    const key = `${issued.place}\n${issued.spot}`;
    bySpot.set(key, [...(bySpot.get(key) ?? []), issued]);
  }
  const spots = [...bySpot.values()].flatMap((issued) => {
    const [one] = issued;
    if (!one || !parts.farm().place(one.place)) return [];
    const { place, spot } = one;
    const before = parts.calendar().add(one.night, -31); // for the base rate of the first nights
    const lows = nights.since(place, spot, before, looked.at);
    const lowOf = new Map(lows.map(({ night, low }) => [night, low]));
    const byMethod = new Map<string, Scored[]>();
    for (const { night, method, issuedAt, low, pBelow } of issued) {
      const came = lowOf.get(night) ?? null;
      if (came === null) continue;
      const scored: Scored = {
        ...{ night, issuedAt, low, p: pBelow.p, at: pBelow.at, came },
        before: lowOf.get(parts.calendar().add(night, -1)) ?? null,
        baseRate: baseRateBefore(lows, pBelow.at, night),
      };
      byMethod.set(method, [...(byMethod.get(method) ?? []), scored]);
    }
    const warnFrom = warnedFrom(looked, place);
    const methods = IN_ORDER.flatMap((method) => {
      const all = byMethod.get(method);
      return all ? [methodScores(method, all, warnFrom)] : [];
    });
    return methods.length === 0
      ? []
      : [{ place, name: nameOf(parts, place), spot, warnFrom: rounded(warnFrom, 3), methods }];
  });
  const sources = looked.outlook.frost.flatMap(({ place, spot, sources: said }) =>
    said.map(({ source, nights: held, error, ownError, weight, said: low }) => ({
      ...{ source, place, name: nameOf(parts, place), spot, nights: held },
      ...{ error: roundedOrNull(error), ownError: rounded(ownError), weight: rounded(weight, 3) },
      words: sourceWords({
        ...{ source, nights: held, error, ownError, weight },
        reaches: low !== null,
      }),
    })),
  );
  return { asOf: iso(looked.at), spots, sources };
}

/** Cost over loss where the grower told them. */
function warnedFrom({ snapshot }: ReturnType<typeof newest>, place: string): number {
  const cover = snapshot.places.find(({ id }) => id === place)?.cover ?? null;
  if (cover === null) return AS_LIKELY_AS_NOT;
  const { minutes, value: loss, effect } = cover;
  return actThreshold({ cost: (minutes / 60) * snapshot.farm.wage, loss, effect }) ?? 1;
}
