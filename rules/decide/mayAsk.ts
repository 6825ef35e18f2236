import { CLEAR_GAIN } from '../air/index.ts';
import { probabilityBelow } from '../frost/index.ts';
import { celsius, HOUR } from '../units.ts';
import { CLEAR_OF_FLOOR, CLOSING_FROM, FLOOR } from './closeUp.ts';
import { highest } from './column.ts';
import { COVERING_FROM } from './cover.ts';
import { FROST_OUTSIDE, LEAVING_FROM } from './leaveOpen.ts';
import { airIn, cropOf, type Look, outsideLow, temperatureIn } from './look.ts';
import { AFTER_RISE } from './night.ts';
import { heatLimitOf, SUN_LEFT } from './shade.ts';
import { MOST_APART } from './shadeAhead.ts';
import type { PlaceNow } from './snapshot.ts';
import { COOLER, START_VENTING } from './ventHeat.ts';
import { gainOf, SHUT_BEFORE_SET } from './ventWet.ts';

// Most looks of a year ask for nothing. For those who walk a year of looks: the first, cheap
// conditions of the rules, without their evidence. `false` is certain while no such task stands;
// `true` only says that the rule has to be asked.

/** Whether openUp may ask. */
export function mayOpen(look: Look, place: PlaceNow): boolean {
  if (place.opened === true) return false;
  const crop = cropOf(look, place);
  const inside = temperatureIn(place, look.now);
  const outside = look.outsideTemperature;
  if (inside !== null && outside !== null) {
    const start = crop?.band?.[1] ?? START_VENTING;
    if (inside.value >= start && inside.value - outside >= COOLER) return true;
  }
  const { now, sun } = look;
  if (sun === null || now < sun.rise + AFTER_RISE || now >= sun.set - SHUT_BEFORE_SET) return false;
  const air = airIn(place, now);
  if (air === null || air.humidity < place.wet.below) return false;
  const gain = gainOf(look, place);
  return gain !== null && gain >= CLEAR_GAIN;
}

/** Whether closeUp may ask. */
export function mayClose(look: Look, place: PlaceNow): boolean {
  const { now, sun } = look;
  if (place.opened === false || sun === null) return false;
  if (now < sun.set - CLOSING_FROM || now >= sun.set) return false;
  const { airing } = place;
  if (airing !== undefined && place.staysOpen !== true && now < airing.shuts) return false;
  const tonight = outsideLow(look);
  if (tonight === null) return false;
  return tonight.low.mean < (cropOf(look, place)?.chill ?? FLOOR) + CLEAR_OF_FLOOR;
}

/** Whether leaveOpen may ask. */
export function mayLeaveOpen(look: Look, place: PlaceNow): boolean {
  const { now, sun } = look;
  if (place.staysOpen === true || sun === null) return false;
  const shuts = place.airing?.shuts ?? sun.set - SHUT_BEFORE_SET;
  if (now < shuts - LEAVING_FROM || now >= shuts) return false;
  const tonight = outsideLow(look);
  return tonight !== null && probabilityBelow(tonight.low, celsius(0)) <= FROST_OUTSIDE;
}

/** Whether cover may ask. */
export const mayCover = ({ now, sun, forecasts }: Look): boolean =>
  sun !== null &&
  forecasts.length > 0 &&
  now >= sun.night.set - COVERING_FROM &&
  now < sun.night.rise;

const A_DAY = 24 * HOUR;
/** Whether shade may ask. */
export function mayShade(look: Look, place: PlaceNow): boolean {
  const { now, sun } = look;
  const limit = heatLimitOf(cropOf(look, place));
  if (limit === null || sun === null) return false;
  if (now < sun.rise + AFTER_RISE || now > sun.set - SUN_LEFT * HOUR) return false;
  const inside = temperatureIn(place, now);
  if (inside === null) return false;
  const top = highest(inside.column, now - A_DAY, now);
  return top !== null && top.value + MOST_APART >= limit;
}
