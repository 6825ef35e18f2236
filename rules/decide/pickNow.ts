import type { Answer, Evidence } from '../answer.ts';
import { probabilityBelow, worthActing } from '../frost/index.ts';
import { celsius, HOUR, type Instant, instant, MINUTE, probability } from '../units.ts';
import { openForecast } from './cover.ts';
import { by, put } from './how.ts';
import { type Look, outsideLow, stands } from './look.ts';
import { bySun, type Night } from './night.ts';
import { forecastHow } from './nightForecasts.ts';
import { RAIN, rainAhead, rainFact } from './rainAhead.ts';
import { act, fact, leave, unknown } from './say.ts';
import type { NightForecast, PlaceNow } from './snapshot.ts';
import { COST_LOSS, FROST_BOOK, OURS, TOLD } from './sources.ts';

const ASKED_FROM = 7 * HOUR; // before sunset, ours: picking takes longer than covering
const STAY_ASKED = 0.7; // ours: once asked, until the chance is clearly under what it is worth
const STAY_RAIN = 3; // mm; ours

/**
 * What is ripe is to be picked before a night that may take it, or before rain that somebody
 * foretells: only where the farm file says that ripe produce hangs there at this time of the year.
 *
 * Source: the cost-loss rule, Murphy 1977, Monthly Weather Review 105:803, for frost; the amount
 * of rain and the hours in which it is asked are ours.
 */
export function pickNow(look: Look, place: PlaceNow): Answer {
  const { picking } = place;
  if (picking == null) return leave();
  const rain = rainAhead(look);
  const standing = stands(look, 'pick-now', place.id);
  if (rain !== null && rain.sum >= (standing ? STAY_RAIN : RAIN)) {
    return act([rainFact(rain), ripe(place)], {
      minutes: picking.minutes,
      doBy: rain.begins,
      saves: { amount: null, money: null }, // how much of it rain spoils nobody has told
    });
  }
  if (look.sun === null) return unknown(['sun-times']);
  const { night } = look.sun;
  const from = instant(night.set - ASKED_FROM);
  if (look.now < from || look.now >= night.rise) {
    const away = (night.set - look.now) / HOUR;
    const how = bySun(look.snapshot, 'sunset', night.set);
    return leave(fact('sunset-in', away, 'h', ASKED_FROM / HOUR, OURS, how));
  }
  return frostTonight(look, place, night, from, standing);
}

function frostTonight(
  look: Look,
  place: PlaceNow,
  night: Night,
  from: Instant,
  standing: boolean,
): Answer {
  const { picking } = place;
  if (picking == null) return leave();
  const own = openForecast(look, place);
  const forecast = own ?? outsideLow(look);
  if (forecast === null) return unknown(['night-forecast']);
  const p = chanceOf(forecast, picking.damage);
  const cost = (picking.minutes / 60) * look.snapshot.farm.wage;
  const because = [
    chanceFact(look, place, forecast, p, cost),
    fact(
      'tonight-low',
      forecast.low.mean,
      '°C',
      picking.damage,
      FROST_BOOK,
      forecastHow(forecast),
      picking.damageFrom,
    ),
    ripe(place),
  ];
  const loss = picking.value;
  const share = standing ? STAY_ASKED : 1;
  const worth = loss > 0 && worthActing({ probability: probability(p), cost: cost * share, loss });
  const guess = forecast.method === 'wide-default' || forecast.method === 'station';
  if (worth && guess && p < 0.05) return unknown(['own-nights'], because);
  // A probe elsewhere can call for picking; it can't say that this hollow is safe.
  if (!worth) return own === null ? unknown(['night-forecast'], because) : leave(...because);
  const cross = forecast.limits.find(({ at }) => at === picking.damage)?.crossesAt ?? null;
  const latest = Math.min(night.set, cross ?? night.set) - picking.minutes * MINUTE;
  return act(because, {
    minutes: picking.minutes,
    from,
    doBy: instant(latest),
    saves: { amount: null, money: p * loss - cost },
  });
}

/** Chance below the limit of what is ripe: seen already, or as forecast. */
function chanceOf({ low, limits, pBelow }: NightForecast, damage: number): number {
  const told = [pBelow, ...limits].find(({ at }) => at === damage);
  return told?.p ?? probabilityBelow(low, celsius(damage));
}

function chanceFact(
  look: Look,
  place: PlaceNow,
  { low }: NightForecast,
  p: number,
  cost: number,
): Evidence {
  const { picking } = place;
  const value = picking?.value ?? 0;
  const how = by(
    'pickNow',
    put('tonight-low', low.mean, '°C'),
    put('spread', low.sd, 'K'),
    put('degrees-of-freedom', low.df),
    put('damage-below', picking?.damage ?? null, '°C'),
    put('cost', cost, 'money'),
    put('wage', look.snapshot.farm.wage, 'money'),
    put('value', value, 'money'),
  );
  const breakEven = value > 0 ? (100 * cost) / value : null;
  return fact('chance-for-ripe', 100 * p, '%', breakEven, COST_LOSS, how);
}

const ripe = ({ picking }: PlaceNow): Evidence => {
  const how = by('pickNow', put('work', picking?.minutes ?? null, 'min'));
  return fact('ripe-value', picking?.value ?? null, 'money', null, TOLD, how);
};
