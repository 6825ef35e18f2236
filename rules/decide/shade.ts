import type { Answer, Decision, Evidence } from '../answer.ts';
import { heatLoad } from '../days/index.ts';
import { celsius, HOUR, type Instant, instant, MINUTE } from '../units.ts';
import { around, highest, readAt, since, within } from './column.ts';
import { by, put, readBy, told, when } from './how.ts';
import { cropOf, type Look, stands, temperatureIn } from './look.ts';
import { AFTER_RISE, bySun } from './night.ts';
import { act, fact, leave, unknown } from './say.ts';
import { heatAhead, MOST_APART } from './shadeAhead.ts';
import type { Column, PlaceNow } from './snapshot.ts';
import { ENTERED, FORETOLD, OURS, TOLD, TOLD_AND_OURS } from './sources.ts';
import { dropInRisk, sparedTrays } from './worth.ts';

// All ours, from no source.
const LOAD = 3; // °C h over the limit in a day, as in heatLoad
const LOAD_STANDING = 2; // °C h: once asked, asked until it is less
const STILL_TO_COME = 1; // °C h: shade that comes after the heat is carried for nothing
export const SUN_LEFT = 3; // h before sunset: later the sun is too low to heat a house much
const MINUTES_OF_WORK = 20; // common practice, no source
const DROP = 0.2; // share of the trays' worth
const LIMIT_ABOVE_BAND = 6; // K, where no limit is told; as in heatIn
const A_DAY = 24 * HOUR;

/** The crop's heat limit, °C: as told, else 6 K above its band; null where neither is told. */
export const heatLimitOf = (
  crop: {
    readonly heatLimit: number | null;
    readonly band: readonly [number, number] | null;
  } | null,
): number | null =>
  crop?.heatLimit ?? (crop?.band == null ? null : crop.band[1] + LIMIT_ABOVE_BAND);

/**
 * A house is to be shaded: heat over the crop's limit for long enough (3 °C h in the day, by what
 * was read today and what is still to come), sun ahead, and the vents open already, or outside air
 * no cooler. What is still to come is yesterday's rest of the day, moved by how much warmer it is
 * than yesterday at this hour, or by a pushed forecast. It is taken off again in the evening.
 *
 * Source: heat over the limit summed by heatLoad; limits of load and hours are ours, from no
 * source; the heat limit is told in the farm file.
 * @param opening what the rule on opening says of the same place; null where it has no vents
 */
export function shade(look: Look, place: PlaceNow, opening: Decision | null): Answer {
  const { now, sun, snapshot } = look;
  const crop = cropOf(look, place);
  const limit = heatLimitOf(crop);
  if (limit === null) return leave();
  if (place.shaded === true) return leave(fact('shaded', 'yes', '', null, ENTERED, told));
  if (sun === null) return unknown(['sun-times']);
  const left = (sun.set - now) / HOUR;
  if (now < sun.rise + AFTER_RISE || left < SUN_LEFT) {
    const late = now >= sun.rise + AFTER_RISE;
    const how = bySun(snapshot, late ? 'sunset' : 'sunrise', late ? sun.set : sun.rise);
    return leave(fact('sun-ahead', Math.max(0, left), 'h', SUN_LEFT, OURS, how));
  }
  const inside = temperatureIn(place, now);
  if (inside === null) return unknown(['inside-temperature']);

  // Far from any heat, by yesterday and today: most looks of a year end here.
  const top = highest(inside.column, now - A_DAY, now);
  const yesterday = around(inside.column, now - A_DAY, now);
  if (top !== null && yesterday !== null && top.value + MOST_APART < limit)
    return leave(
      fact('heat-now', inside.value, '°C', limit, TOLD, readBy(inside.spot.probe, inside.t)),
    );

  const { begins } = snapshot.day;
  const read = readsOf(inside.column, begins - A_DAY, now);
  const soFar = heatLoad(read, limit, { from: begins, to: now });
  const source = crop?.heatLimit === null ? TOLD_AND_OURS : TOLD;
  const loadHow = by('heatLoad', put('probe', inside.spot.probe), put('limit', limit, '°C'));
  const because: Evidence[] = [
    fact('heat-now', inside.value, '°C', limit, source, readBy(inside.spot.probe, inside.t)),
    fact('heat-so-far', soFar.degreeHours[0], '°C h', null, OURS, loadHow),
  ];
  const ahead = heatAhead(look, inside.column, limit);
  if (ahead === null) return unknown(['yesterday-at-this-hour'], because);
  const how = by(
    'heatAhead',
    put('probe', inside.spot.probe),
    put('limit', limit, '°C'),
    put('warmer-than-yesterday', ahead.warmer, 'K'),
    when('now', now),
  );
  const from = ahead.by === 'forecast' ? FORETOLD : OURS;
  const load = soFar.degreeHours[0] + ahead.degreeHours;
  const least = stands(look, 'shade', place.id) ? LOAD_STANDING : LOAD;
  because.push(fact('heat-ahead', ahead.degreeHours, '°C h', STILL_TO_COME, from, how, OURS));
  because.push(fact('heat-of-the-day', load, '°C h', LOAD, from, how, OURS));
  because.push(fact('hottest-ahead', ahead.hottest, '°C', limit, from, how, source));
  if (load < least || ahead.degreeHours < STILL_TO_COME) return leave(...because);

  if (place.vents && place.opened !== true && !wouldNotCool(opening)) {
    const air = by('vents', put('open-up', opening?.verdict ?? 'leave'));
    return leave(...because, fact('open-up-first', null, '', null, OURS, air));
  }
  const off = bySun(snapshot, 'sunset', sun.set);
  because.push(fact('shade-off-in-the-evening', left, 'h', null, OURS, off), dropInRisk(DROP));
  return act(because, {
    minutes: MINUTES_OF_WORK,
    doBy: dueBy(inside.column, limit, now, ahead.crosses),
    saves: sparedTrays(place, crop, DROP),
  });
}

const readsOf = (column: Column, from: number, to: number) => {
  const window = within(column, from, to);
  const reads = [];
  for (let i = window.from; i < window.to; i++) {
    const read = readAt(column, i);
    if (read !== null) reads.push({ t: read.t, temperature: celsius(read.value) });
  }
  return reads;
};

/** The rule on opening looked at the air outside, and it is not cooler. */
const wouldNotCool = (opening: Decision | null) =>
  opening?.verdict === 'leave' &&
  opening.because.some(
    ({ what, value, limit }) => what === 'outside-cooler-by' && Number(value) < Number(limit),
  );

/** Before the heat comes; an hour after it came, where it is there already. */
function dueBy(column: Column, limit: number, now: Instant, crosses: Instant | null): Instant {
  const over = since(column, now, (value) => value > limit, 30);
  if (over !== null) return instant(over + HOUR);
  return instant(Math.max(now + 15 * MINUTE, crosses ?? now + HOUR));
}
