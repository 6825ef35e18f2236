import type { Answer, Evidence } from '../answer.ts';
import { type Instant, instant, MINUTE } from '../units.ts';
import { by, put, when } from './how.ts';
import { type Look, stands } from './look.ts';
import { produceHow } from './produce.ts';
import { coverage, ENOUGH, feedHow } from './room.ts';
import { limitHow, type Signs, signsOf } from './roomSigns.ts';
import { act, fact, leave, unknown } from './say.ts';
import type { PlaceNow } from './snapshot.ts';
import { NEWTON, OURS, TOLD } from './sources.ts';
import { dropInRisk, sparedMoney } from './worth.ts';

const MINUTES_OF_WORK = 30; // common practice, no source: carry a small room's crates elsewhere
const COMING_FOR = 360; // minutes that a room may take to cool a load before it is asked about. Ours
const SOON = 60; // minutes to the limit, ours
const BACK_BY = 0.4; // K under the limit, common practice: an alarm re-arms 0.3 to 0.5 K inside
const SEEN = 60; // minutes that have to be known before a short excess is called short. Ours
const DROP = 0.5; // ours, from no source: share of the produce's worth spared

/** The room's air is over its limit, or will be within the hour and nothing turns it back. */
export function moveProduce(look: Look, place: PlaceNow): Answer {
  const signs = signsOf(look, place);
  const { room, state, power, recovering, hoursToLimit, trouble } = signs;
  const { air, limit, now, habits, value } = room;
  if (air?.latest == null) return unknown(['room-temperature']);

  const warm = air.latest.value;
  const because = reasons(signs, warm);
  const soon = hoursToLimit !== null && hoursToLimit * 60 < SOON && !recovering;
  // A cycle that creeps up still turns back each time; only a room without cooling races to the limit.
  const off = power.stopped !== null && power.stopped !== false;
  const { above } = signs.air;
  const stopped =
    off || (trouble === 'stalled' && above !== null && !above.falling && !above.steep);
  const races = soon && stopped;
  const stays = stands(look, 'move-produce', place.id) && warm > limit - BACK_BY;
  // A load or the end of a stop that is being cooled is no alarm, for as long as it can be that.
  const cooled = signs.air.pullDown;
  const coming = cooled !== null && now - cooled.since < COMING_FOR * MINUTE;
  if ((state === 'warm' && !coming) || races || stays) {
    return act([...because, dropInRisk(DROP)], {
      minutes: MINUTES_OF_WORK,
      doBy: dueBy(signs),
      saves: sparedMoney(value, DROP),
      alarm: 'warm',
    });
  }
  const suspicious = warm > habits.line;
  if (suspicious && coverage(air, now, SEEN) < ENOUGH) {
    return unknown(['room-temperature-history'], because);
  }
  return leave(...because);
}

/** In time to be done before the produce reaches the limit; when it has, since the air has. */
function dueBy({ produceAt, aboveSince, room }: Signs): Instant | null {
  if (produceAt === null) return aboveSince;
  if (produceAt <= room.now) return aboveSince ?? room.now;
  return instant(produceAt - MINUTES_OF_WORK * MINUTE);
}

function reasons(signs: Signs, warm: number): readonly Evidence[] {
  const { room, produce, hoursToLimit, aboveSince } = signs;
  const above = aboveSince === null ? null : (room.now - aboveSince) / MINUTE;
  return [
    fact('room-air', warm, '°C', room.limit, TOLD, feedHow(room.air)),
    ...(above === null
      ? []
      : [
          fact(
            'above-limit-minutes',
            above,
            'min',
            null,
            OURS,
            by(
              'since',
              put('limit', room.limit, '°C'),
              when('above-since', aboveSince),
              when('now', room.now),
              put('probe', room.air?.probe ?? null),
            ),
          ),
        ]),
    ...(produce === null
      ? []
      : [fact('produce-estimate', produce, '°C', room.limit, NEWTON, produceHow(room), TOLD)]),
    ...(hoursToLimit === null || hoursToLimit === 0
      ? []
      : [fact('minutes-to-limit', hoursToLimit * 60, 'min', null, NEWTON, limitHow(signs))]),
  ];
}
