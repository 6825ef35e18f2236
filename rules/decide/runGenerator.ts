import type { Answer } from '../answer.ts';
import { HOUR, instant, MINUTE } from '../units.ts';
import type { Look } from './look.ts';
import { OUT_OF_CYCLE } from './room.ts';
import { signsOf } from './roomSigns.ts';
import { act, fact, leave, unknown } from './say.ts';
import type { PlaceNow } from './snapshot.ts';
import { MEASURED, NEWTON, OURS, TOLD } from './sources.ts';
import { dropInRisk, sparedMoney } from './worth.ts';

const MINUTES_OF_WORK = 10; // common practice, no source
const DROP = 0.5; // ours, from no source: share of the produce's worth spared

/** The cool room's supply is off: start the generator before the air reaches the limit. */
export function runGenerator(look: Look, place: PlaceNow): Answer {
  const { room, power, hoursToLimit, tauHours, aboveSince } = signsOf(look, place);
  const { now, air, setPoint, limit, value } = room;
  const warm = air?.latest?.value ?? null;
  const because = [
    ...(power.watts === null ? [] : [fact('room-power', power.watts, 'W', 10, MEASURED)]),
    ...(warm === null ? [] : [fact('room-air', warm, '°C', limit, TOLD)]),
  ];
  if (power.stopped === null) {
    // Nobody measures the supply: while the room keeps its cold that is no question to ask.
    if (warm === null) return unknown(['room-temperature', 'room-power'], because);
    return warm > setPoint + OUT_OF_CYCLE ? unknown(['room-power'], because) : leave(...because);
  }
  if (power.stopped !== 'power') return leave(...because);

  if (power.offSince !== null) {
    because.push(fact('off-minutes', (now - power.offSince) / MINUTE, 'min', power.pause, OURS));
  }
  if (hoursToLimit !== null) {
    because.push(fact('minutes-to-limit', hoursToLimit * 60, 'min', null, NEWTON));
    because.push(fact('warms-within', tauHours, 'h', null, NEWTON));
  }
  const limitAt = hoursToLimit === null ? null : instant(now + hoursToLimit * HOUR);
  return act([...because, dropInRisk(DROP)], {
    minutes: MINUTES_OF_WORK,
    doBy: aboveSince ?? limitAt,
    saves: sparedMoney(value, DROP),
    alarm: 'power',
  });
}
