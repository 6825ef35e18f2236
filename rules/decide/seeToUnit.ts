import type { Answer, Evidence } from '../answer.ts';
import { IDLE } from '../cooler/index.ts';
import { HOUR, instant, MINUTE } from '../units.ts';
import type { Look } from './look.ts';
import { feedHow } from './room.ts';
import { airFacts, causeFacts, coilFacts } from './roomFacts.ts';
import { offHow } from './roomPower.ts';
import { type Signs, signsOf } from './roomSigns.ts';
import { act, fact, leave, unknown } from './say.ts';
import type { PlaceNow } from './snapshot.ts';
import { MEASURED, OURS, PRACTICE, TOLD } from './sources.ts';
import { dropInRisk, sparedMoney } from './worth.ts';

const MINUTES_OF_WORK = 15; // common practice, no source
const DROP = 0.3; // ours, from no source: share of the produce's worth spared
const DUE_DRIFT = 4; // h, ours: a slow loss is for today, not for this minute

/** The cooling unit has stopped, fades, or is set wrong; or nothing cools and nobody can tell why. */
export function seeToUnit(look: Look, place: PlaceNow): Answer {
  const signs = signsOf(look, place);
  const { room, power, trouble, cause, since, wakes, aboveSince, hoursToLimit, air } = signs;
  const { now, limit, value } = room;
  if (room.air?.latest == null) return unknown(['room-temperature']);
  const because: Evidence[] = [
    fact('room-air', room.air.latest.value, '°C', limit, TOLD, feedHow(room.air)),
    ...(power.watts === null
      ? []
      : [fact('room-power', power.watts, 'W', IDLE, MEASURED, feedHow(room.power), PRACTICE)]),
    ...airFacts(signs),
    ...coilFacts(signs),
  ];
  if (trouble === null) {
    return air.known ? leave(...because) : unknown(['room-temperature-history'], because);
  }
  // Another task names the cause: the unit can't be judged meanwhile.
  if (cause === 'power' || cause === 'door' || cause === 'probe') return leave(...because);
  if (trouble === 'not-cooling' && power.offSince !== null) {
    const off = (now - power.offSince) / MINUTE;
    because.push(fact('off-minutes', off, 'min', power.pause, OURS, offHow(room, power)));
  }
  because.push(...causeFacts(signs));
  const limitAt = hoursToLimit === null ? null : instant(now + hoursToLimit * HOUR);
  const slow = trouble === 'lost-bottom' && since !== null;
  const due = slow ? instant(since + DUE_DRIFT * HOUR) : limitAt;
  return act([...because, dropInRisk(DROP)], {
    minutes: MINUTES_OF_WORK,
    doBy: aboveSince ?? due,
    saves: sparedMoney(value, DROP),
    alarm: wakes ? 'unit' : null,
  });
}

/** Whether this task stands for what is wrong with the room. */
export const unitIsAsked = ({ trouble, cause }: Signs) =>
  trouble !== null && cause !== 'power' && cause !== 'door' && cause !== 'probe';
