import type { NightForecast } from '../../rules/decide/index.ts';
import { probabilityBelow } from '../../rules/frost/index.ts';
import { type Celsius, celsius, instant } from '../../rules/units.ts';

type Issued = Omit<NightForecast, 'fan'>;

/** What was forecast of the nights, as it was issued then: nothing is foretold with hindsight. */
export function issuedThen(bodies: readonly string[]) {
  const nights = new Map<string, NightForecast[]>();
  for (const body of bodies) {
    const issued: Issued = JSON.parse(body);
    const own = nights.get(issued.night) ?? [];
    own.push({ ...issued, issuedAt: instant(issued.issuedAt), fan: [] });
    nights.set(issued.night, own);
  }
  /** The newest of each spot that was issued by `now`, for a night. */
  return (night: string, now: number): NightForecast[] => {
    const newest = new Map<string, NightForecast>();
    for (const one of nights.get(night) ?? [])
      if (one.issuedAt <= now) newest.set(`${one.place} ${one.spot}`, one);
    return [...newest.values()];
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
