import type { Answer, Evidence } from '../answer.ts';
import {
  coverBy,
  coverGain,
  damageShare,
  probabilityBelow,
  probabilityInside,
  worthActing,
} from '../frost/index.ts';
import { celsius, HOUR, type Instant, instant, MINUTE, probability } from '../units.ts';
import { by, put, told } from './how.ts';
import { type Look, outsideLow, stands, temperatureIn } from './look.ts';
import { bySun, type Night } from './night.ts';
import { crossingHow, forecastHow, SUREST } from './nightForecasts.ts';
import { act, fact, leave, unknown } from './say.ts';
import type { NightForecast, PlaceNow, SpotName } from './snapshot.ts';
import { COST_LOSS, ENTERED, FROST_BOOK, OURS, PRACTICE, TOLD } from './sources.ts';

/** Before sunset it is told, so that somebody can plan for it; ours. */
export const COVERING_FROM = 5 * HOUR;
const LAID_FROM = 1.5 * HOUR; // before sunset it is time: bees fly till then. Ours
const STAY_ASKED = 0.7; // ours: once asked, until the chance is clearly under what it is worth
const LEAST_LOST = 0.1; // a tenth is what the limit takes: see damageShare
const ALARM_AHEAD = 2 * HOUR; // ours
const ALARM_NEAR = 0.5; // K above damage, ours: a probe's own error
// Ours: the far end of our own wide guess is no reason to work; the farm's own nights would be.
const FAR_TAIL = 0.05;
const FEWEST_COVERED = 9; // nights before coverGain plans with any gain; common practice, no source
/** Spots that feel the night as the bare crop does; under a cover tells of the cover. */
export const IN_THE_OPEN: readonly SpotName[] = ['canopy', 'grass', 'air'];

/**
 * The patch is to be covered: what tonight may take outweighs the work. The loss is the value told,
 * less what covering could not save and what so mild a frost leaves; the cost is the minutes told,
 * for laying the covers and taking them off again, at the farm's wage.
 *
 * Source: the cost-loss rule, Murphy 1977, Monthly Weather Review 105:803; the hours in which it is
 * asked are ours.
 */
export function cover(look: Look, place: PlaceNow): Answer {
  const { cover: covers } = place;
  if (covers === null) return leave();
  if (place.covered === true) return leave(fact('covers', 'on', '', null, ENTERED, told));
  if (look.sun === null) return unknown(['sun-times']);

  const { night } = look.sun;
  const from = instant(night.set - LAID_FROM);
  if (look.now < night.set - COVERING_FROM || look.now >= night.rise) {
    const away = (night.set - look.now) / HOUR;
    const how = bySun(look.snapshot, 'sunset', night.set);
    return leave(fact('sunset-in', away, 'h', COVERING_FROM / HOUR, OURS, how));
  }
  const own = openForecast(look, place);
  const forecast = own ?? outsideLow(look);
  if (forecast === null) return unknown(['night-forecast']);

  const p = own?.pBelow.p ?? probabilityBelow(forecast.low, covers.damage);
  const cost = (covers.minutes / 60) * look.snapshot.farm.wage;
  const share = shareWhenHurt(forecast, own === null ? null : p, covers.damage);
  const loss = covers.value * covers.effect * share;
  const { wage } = look.snapshot.farm;
  const worked = { forecast, own: own !== null, p, cost, loss, covers, wage, share };
  const because = [...reasons(worked, night), ...beneath(place, forecast)];
  const stay = stands(look, 'cover', place.id) ? STAY_ASKED : 1;
  const worth = loss > 0 && worthActing({ probability: probability(p), cost: cost * stay, loss });
  if (worth && forecast.method === 'wide-default' && p < FAR_TAIL) {
    return unknown(['own-nights'], because);
  }
  if (!worth) {
    // A probe elsewhere can call for covers; it can't say that this hollow is safe.
    return own === null ? unknown(['night-forecast'], because) : leave(...because);
  }
  return act(because, {
    minutes: covers.minutes / 2,
    from,
    doBy: dueBy(forecast, night, look.now, covers.damage, covers.minutes / 2),
    saves: { amount: null, money: p * loss - cost },
    alarm: presses(look, place, forecast, night, covers.damage) ? 'frost' : null,
  });
}

/** The coldest forecast of the place's own probes in the open; null where none hangs. */
export function openForecast({ forecasts }: Look, place: PlaceNow): NightForecast | null {
  let coldest: NightForecast | null = null;
  for (const forecast of forecasts) {
    if (forecast.place !== place.id || !IN_THE_OPEN.includes(forecast.spot)) continue;
    if (coldest === null || forecast.low.mean < coldest.low.mean) coldest = forecast;
  }
  return coldest;
}

/** Share of what hangs there that is lost on a night on which any is; a tenth at the least. */
function shareWhenHurt({ low }: NightForecast, p: number | null, damage: number): number {
  const chance = Math.max(p ?? 0, probabilityBelow(low, celsius(damage)));
  const lost = damageShare({ ...low, mean: celsius(low.mean) }, damage);
  return chance <= 0 ? LEAST_LOST : Math.min(1, Math.max(LEAST_LOST, lost / chance));
}

type Worked = {
  readonly forecast: NightForecast;
  /** The forecast is for the patch itself. */
  readonly own: boolean;
  readonly p: number;
  readonly cost: number;
  readonly loss: number;
  readonly covers: NonNullable<PlaceNow['cover']>;
  readonly wage: number;
  /** Of the value, lost on a night on which any is. */
  readonly share: number;
};

function reasons(worked: Worked, night: Night): readonly Evidence[] {
  const { forecast, own, p, cost, loss, covers, wage, share } = worked;
  const { low, crossesAt, method } = forecast;
  const breakEven = loss > 0 ? (100 * cost) / loss : null;
  const source = method === 'wide-default' || method === 'station' ? OURS : FROST_BOOK;
  const chance = by(
    // A forecast of its own knows what the night has shown; one from elsewhere is only a spread.
    own ? 'nightForecast' : 'probabilityBelow',
    put('tonight-low', low.mean, '°C'),
    put('spread', low.sd, 'K'),
    put('degrees-of-freedom', low.df),
    put('damage-below', covers.damage, '°C'),
    put('cost', cost, 'money'),
    put('value-at-risk', loss, 'money'),
  );
  const stakes = by(
    'worthActing',
    put('probability', p),
    put('value', covers.value, 'money'),
    put('share-prevented', covers.effect),
    put('share-lost', share),
    put('work', covers.minutes, 'min'),
    put('wage', wage, 'money'),
  );
  return [
    fact('chance-of-damage', 100 * p, '%', breakEven, COST_LOSS, chance),
    fact(
      'tonight-low',
      low.mean,
      '°C',
      covers.damage,
      source,
      forecastHow(forecast),
      covers.damageFrom ?? TOLD,
    ),
    ...(crossesAt === null
      ? []
      : [
          fact(
            'damage-after-sunset',
            (crossesAt - night.set) / HOUR,
            'h',
            null,
            source,
            crossingHow(forecast, night, covers.damage),
          ),
        ]),
    fact('value-at-risk', loss, 'money', cost, TOLD, stakes),
  ];
}

/** What the covers have been worth here, and the chance that it is not enough. */
function beneath(place: PlaceNow, { low }: NightForecast): readonly Evidence[] {
  const { coverNights, cover: covers } = place;
  if (coverNights === undefined || covers === null) return [];
  const { planWith, nights } = coverGain(coverNights);
  const gain = by(
    'coverGain',
    put('clear-nights-under-cover', nights),
    put('fewest-nights', FEWEST_COVERED),
  );
  const lines = [fact('cover-gain', planWith, 'K', null, PRACTICE, gain)];
  if (nights < FEWEST_COVERED) return lines;
  const inside = by(
    'probabilityInside',
    put('tonight-low', low.mean, '°C'),
    put('spread', low.sd, 'K'),
    put('degrees-of-freedom', low.df),
    put('damage-below', covers.damage, '°C'),
    put('clear-nights-under-cover', nights),
  );
  const chance = probabilityInside(low, coverNights, covers.damage);
  const p = Math.min(SUREST, Math.max(1 - SUREST, chance));
  return [...lines, fact('chance-under-cover', 100 * p, '%', null, FROST_BOOK, inside)];
}

/** coverBy: an hour before sunset, or sooner; when that is past, in time for the crossing, or for the earliest likely one. */
function dueBy(
  forecast: NightForecast,
  night: Night,
  now: Instant,
  damage: number,
  minutes: number,
): Instant {
  const best = coverBy(night.set, forecast.crossesAt, minutes);
  if (now <= best) return best;
  const likely = forecast.fan.find(({ low }) => low < damage)?.t;
  const crosses = forecast.crossesAt ?? likely ?? night.rise;
  return instant(crosses - minutes * MINUTE);
}

/** At night, and the crossing within two hours or all but there. */
function presses(
  look: Look,
  place: PlaceNow,
  { crossesAt }: NightForecast,
  night: Night,
  damage: number,
): boolean {
  if (look.now < night.set) return false;
  const air = temperatureIn(place, look.now, IN_THE_OPEN);
  if (air !== null && air.value < celsius(damage + ALARM_NEAR)) return true;
  return crossesAt !== null && crossesAt - look.now <= ALARM_AHEAD;
}
