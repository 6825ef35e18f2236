import type { Answer } from '../answer.ts';
import { freezingNow } from '../cooler/index.ts';
import { celsius, instant, MINUTE } from '../units.ts';
import { readAt, within } from './column.ts';
import { by, put, when } from './how.ts';
import { type Look, stands, temperatureIn } from './look.ts';
import { silentAfter } from './room.ts';
import { act, fact, leave, unknown } from './say.ts';
import { PRACTICE } from './sources.ts';

const MINUTES_OF_WORK = 15; // ours, from no source
const LOOKED_AT = 60; // minutes of readings
const ICE = 0; // °C; leaves freeze a little below
const BACK_BY = 0.4; // K, common practice: an alarm re-arms 0.3 to 0.5 K inside its limit

/**
 * Lots lie in a room whose probe has been below 0 °C for a quarter of an hour: as urgent as too warm.
 * The probe in a crate speaks before the one in the air.
 *
 * Source: below 0.0 °C for 15 minutes with leaves stored, common practice, no source.
 */
export function freezing(look: Look, room: string): Answer {
  const place = look.snapshot.places.find(({ id }) => id === room);
  const found = place && temperatureIn(place, look.now, ['product', 'air', 'canopy']);
  if (!found) return unknown(['room-temperature']);
  const { column, spot, value, t } = found;
  const readings = [];
  const window = within(column, look.now - LOOKED_AT * MINUTE, look.now);
  for (let i = window.from; i < window.to; i++) {
    const read = readAt(column, i);
    if (read !== null) readings.push({ t: read.t, value: celsius(read.value) });
  }
  const now = freezingNow(readings, look.now, { gapMaxMinutes: silentAfter(spot.every) });
  const how = by(
    'freezingNow',
    put('probe', spot.probe),
    when('read-at', t),
    put('room-or-crate', value, '°C'),
  );
  const because = [fact('stored-freezing', value, '°C', ICE, PRACTICE, how)];
  const stays = stands(look, 'move-produce', room, 'freezing') && value < ICE + BACK_BY;
  if (now === true || stays)
    return act(because, { minutes: MINUTES_OF_WORK, doBy: instant(look.now), alarm: 'frost' });
  return leave(...because);
}
