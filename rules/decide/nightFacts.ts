import type { Celsius, Instant } from '../units.ts';
import type { Column, SpotName } from './snapshot.ts';

// Past nights, what others say of them, and the forecasts made from both: parts of a snapshot and
// of what decide makes of it.

/** Temperature at one moment, and the dew point where humidity was read. */
export type Predictor = { readonly temperature: Celsius; readonly dewPoint: Celsius | null };

/** One past night at one spot, named by the morning that ends it. null = not known. */
export type NightRecord = {
  readonly night: string;
  /** An hour after the sunrise before the night, or the last reading not long before. */
  readonly morning?: Predictor | null | undefined;
  /** Around 15:00 local time of the day before. */
  readonly afternoon: Predictor | null;
  /** Two hours after sunset. */
  readonly evening: Predictor | null;
  /** Lowest from sunset to an hour after sunrise; null when a gap hides it. */
  readonly low: Celsius | null;
  /** At sunset and each whole hour after it, up to sunrise. */
  readonly hours?: readonly (Celsius | null)[] | undefined;
  /** Sunset to sunrise, h. */
  readonly length?: number | undefined;
  /** Outdoors it was a night of radiation frost (isClearCalm). */
  readonly clearCalm?: boolean | null | undefined;
};

/**
 * What others' records let expect of this night's low at a spot, while its own nights are too few:
 * lows of a station on days of the year near this one, shifted by how the spot differs from it.
 */
export type SpotPrior = {
  readonly mean: Celsius;
  /** Of one night: how such nights differ, and how surely the shift is known, K. */
  readonly sd: number;
  readonly df: number;
  /** Name of the station, for whoever is shown the forecast. */
  readonly station: string;
  readonly nights: number;
};

/** When in the day a forecast of the night is made. */
export type Stage = 'morning' | 'afternoon' | 'evening';

/** What somebody else foretells, as it was pushed to the hub. */
export type PushedForecast = {
  readonly source: string;
  readonly issuedAt: Instant;
  /** The newest issue. */
  readonly temperature: Column;
  /** mm since the value before it. */
  readonly rain: Column;
  /** The low it said of past nights, by the newest issue before each stage. */
  readonly nights: readonly {
    readonly night: string;
    readonly lows: Readonly<Record<Stage, Celsius | null>>;
  }[];
};

export type NightForecast = {
  readonly place: string;
  readonly spot: SpotName;
  /** The morning that ends the night. */
  readonly night: string;
  readonly issuedAt: Instant;
  readonly low: { readonly mean: Celsius; readonly sd: number; readonly df: number };
  readonly pBelow: { readonly at: Celsius; readonly p: number };
  /** When the middle of the forecast crosses `pBelow.at`; null when it does not. */
  readonly crossesAt: Instant | null;
  readonly nightsLearned: number;
  readonly method:
    | 'through-the-night'
    | 'evening'
    | 'afternoon'
    | 'recent-nights'
    | 'station'
    | 'wide-default';
  /** Every limit of what grows here, and the chance and time of passing it. */
  readonly limits: readonly {
    readonly what: 'damage' | 'chill';
    readonly at: Celsius;
    readonly p: number;
    readonly crossesAt: Instant | null;
  }[];
  /** What each pushed forecast says of tonight here, and what its record has earned it. */
  readonly sources: readonly SourceSaid[];
  /** The way down through the night: 10 %, 50 % and 90 % of the chances. */
  readonly fan: readonly {
    readonly t: Instant;
    readonly low: Celsius;
    readonly middle: Celsius;
    readonly high: Celsius;
  }[];
};

export type SourceSaid = {
  readonly source: string;
  readonly issuedAt: Instant;
  /** Its own low, and that with the correction learned here; null when it does not reach tonight. */
  readonly said: Celsius | null;
  readonly corrected: Celsius | null;
  readonly nights: number;
  /** Root mean square error after correction, and that of the forecast learned here, K. */
  readonly error: number | null;
  readonly ownError: number;
  /** Its share in tonight's forecast, 0..1. */
  readonly weight: number;
};
