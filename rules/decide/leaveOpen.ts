import type { Answer } from '../answer.ts';
import { probabilityBelow } from '../frost/index.ts';
import { celsius, HOUR, instant } from '../units.ts';
import { by, put, told } from './how.ts';
import { type Look, outsideLow, stands } from './look.ts';
import { bySun } from './night.ts';
import { forecastHow } from './nightForecasts.ts';
import { nightVents } from './nightVents.ts';
import { act, fact, leave, unknown } from './say.ts';
import type { PlaceNow } from './snapshot.ts';
import { ENTERED, FROST_BOOK, OURS } from './sources.ts';
import { SHUT_BEFORE_SET } from './ventWet.ts';

/** Tells this task from opening up by day; its key says so. */
export const TONIGHT = 'tonight';
const MINUTES_OF_WORK = 5; // of opening, as in openUp
const A_WALK = 5; // min of shutting, and of opening again in the morning. Common practice, no source
export const LEAVING_FROM = 3 * HOUR; // before the usual shutting; ours
const ASKED_AFTER = HOUR; // ours
export const FROST_OUTSIDE = 0.1; // chance of frost outside at which nobody is told to leave a house open; ours

/**
 * The vents are to stay open tonight: the damp hours it ends outweigh the cold it lets in, with the
 * minutes of shutting and opening again that it spares where somebody usually shuts. Never where
 * the chance of frost outside is over 10 %, and never where what stands there is not known.
 *
 * Source: open vents at night cut damp hours and grey mould, Abreu et al. 1994, Acta Horticulturae
 * 366:195, in mild winters; what is weighed is named by nightVents; the limits are ours.
 */
export function leaveOpen(look: Look, place: PlaceNow): Answer {
  const { now, sun, snapshot } = look;
  if (place.staysOpen === true) return leave(fact('vents', 'open', '', null, ENTERED, told));
  if (sun === null) return unknown(['sun-times']);
  const shuts = place.airing?.shuts ?? sun.set - SHUT_BEFORE_SET;
  const standing = stands(look, 'open-up', place.id, TONIGHT);
  const from = instant(shuts - LEAVING_FROM);
  if (now < from || now >= shuts + (standing ? ASKED_AFTER : 0)) {
    const how = bySun(snapshot, 'sunset', sun.set);
    return leave(fact('sunset-in', (sun.set - now) / HOUR, 'h', null, OURS, how));
  }
  const tonight = outsideLow(look);
  // Nothing is lost by not saying it: who shuts every night goes on doing so.
  if (tonight === null) return leave();
  const low = tonight.low.mean;
  const p = probabilityBelow(tonight.low, celsius(0));
  const because = [
    fact('tonight-outside-low', low, '°C', null, FROST_BOOK, forecastHow(tonight)),
    fact('chance-of-frost', 100 * p, '%', 100 * FROST_OUTSIDE, OURS, forecastHow(tonight)),
  ];
  if (p > FROST_OUTSIDE) return leave(...because);
  const found = nightVents(look, place);
  if (found === null || found.saves.money === null) return leave(...because);
  const { wage } = snapshot.farm;
  const work = place.opened === true ? 0 : MINUTES_OF_WORK;
  const spared = place.airing === undefined ? 0 : 2 * A_WALK;
  const money = found.saves.money + ((spared - work) / 60) * wage;
  const how = by('leaveOpen', put('work', spared, 'min'), put('wage', wage, 'money'));
  because.push(...found.because);
  if (spared > 0) because.push(fact('minutes-spared', spared, 'min', null, OURS, how));
  if (money <= 0 || (found.drier === null && spared === 0)) return leave(...because);
  return act(because, {
    ...{ minutes: work, from, doBy: instant(shuts) },
    saves: { amount: found.saves.amount, money: found.saves.money + (spared / 60) * wage },
  });
}
