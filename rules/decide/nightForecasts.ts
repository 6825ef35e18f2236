import { probabilityBelow } from '../frost/index.ts';
import { type Celsius, celsius, HOUR, type Instant, instant } from '../units.ts';
import { type Clues, cluesFor } from './clues.ts';
import { fresh, newest, type Read, within } from './column.ts';
import { by, type How, put, when } from './how.ts';
import { learnUpdate } from './learnUpdate.ts';
import { type Low, lowBeforehand } from './lowBeforehand.ts';
import { lowSoFar } from './lowSoFar.ts';
import type { Night } from './night.ts';
import { fanOf, nightLine } from './nightLine.ts';
import type {
  Column,
  Crop,
  NightForecast,
  PlaceNow,
  PushedForecast,
  SpotNow,
  Stage,
} from './snapshot.ts';
import { withPushed } from './withPushed.ts';

// Ours, from no source: a probe silent for longer says nothing about the night ahead.
const OLDEST = 180; // minutes
/** Nobody is ever quite sure of a night. */
export const SUREST = 0.995; // ours
// Ours, from no source: of the fall from the day's warmest to the low, half is over two hours
// after sunset. Only the drawing and the crossing before that hour rest on it.
const FALLEN_BY_EVENING = 0.5;
// An hour of the night has to be over before it is called an update. Ours.
const UPDATED_FROM = 3 * HOUR; // after sunset

/** First reading of the night below `limit`. */
function seenBelow(column: Column, night: Night, now: Instant, limit: number): Instant | null {
  const { from, to } = within(column, night.set, now);
  for (let i = from; i < to; i++) {
    if ((column.value[i] ?? limit) < limit) return column.t[i] ?? null;
  }
  return null;
}

// What each forecast was made of, for whoever shows it; gone when the forecast is.
const workings = new WeakMap<NightForecast, How>();

/** How a forecast's low came about. */
export const forecastHow = (forecast: NightForecast): How =>
  workings.get(forecast) ?? by('nightForecast');

/** How the moment came about at which a forecast crosses `limit`. */
export const crossingHow = ({ low, crossesAt }: NightForecast, night: Night, limit: number): How =>
  by(
    'nightLine',
    put('tonight-low', low.mean, '°C'),
    put('damage-below', limit, '°C'),
    when('sunset', night.set),
    when('sunrise', night.rise),
    when('crosses-at', crossesAt),
  );

/** What a forecast needs besides its spot and the night. */
export type Around = {
  /** Where the dew point of the air outside is read. */
  readonly outside: SpotNow | null;
  readonly pushed?: readonly PushedForecast[];
  readonly crop?: Crop | null;
};

/**
 * The forecast for one spot; null when its probe has been silent. What past nights and one reading
 * let expect (lowBeforehand) is pooled with pushed forecasts as far as their record here earns it
 * (withPushed), and corrected by what the night has shown so far (lowSoFar); the chance is that of
 * Student's t below the limit, and never quite 0 or 1.
 *
 * Source: Snyder and de Melo-Abreu 2005, Frost Protection, FAO, vol. 1, for the regression and the
 * cooling curve; how the night corrects it, and the wide default of a new farm, are ours.
 */
export function nightForecast(
  place: PlaceNow,
  spot: SpotNow,
  { outside, pushed = [], crop = null }: Around,
  night: Night,
  now: Instant,
): NightForecast | null {
  const column = spot.columns.temperature;
  const last = fresh(column, now, OLDEST);
  if (column === undefined || last === null) return null;

  const clues = cluesFor(spot, outside, column, night, now, last);
  const expected = lowBeforehand(spot.nights, clues, spot.prior ?? null);
  const pooled = withPushed(expected, spot.nights, pushed, stageOf(clues, night, now), night);
  const start = clues.evening?.temperature ?? null;
  const hour = (last.t - night.set) / HOUR;
  const learned = expected.method === 'evening' ? learnUpdate(spot.nights, hour) : null;
  const low =
    now < night.set ? pooled.low : lowSoFar(pooled.low, start, column, night, now, last, learned);
  const line = lineOf(clues, low, night, now, last);

  /** Chance of going below, and when: as seen, or as expected. */
  const passing = (at: Celsius) => {
    const below = seenBelow(column, night, now, at);
    const p = below === null ? probabilityBelow({ ...low, mean: celsius(low.mean) }, at) : 1;
    return {
      at,
      p: Math.min(SUREST, Math.max(1 - SUREST, p)),
      crossesAt: below ?? line.crossing(at),
    };
  };
  const { at, p, crossesAt } = passing(place.cover?.damage ?? celsius(0));
  const updated = expected.method === 'evening' && last.t - night.set >= UPDATED_FROM;

  const forecast: NightForecast = {
    place: place.id,
    spot: spot.spot,
    night: night.name,
    issuedAt: now,
    low: { mean: celsius(low.mean), sd: low.sd, df: low.df },
    pBelow: { at, p },
    crossesAt,
    nightsLearned: expected.nightsLearned,
    method: updated ? 'through-the-night' : expected.method,
    limits: limitsOf(place, crop).map(({ what, at: limit }) => ({ what, ...passing(limit) })),
    sources: pooled.sources,
    fan: fanOf(line, low, night, now),
  };
  const { evening: dusk, afternoon } = clues;
  workings.set(
    forecast,
    by(
      'nightForecast',
      put('probe', spot.probe),
      put('forecast-from', forecast.method),
      put('nights-learned', expected.nightsLearned),
      put('newest-reading', last.value, '°C'),
      when('read-at', last.t),
      put('evening-temperature', dusk?.temperature ?? null, '°C'),
      put('evening-dew-point', dusk?.dewPoint ?? null, '°C'),
      put('afternoon-temperature', afternoon?.temperature ?? null, '°C'),
      put('warmest-of-day', clues.warmest, '°C'),
      put('expected-beforehand', pooled.low.mean, '°C'),
      put('spread', low.sd, 'K'),
      put('degrees-of-freedom', low.df),
    ),
  );
  return forecast;
}

/** Which record of a pushed forecast counts: the one of the same time of day. */
function stageOf({ evening }: Clues, night: Night, now: Instant): Stage {
  if (evening !== null || now >= night.set + 2 * HOUR) return 'evening';
  return now < night.afternoon ? 'morning' : 'afternoon';
}

function lineOf(clues: Clues, low: Low, night: Night, now: Instant, last: Read) {
  const evening = instant(night.set + 2 * HOUR);
  const warm = Math.max(clues.warmest, last.value);
  const halfway = low.mean + (warm - low.mean) * (1 - FALLEN_BY_EVENING);
  const bend =
    last.t >= evening
      ? last
      : { t: evening, value: last.t >= night.set ? Math.min(halfway, last.value) : halfway };
  // Before the afternoon today's way down has not begun: it is drawn from the day's warmest.
  const from = now < night.afternoon ? { t: instant(night.set - 2 * HOUR), value: warm } : last;
  return nightLine(from.t > bend.t ? bend : from, bend, low.mean, night);
}

/** Temperatures below which what grows here is hurt; at freezing and below it is not chilling any more. */
function limitsOf(place: PlaceNow, crop: Crop | null) {
  if (place.cover !== null) return [{ what: 'damage' as const, at: place.cover.damage }];
  const chill = crop?.chill ?? null;
  if (chill === null) return [];
  return [{ what: chill > 0 ? ('chill' as const) : ('damage' as const), at: chill }];
}

/** Where the dew point of the air outside is read; null where nobody reads it. */
export const dewPointSpot = (places: readonly PlaceNow[]): SpotNow | null =>
  places
    .filter(({ kind }) => kind === 'outdoor')
    .flatMap(({ spots }) => spots)
    .find(({ air }) => air.length > 0) ?? null;

/** The spots a night is forecast for: all that hang in tunnels, on patches and outdoors. */
export function forecastSpots(places: readonly PlaceNow[], now: Instant) {
  return places
    .filter(({ kind }) => kind !== 'cool-room')
    .flatMap((place) => place.spots.map((spot) => ({ place, spot })))
    .filter(({ spot }) => newest(spot.columns.temperature, now) !== null);
}
