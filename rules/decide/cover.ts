import type { Answer, Evidence } from '../answer.ts';
import { probabilityBelow, worthActing } from '../frost/index.ts';
import { celsius, HOUR, type Instant, instant, MINUTE, probability } from '../units.ts';
import { type Look, outsideLow, stands, temperatureIn } from './look.ts';
import type { Night } from './night.ts';
import { act, fact, leave, unknown } from './say.ts';
import type { NightForecast, PlaceNow, SpotName } from './snapshot.ts';
import { COST_LOSS, ENTERED, FROST_BOOK, OURS, TOLD } from './sources.ts';

const ASKED_FROM = 5 * HOUR; // before sunset, ours
const BEFORE_SET = HOUR; // ours: covering after sunset traps less of the soil's heat
const STAY_ASKED = 0.7; // ours: once asked, until the chance is clearly under what it is worth
const ALARM_AHEAD = 2 * HOUR; // ours
const ALARM_NEAR = 0.5; // K above damage, ours: a probe's own error
// Ours: the far end of our own wide guess is no reason to work; the farm's own nights would be.
const FAR_TAIL = 0.05;
/** Spots that feel the night as the bare crop does; under a cover tells of the cover. */
export const IN_THE_OPEN: readonly SpotName[] = ['canopy', 'grass', 'air'];

/** The patch is to be covered: what tonight may take outweighs the work. */
export function cover(look: Look, place: PlaceNow): Answer {
  const { cover: covers } = place;
  if (covers === null) return leave();
  if (place.covered === true) return leave(fact('covers', 'on', '', null, ENTERED));
  if (look.sun === null) return unknown(['sun-times']);

  const { night } = look.sun;
  const from = instant(night.set - ASKED_FROM);
  if (look.now < from || look.now >= night.rise) {
    return leave(fact('sunset-in', (night.set - look.now) / HOUR, 'h', ASKED_FROM / HOUR, OURS));
  }
  const own = coldestInTheOpen(look, place);
  const forecast = own ?? outsideLow(look);
  if (forecast === null) return unknown(['night-forecast']);

  const p = own?.pBelow.p ?? probabilityBelow(forecast.low, covers.damage);
  const cost = (covers.minutes / 60) * look.snapshot.farm.wage;
  const loss = covers.value * covers.effect;
  const because = reasons(forecast, p, cost, loss, covers.damage, night);
  const share = stands(look, 'cover', place.id) ? STAY_ASKED : 1;
  const worth = loss > 0 && worthActing({ probability: probability(p), cost: cost * share, loss });
  if (worth && forecast.method === 'wide-default' && p < FAR_TAIL) {
    return unknown(['own-nights'], because);
  }
  if (!worth) {
    // A probe elsewhere can call for covers; it can't say that this hollow is safe.
    return own === null ? unknown(['night-forecast'], because) : leave(...because);
  }
  return act(because, {
    minutes: covers.minutes,
    from,
    doBy: dueBy(forecast, night, look.now, covers.damage, covers.minutes),
    saves: { amount: null, money: p * loss - cost },
    alarm: presses(look, place, forecast, night, covers.damage) ? 'frost' : null,
  });
}

function coldestInTheOpen({ forecasts }: Look, place: PlaceNow): NightForecast | null {
  let coldest: NightForecast | null = null;
  for (const forecast of forecasts) {
    if (forecast.place !== place.id || !IN_THE_OPEN.includes(forecast.spot)) continue;
    if (coldest === null || forecast.low.mean < coldest.low.mean) coldest = forecast;
  }
  return coldest;
}

function reasons(
  { low, crossesAt, method }: NightForecast,
  p: number,
  cost: number,
  loss: number,
  damage: number,
  night: Night,
): readonly Evidence[] {
  const breakEven = loss > 0 ? (100 * cost) / loss : null;
  const source = method === 'wide-default' ? OURS : FROST_BOOK;
  return [
    fact('chance-of-damage', 100 * p, '%', breakEven, COST_LOSS),
    fact('tonight-low', low.mean, '°C', damage, source),
    ...(crossesAt === null
      ? []
      : [fact('damage-after-sunset', (crossesAt - night.set) / HOUR, 'h', null, source)]),
    fact('value-at-risk', loss, 'money', cost, TOLD),
  ];
}

/** An hour before sunset; when that is past, in time for the crossing, or for the earliest likely one. */
function dueBy(
  forecast: NightForecast,
  night: Night,
  now: Instant,
  damage: number,
  minutes: number,
): Instant {
  const best = night.set - BEFORE_SET;
  if (now <= best) return instant(best);
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
