import type { Answer, Evidence } from '../answer.ts';
import { IDLE } from '../cooler/index.ts';
import { HOUR, instant, MINUTE } from '../units.ts';
import { by, put, when } from './how.ts';
import { type Look, stands } from './look.ts';
import { feedHow } from './room.ts';
import { planFacts, planOf } from './roomPlan.ts';
import { offHow } from './roomPower.ts';
import { limitHow, type Signs, signsOf } from './roomSigns.ts';
import { act, fact, leave, unknown } from './say.ts';
import type { PlaceNow } from './snapshot.ts';
import { MEASURED, NEWTON, OURS, PRACTICE, TOLD } from './sources.ts';
import { dropInRisk, sparedMoney } from './worth.ts';

const MINUTES_OF_WORK = 10; // common practice, no source
const WAKES = 60; // minutes to the limit in a planned stop, ours
const ASKED_MARGIN = 20; // minutes by which the plan must better once it was asked for. Ours
const DROP = 0.5; // ours, from no source: share of the produce's worth spared

/** The cool room's supply is off: start the generator before the air reaches the limit. */
export function runGenerator(look: Look, place: PlaceNow): Answer {
  const signs = signsOf(look, place);
  const { room, power, hoursToLimit, tauHours, aboveSince } = signs;
  const { now, air, habits, limit, value, supply } = room;
  const warm = air?.latest?.value ?? null;
  const because: Evidence[] = [
    ...(power.watts === null
      ? []
      : [fact('room-power', power.watts, 'W', IDLE, MEASURED, feedHow(room.power), PRACTICE)]),
    ...(warm === null ? [] : [fact('room-air', warm, '°C', limit, TOLD, feedHow(air))]),
  ];
  if (!supply.on) return plannedStop(look, signs, because);
  if (power.watts === null) {
    // Nobody measures the supply: while the room keeps its cold that is no question to ask.
    if (warm === null) return unknown(['room-temperature', 'room-power'], because);
    return warm > habits.line ? unknown(['room-power'], because) : leave(...because);
  }
  if (power.stopped !== 'power') return leave(...because);

  if (power.offSince !== null) {
    const off = (now - power.offSince) / MINUTE;
    because.push(fact('off-minutes', off, 'min', power.pause, OURS, offHow(room, power)));
  }
  if (hoursToLimit !== null) {
    const minutes = hoursToLimit * 60;
    const outside = put('warmest-outside-ahead', room.warmestAhead, '°C');
    const learned = by('holdOver', outside, when('now', now));
    because.push(fact('minutes-to-limit', minutes, 'min', null, NEWTON, limitHow(signs)));
    because.push(fact('warms-within', tauHours, 'h', null, NEWTON, learned));
  }
  because.push(...planFacts(signs));
  const limitAt = hoursToLimit === null ? null : instant(now + hoursToLimit * HOUR);
  return act([...because, dropInRisk(DROP)], {
    minutes: MINUTES_OF_WORK,
    doBy: aboveSince ?? limitAt,
    saves: sparedMoney(value, DROP),
    alarm: 'power',
  });
}

/** A stop by plan: asked for only when the room reaches its limit before the set runs again. */
function plannedStop(look: Look, signs: Signs, because: readonly Evidence[]): Answer {
  const { room, aboveSince } = signs;
  const { now, supply, value } = room;
  const { runIn } = planOf(signs);
  if (room.air?.latest == null) return unknown(['room-temperature'], because);
  if (runIn === null) return leave(...because);
  const runAt = instant(now + runIn * HOUR);
  const early = supply.until === null ? Number.POSITIVE_INFINITY : supply.until;
  const why = [...because, ...planFacts(signs)];
  const asked = stands(look, 'run-generator', room.place.id);
  const margin = (asked ? ASKED_MARGIN : 0) * MINUTE;
  if (runAt >= early + margin) return leave(...why);
  const soon = runIn * 60 < WAKES;
  return act([...why, dropInRisk(DROP)], {
    minutes: MINUTES_OF_WORK,
    doBy: aboveSince ?? runAt,
    saves: sparedMoney(value, DROP),
    alarm: soon ? 'power' : null,
  });
}
