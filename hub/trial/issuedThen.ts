import type { NightForecast } from '../../rules/decide/index.ts';
import { probabilityBelow } from '../../rules/frost/index.ts';
import { type Celsius, celsius, instant } from '../../rules/units.ts';

type Issued = Omit<NightForecast, 'fan'>;

/**
 * What was forecast of the nights, as it was issued then: nothing is foretold with hindsight.
 * @returns the newest of each spot that was issued by `now`, for a night; asked in order of time
 */
export function issuedThen(bodies: readonly string[]) {
  const nights = new Map<string, NightForecast[]>();
  for (const body of bodies) {
    const issued: Issued = JSON.parse(body);
    const own = nights.get(issued.night) ?? [];
    own.push({ ...issued, issuedAt: instant(issued.issuedAt), fan: [] });
    nights.set(issued.night, own);
  }
  let night = '';
  let waiting: NightForecast[] = [];
  let newest = new Map<string, NightForecast>();
  let told: readonly NightForecast[] = [];
  return (of: string, now: number): readonly NightForecast[] => {
    if (of !== night) {
      night = of;
      waiting = (nights.get(of) ?? []).sort((a, b) => b.issuedAt - a.issuedAt);
      newest = new Map();
      told = [];
    }
    const before = waiting.length;
    for (let next = waiting.at(-1); next && next.issuedAt <= now; next = waiting.at(-1)) {
      newest.set(`${next.place} ${next.spot}`, next);
      waiting.pop();
    }
    if (waiting.length < before) told = [...newest.values()];
    return told;
  };
}

/** The same forecast with the chance of another limit: that of its own spread. */
export const againstLimit = (forecast: NightForecast, at: number): NightForecast =>
  forecast.pBelow.at === at
    ? forecast
    : {
        ...forecast,
        pBelow: {
          at: celsius(at),
          p: probabilityBelow({ ...forecast.low, mean: forecast.low.mean as Celsius }, celsius(at)),
        },
      };
