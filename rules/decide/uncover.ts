import type { Answer } from '../answer.ts';
import { HOUR, type Instant, instant, MINUTE } from '../units.ts';
import { around, since } from './column.ts';
import { IN_THE_OPEN } from './cover.ts';
import { by, put, readBy, told } from './how.ts';
import { cropOf, type Look, outsideNow, stands, temperatureIn } from './look.ts';
import { bySun } from './night.ts';
import { act, fact, leave, unknown } from './say.ts';
import type { PlaceNow } from './snapshot.ts';
import { ENTERED, OURS, TOLD, TOLD_AND_OURS } from './sources.ts';

const AFTER_RISE = 30 * MINUTE; // ours
const DUE_AFTER_RISE = 3 * HOUR; // ours: light, bees and heat under covers left on
const UNTIL_SET = 5 * HOUR; // ours: later, tonight's covering is asked about instead
const CLEAR = 1; // K above damage, ours
const STAY_ASKED = 0.5; // K, ours
const HOT = 25; // °C under cover, ours from no source: flowers and fruit suffer before the grower does
const HOT_MINUTES = 30; // ours
const RISE_OVER = 30 * MINUTE; // ours: how long a rise is watched
const RISE_AHEAD = HOUR; // ours: heat that comes within the hour is worth a walk now

/** Covers come off again: the morning is past the frost, or it grows hot underneath. */
export function uncover(look: Look, place: PlaceNow): Answer {
  const { cover } = place;
  if (cover === null) return leave();
  if (place.covered === null) return unknown(['covers-on-or-off']);
  if (!place.covered) return leave(fact('covers', 'off', '', null, ENTERED, told));
  const { now, sun } = look;
  if (sun === null) return unknown(['sun-times']);

  const standing = stands(look, 'uncover', place.id);
  const under = temperatureIn(place, now, ['under-cover']);
  const limit = heatLimit(look, place);
  const hot = under !== null && under.value > limit.at - (standing ? 2 * CLEAR : 0);
  if (hot) {
    const began = since(under.column, now, (value) => value > limit.at - 2 * CLEAR, 30) ?? now;
    const due = Math.min(began + HOT_MINUTES * MINUTE, sun.rise + DUE_AFTER_RISE);
    return asked(place, instant(Math.max(due, sun.rise + AFTER_RISE)), [
      fact(
        'under-cover',
        under.value,
        '°C',
        limit.at,
        limit.from,
        readBy(under.spot.probe, under.t),
      ),
    ]);
  }
  const rising = under === null || now < sun.rise ? null : hotAt(under, now, limit.at);
  if (rising !== null && now < sun.set - UNTIL_SET) {
    const { value, rate, at } = rising;
    const how = by('hotAt', put('under-cover', value, '°C'), put('rise', rate, '°C/h'));
    return asked(place, instant(Math.max(at, sun.rise + AFTER_RISE)), [
      fact('under-cover-rising', (at - now) / MINUTE, 'min', null, OURS, how),
      fact('under-cover', value, '°C', limit.at, limit.from, readBy(rising.probe, rising.t)),
    ]);
  }
  if (now < sun.rise + AFTER_RISE || now >= sun.set - UNTIL_SET) {
    const how = bySun(look.snapshot, 'sunrise', sun.rise);
    const past = (now - sun.rise) / HOUR;
    return leave(fact('since-sunrise', past, 'h', AFTER_RISE / HOUR, OURS, how));
  }

  const air = temperatureIn(place, now, IN_THE_OPEN) ?? outsideNow(look.snapshot);
  if (air === null) return unknown(['outside-temperature']);
  const clear = cover.damage + CLEAR;
  const read = readBy(air.spot.probe, air.t);
  const because = [fact('open-air', air.value, '°C', clear, OURS, read, TOLD_AND_OURS)];
  if (standing) {
    const warm = air.value >= cover.damage + STAY_ASKED;
    return warm ? asked(place, instant(sun.rise + DUE_AFTER_RISE), because) : leave(...because);
  }
  const before = around(air.column, now - 30 * MINUTE, now);
  if (before === null) return unknown(['outside-temperature-earlier'], because);
  if (air.value < clear || air.value < before) return leave(...because);
  return asked(place, instant(sun.rise + DUE_AFTER_RISE), because);
}

/** Where heat under a cover begins to hurt: the crop's own limit where it is the lower one. */
function heatLimit(look: Look, place: PlaceNow) {
  const told = cropOf(look, place)?.heatLimit ?? null;
  return told !== null && told < HOT ? { at: told, from: TOLD } : { at: HOT, from: OURS };
}

/**
 * When it will be too hot under the covers, if it goes on rising as in the last half hour; null
 * when that is more than an hour off, or it does not rise.
 *
 * Source: a straight line through two readings; how far it is drawn is ours.
 */
export function hotAt(under: Under, now: Instant, limit: number) {
  const before = around(under.column, now - RISE_OVER, now);
  if (before === null) return null;
  const rate = (under.value - before) / (RISE_OVER / HOUR);
  if (!(rate > 0)) return null;
  const at = now + ((limit - under.value) / rate) * HOUR;
  if (at - now > RISE_AHEAD) return null;
  return { at, rate, value: under.value, probe: under.spot.probe, t: under.t };
}
type Under = NonNullable<ReturnType<typeof temperatureIn>>;

const asked = (place: PlaceNow, doBy: Instant, because: Parameters<typeof act>[0]) =>
  act(because, { minutes: (place.cover?.minutes ?? 0) / 2, doBy });
