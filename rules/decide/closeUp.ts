import { CLEAR_GAIN } from '../air/index.ts';
import type { Answer, Evidence, Saving } from '../answer.ts';
import { probabilityBelow } from '../frost/index.ts';
import { HOUR, instant } from '../units.ts';
import { by, put, readBy, told, when } from './how.ts';
import { airIn, cropOf, type Look, outsideLow, stands } from './look.ts';
import { bySun } from './night.ts';
import { forecastHow } from './nightForecasts.ts';
import { nightVents } from './nightVents.ts';
import { act, fact, leave, NOT_KNOWN, unknown } from './say.ts';
import type { PlaceNow } from './snapshot.ts';
import {
  ENTERED,
  FROST_BOOK,
  OPEN_NIGHT,
  OURS,
  TOLD,
  TOLD_AND_OURS,
  TUNNEL_NIGHT,
  VENT_GAIN,
  WET_RULE,
} from './sources.ts';
import { gainHow, gainOf, SHUT_BEFORE_SET } from './ventWet.ts';
import { notWorthMinutes, sparedTrays } from './worth.ts';

const MINUTES_OF_WORK = 5; // common practice, no source
export const CLOSING_FROM = 3 * HOUR; // before sunset, ours
const ASKED_AFTER = 2 * HOUR; // ours: vents forgotten at dusk are worth closing early in the night
export const FLOOR = 0; // °C: the floor of a place whose crop nobody told. Ours
// The steps are ours, after Savage 1980 (closing buys 1 to 1.5 K).
export const CLEAR_OF_FLOOR = 1; // K
const FILM_KEEPS = 1.5; // K
const STAY_ASKED = 1; // K more, once asked. Ours

/**
 * Vents are to be closed before dusk, because the night outside comes near the crop's floor, and
 * the cold hours it keeps out outweigh the damp hours it keeps in. Not before the hour at which
 * somebody usually closes, and not where that spares less than its minutes cost.
 *
 * Source: a closed film tunnel keeps 1 to 1.5 K, Savage 1980, Agrochemophysica 12:5; the floor is
 * the crop's chill in the farm file, and the steps are ours.
 */
export function closeUp(look: Look, place: PlaceNow): Answer {
  if (place.opened === false) return leave(fact('vents', 'closed', '', null, ENTERED, told));
  if (look.sun === null) return unknown(['sun-times']);
  const { airing } = place;
  if (airing !== undefined && place.staysOpen !== true && look.now < airing.shuts) {
    const left = (airing.shuts - look.now) / HOUR;
    const usual = by('closeUp', when('shuts-at', airing.shuts));
    return leave(fact('usually-shut-in', left, 'h', null, TOLD, usual));
  }

  const { set } = look.sun;
  const standing = stands(look, 'close-up', place.id);
  const from = instant(set - CLOSING_FROM);
  const to = set + (standing ? ASKED_AFTER : 0);
  if (look.now < from || look.now >= to) {
    const away = (set - look.now) / HOUR;
    const how = bySun(look.snapshot, 'sunset', set);
    return leave(fact('sunset-in', away, 'h', CLOSING_FROM / HOUR, OURS, how));
  }

  const tonight = outsideLow(look);
  if (tonight === null) return unknown(['tonight-outside-low']);
  const crop = cropOf(look, place);
  const floor = crop?.chill ?? FLOOR;
  const low = tonight.low.mean;
  const against = crop?.chill == null ? OURS : TOLD_AND_OURS;
  const clear = floor + CLEAR_OF_FLOOR;
  const night = forecastHow(tonight);
  const because = [fact('tonight-outside-low', low, '°C', clear, TUNNEL_NIGHT, night, against)];
  const chance = by(
    'probabilityBelow',
    put('tonight-low', low, '°C'),
    put('spread', tonight.low.sd, 'K'),
    put('degrees-of-freedom', tonight.low.df),
    put('damage-below', floor, '°C'),
  );
  const p = probabilityBelow(tonight.low, floor);
  because.push(fact('chance-of-cold', 100 * p, '%', null, FROST_BOOK, chance));
  const how = by('closeUp', put('tonight-low', low, '°C'), put('crop-floor', floor, '°C'));
  if (low >= floor + CLEAR_OF_FLOOR + (standing ? STAY_ASKED : 0)) {
    return leave(...because, fact('stay-open-dry', low, '°C', null, OPEN_NIGHT, how));
  }
  if (low < floor - FILM_KEEPS) {
    because.push(fact('film-not-enough', floor - low, 'K', FILM_KEEPS, TUNNEL_NIGHT, how));
  }
  const { wage } = look.snapshot.farm;
  const found = nightVents(look, place);
  const saves = found === null ? NOT_KNOWN : negative(found.saves);
  // Nothing to close for where nothing stands.
  const least = found === null ? sparedTrays(place, crop, 1) : saves;
  const idle = notWorthMinutes(least, MINUTES_OF_WORK, wage);
  if (found !== null) because.push(...found.because);
  if (idle !== null) return leave(...because, idle);
  because.push(...traded(look, place));
  return act(because, {
    ...{ minutes: MINUTES_OF_WORK, saves, from },
    doBy: instant(set - SHUT_BEFORE_SET),
  });
}

const negative = ({ amount, money }: Saving): Saving => ({
  amount: amount === null ? null : -amount,
  money: money === null ? null : -money,
});

/** What closing costs: the damp of the night stays in, less what can be let out before. */
function traded(look: Look, place: PlaceNow): readonly Evidence[] {
  const lines: Evidence[] = [];
  const gain = gainOf(look, place);
  if (gain !== null && gain >= CLEAR_GAIN) {
    lines.push(fact('purge-first', gain, 'g/m³', CLEAR_GAIN, VENT_GAIN, gainHow(look, place)));
  }
  const inside = airIn(place, look.now);
  if (inside !== null && inside.humidity >= place.wet.below) {
    const read = readBy(inside.spot.probe, inside.t);
    const limit = place.wet.below;
    lines.push(fact('closed-stays-damp', inside.humidity, '%', limit, OPEN_NIGHT, read, WET_RULE));
  }
  return lines;
}
