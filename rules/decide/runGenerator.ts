import type { Answer } from '../answer.ts';
import { HOUR, instant, MINUTE } from '../units.ts';
import { by, put, when } from './how.ts';
import type { Look } from './look.ts';
import { feedHow, OUT_OF_CYCLE } from './room.ts';
import { IDLE, offHow } from './roomPower.ts';
import { limitHow, signsOf } from './roomSigns.ts';
import { act, fact, leave, unknown } from './say.ts';
import type { PlaceNow } from './snapshot.ts';
import { MEASURED, NEWTON, OURS, PRACTICE, TOLD } from './sources.ts';
import { dropInRisk, sparedMoney } from './worth.ts';

const MINUTES_OF_WORK = 10; // common practice, no source
const DROP = 0.5; // ours, from no source: share of the produce's worth spared

/** The cool room's supply is off: start the generator before the air reaches the limit. */
export function runGenerator(look: Look, place: PlaceNow): Answer {
  const signs = signsOf(look, place);
  const { room, power, hoursToLimit, tauHours, aboveSince } = signs;
  const { now, air, setPoint, limit, value } = room;
  const warm = air?.latest?.value ?? null;
  const because = [
    ...(power.watts === null
      ? []
      : [fact('room-power', power.watts, 'W', IDLE, MEASURED, feedHow(room.power), PRACTICE)]),
    ...(warm === null ? [] : [fact('room-air', warm, '°C', limit, TOLD, feedHow(air))]),
  ];
  if (power.stopped === null) {
    // Nobody measures the supply: while the room keeps its cold that is no question to ask.
    if (warm === null) return unknown(['room-temperature', 'room-power'], because);
    return warm > setPoint + OUT_OF_CYCLE ? unknown(['room-power'], because) : leave(...because);
  }
  if (power.stopped !== 'power') return leave(...because);

  if (power.offSince !== null) {
    const off = (now - power.offSince) / MINUTE;
    because.push(fact('off-minutes', off, 'min', power.pause, OURS, offHow(room, power)));
  }
  if (hoursToLimit !== null) {
    const minutes = hoursToLimit * 60;
    const outside = put('warmest-outside-ahead', room.warmestAhead, '°C');
    const learned = by('timeConstant', outside, when('now', now));
    because.push(fact('minutes-to-limit', minutes, 'min', null, NEWTON, limitHow(signs)));
    because.push(fact('warms-within', tauHours, 'h', null, NEWTON, learned));
  }
  const limitAt = hoursToLimit === null ? null : instant(now + hoursToLimit * HOUR);
  return act([...because, dropInRisk(DROP)], {
    minutes: MINUTES_OF_WORK,
    doBy: aboveSince ?? limitAt,
    saves: sparedMoney(value, DROP),
    alarm: 'power',
  });
}
