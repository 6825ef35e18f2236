import { dewPoint } from '../air/index.ts';
import { probabilityBelow } from '../frost/index.ts';
import { celsius, HOUR, type Instant, instant } from '../units.ts';
import { around, firstAt, fresh, highest, newest, type Read, within } from './column.ts';
import { by, type How, put, when } from './how.ts';
import { type Clues, lowBeforehand, type Predictor } from './lowBeforehand.ts';
import { lowSoFar } from './lowSoFar.ts';
import type { Night } from './night.ts';
import { fanOf, nightLine } from './nightLine.ts';
import type { Column, NightForecast, PlaceNow, SpotNow } from './snapshot.ts';

// Ours, from no source: a probe silent for longer says nothing about the night ahead.
const OLDEST = 180; // minutes
// Nobody is ever quite sure of a night.
const SUREST = 0.995; // ours
// Ours, from no source: of the fall from the day's warmest to the low, half is over two hours
// after sunset. Only the drawing and the crossing before that hour rest on it.
const FALLEN_BY_EVENING = 0.5;

/**
 * Temperature around one moment, and the dew point: of the spot itself, or where humidity is not
 * read there, of the air outside, which is the same air mass.
 */
function predictorAt(
  spot: SpotNow,
  outside: SpotNow | null,
  at: number,
  now: Instant,
): Predictor | null {
  const column = spot.columns.temperature;
  const temperature = column === undefined ? null : around(column, at, now);
  if (temperature === null) return null;
  const { air } = spot.air.length > 0 ? spot : (outside ?? spot);
  const next = firstAt(air.length, (i) => air[i]?.t ?? Number.POSITIVE_INFINITY, at);
  const near = [air[next - 1], air[next]].find(
    (read) =>
      read && Math.abs(read.t - at) <= HOUR / 2 && read.humidity > 0 && read.humidity <= 105,
  );
  return { temperature, dewPoint: near ? dewPoint(near.temperature, near.humidity) : null };
}

function cluesFor(
  spot: SpotNow,
  outside: SpotNow | null,
  column: Column,
  night: Night,
  now: Instant,
  last: Read,
): Clues {
  const evening = instant(night.set + 2 * HOUR);
  const beforeAfternoon = now < night.afternoon;
  // In the morning the last afternoon is yesterday's, so the look back is longer.
  const back = beforeAfternoon ? 24 * HOUR : 12 * HOUR;
  const warmest = highest(column, now - back, now) ?? last;
  return {
    evening: now < evening ? null : predictorAt(spot, outside, evening, now),
    afternoon: beforeAfternoon ? null : predictorAt(spot, outside, night.afternoon, now),
    warmest: celsius(warmest.value),
  };
}

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

/**
 * The forecast for one spot; null when its probe has been silent. What past nights and one reading
 * let expect (lowBeforehand) is corrected by what the night has shown so far (lowSoFar); the chance
 * is that of Student's t below the limit, and never quite 0 or 1.
 *
 * Source: Snyder and de Melo-Abreu 2005, Frost Protection, FAO, vol. 1, for the regression and the
 * cooling curve; how the night corrects it, and the wide default of a new farm, are ours.
 */
export function nightForecast(
  place: PlaceNow,
  spot: SpotNow,
  outside: SpotNow | null,
  night: Night,
  now: Instant,
): NightForecast | null {
  const column = spot.columns.temperature;
  const last = fresh(column, now, OLDEST);
  if (column === undefined || last === null) return null;

  const clues = cluesFor(spot, outside, column, night, now, last);
  const expected = lowBeforehand(spot.nights, clues);
  const start = clues.evening?.temperature ?? null;
  const low =
    now < night.set ? expected.low : lowSoFar(expected.low, start, column, night, now, last);

  const at = place.cover?.damage ?? celsius(0);
  const below = seenBelow(column, night, now, at);
  const p = below === null ? probabilityBelow({ ...low, mean: celsius(low.mean) }, at) : 1;

  const evening = instant(night.set + 2 * HOUR);
  const warm = Math.max(clues.warmest, last.value);
  const halfway = low.mean + (warm - low.mean) * (1 - FALLEN_BY_EVENING);
  const bend =
    last.t >= evening
      ? last
      : { t: evening, value: last.t >= night.set ? Math.min(halfway, last.value) : halfway };
  // Before the afternoon today's way down has not begun: it is drawn from the day's warmest.
  const from = now < night.afternoon ? { t: instant(night.set - 2 * HOUR), value: warm } : last;
  const line = nightLine(from.t > bend.t ? bend : from, bend, low.mean, night);

  const forecast: NightForecast = {
    place: place.id,
    spot: spot.spot,
    night: night.name,
    issuedAt: now,
    low: { mean: celsius(low.mean), sd: low.sd, df: low.df },
    pBelow: { at, p: Math.min(SUREST, Math.max(1 - SUREST, p)) },
    crossesAt: below ?? line.crossing(at),
    nightsLearned: expected.nightsLearned,
    method: expected.method,
    fan: fanOf(line, low, night, now),
  };
  const { evening: dusk, afternoon } = clues;
  workings.set(
    forecast,
    by(
      'nightForecast',
      put('probe', spot.probe),
      put('forecast-from', expected.method),
      put('nights-learned', expected.nightsLearned),
      put('newest-reading', last.value, '°C'),
      when('read-at', last.t),
      put('evening-temperature', dusk?.temperature ?? null, '°C'),
      put('evening-dew-point', dusk?.dewPoint ?? null, '°C'),
      put('afternoon-temperature', afternoon?.temperature ?? null, '°C'),
      put('warmest-of-day', clues.warmest, '°C'),
      put('expected-beforehand', expected.low.mean, '°C'),
      put('spread', low.sd, 'K'),
      put('degrees-of-freedom', low.df),
    ),
  );
  return forecast;
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
