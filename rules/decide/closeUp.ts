import { CLEAR_GAIN } from '../air/index.ts';
import type { Answer, Evidence } from '../answer.ts';
import { HOUR, instant } from '../units.ts';
import { airIn, cropOf, type Look, outsideLow, stands } from './look.ts';
import { act, fact, leave, unknown } from './say.ts';
import type { PlaceNow } from './snapshot.ts';
import { ENTERED, OPEN_NIGHT, OURS, TUNNEL_NIGHT, VENT_GAIN } from './sources.ts';
import { gainOf, SHUT_BEFORE_SET } from './ventWet.ts';
import { dropInRisk, sparedTrays } from './worth.ts';

const MINUTES_OF_WORK = 5; // common practice, no source
const ASKED_FROM = 3 * HOUR; // before sunset, ours
const ASKED_AFTER = 2 * HOUR; // ours: vents forgotten at dusk are worth closing early in the night
const FROST = 0; // °C: the floor of a place whose crop nobody told. Ours
// The steps are ours, after Savage 1980 (closing buys 1 to 1.5 K).
const CLEAR_OF_FLOOR = 1; // K
const FILM_KEEPS = 1.5; // K
const STAY_ASKED = 1; // K more, once asked. Ours
const DROP = 0.2; // ours, from no source: share of the trays' worth spared

/** Vents are to be closed before dusk, because the night outside comes near the crop's floor. */
export function closeUp(look: Look, place: PlaceNow): Answer {
  if (place.opened === false) return leave(fact('vents', 'closed', '', null, ENTERED));
  if (look.sun === null) return unknown(['sun-times']);

  const { set } = look.sun;
  const standing = stands(look, 'close-up', place.id);
  const from = instant(set - ASKED_FROM);
  const to = set + (standing ? ASKED_AFTER : 0);
  if (look.now < from || look.now >= to) {
    return leave(fact('sunset-in', (set - look.now) / HOUR, 'h', ASKED_FROM / HOUR, OURS));
  }

  const tonight = outsideLow(look);
  if (tonight === null) return unknown(['tonight-outside-low']);
  const crop = cropOf(look, place);
  const floor = crop?.chill ?? FROST;
  const low = tonight.low.mean;
  const because = [fact('tonight-outside-low', low, '°C', floor + CLEAR_OF_FLOOR, TUNNEL_NIGHT)];
  if (low >= floor + CLEAR_OF_FLOOR + (standing ? STAY_ASKED : 0)) {
    return leave(...because, fact('stay-open-dry', low, '°C', null, OPEN_NIGHT));
  }
  if (low < floor - FILM_KEEPS) {
    because.push(fact('film-not-enough', floor - low, 'K', FILM_KEEPS, TUNNEL_NIGHT));
  }
  because.push(...traded(look, place), dropInRisk(DROP));
  return act(because, {
    minutes: MINUTES_OF_WORK,
    from,
    doBy: instant(set - SHUT_BEFORE_SET),
    saves: sparedTrays(place, crop, DROP),
  });
}

/** What closing costs: the damp of the night stays in, less what can be let out before. */
function traded(look: Look, place: PlaceNow): readonly Evidence[] {
  const lines: Evidence[] = [];
  const gain = gainOf(look, place);
  if (gain !== null && gain >= CLEAR_GAIN) {
    lines.push(fact('purge-first', gain, 'g/m³', CLEAR_GAIN, VENT_GAIN));
  }
  const inside = airIn(place, look.now);
  if (inside !== null && inside.humidity >= place.wet.below) {
    lines.push(fact('closed-stays-damp', inside.humidity, '%', place.wet.below, OPEN_NIGHT));
  }
  return lines;
}
