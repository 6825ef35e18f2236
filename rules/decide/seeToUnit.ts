import type { Answer } from '../answer.ts';
import { HOUR, instant, MINUTE } from '../units.ts';
import { by, put, when } from './how.ts';
import type { Look } from './look.ts';
import { feedHow } from './room.ts';
import { IDLE, offHow } from './roomPower.ts';
import { DRIFT_MARGIN } from './roomRise.ts';
import { signsOf } from './roomSigns.ts';
import { act, fact, leave, unknown } from './say.ts';
import type { PlaceNow } from './snapshot.ts';
import { MEASURED, OURS, PRACTICE, TOLD } from './sources.ts';
import { dropInRisk, sparedMoney } from './worth.ts';

const MINUTES_OF_WORK = 15; // common practice, no source
const DROP = 0.3; // ours, from no source: share of the produce's worth spared
const DUE_DRIFT = 4; // h, ours: a drift is for today, not for this minute
const DRIFT_SOURCE =
  'bottom of the cycle (10th percentile) above set point; the margin is ours, tried on a simulated room';

/** The cooling unit has stopped, fades, or is set wrong. */
export function seeToUnit(look: Look, place: PlaceNow): Answer {
  const { room, power, drift, rises, hoursToLimit, aboveSince, door } = signsOf(look, place);
  const { now, air, limit, value } = room;
  if (air?.latest == null) return unknown(['room-temperature']);

  const read = feedHow(air);
  const cycle = [put('set-point', room.setPoint, '°C'), ...read.inputs];
  const because = [
    fact('room-air', air.latest.value, '°C', limit, TOLD, read),
    ...(drift.bottom === null
      ? []
      : [
          fact(
            'cycle-bottom-above',
            drift.bottom,
            'K',
            DRIFT_MARGIN,
            DRIFT_SOURCE,
            by('driftSign', ...cycle, when('above-since', drift.since)),
            OURS,
          ),
        ]),
    ...(power.watts === null
      ? []
      : [fact('room-power', power.watts, 'W', IDLE, MEASURED, feedHow(room.power), PRACTICE)]),
  ];
  const limitAt = hoursToLimit === null ? null : instant(now + hoursToLimit * HOUR);
  const asked = (doBy: typeof limitAt, alarm: boolean) =>
    act([...because, dropInRisk(DROP)], {
      minutes: MINUTES_OF_WORK,
      doBy,
      saves: sparedMoney(value, DROP),
      alarm: alarm ? 'unit' : null,
    });

  // Another task names the cause: the unit can't be judged meanwhile.
  if (power.stopped === 'power' || door.open === true) return leave(...because);
  if (power.stopped === 'unit') {
    if (power.offSince !== null) {
      const off = (now - power.offSince) / MINUTE;
      because.push(fact('off-minutes', off, 'min', power.pause, OURS, offHow(room, power)));
    }
    return asked(aboveSince ?? limitAt, true);
  }
  if (rises) {
    because.push(
      fact('one-long-rise', air.latest.value, '°C', null, OURS, by('longRise', ...cycle)),
    );
    return asked(aboveSince ?? limitAt, true);
  }
  if (drift.drifts === null) return unknown(['room-temperature-history'], because);
  if (!drift.drifts) return leave(...because);
  // Wakes somebody only when the longer window agrees: the shorter alone is wrong a few times a month.
  const due = drift.since === null ? null : instant(drift.since + DUE_DRIFT * HOUR);
  return asked(aboveSince ?? due, drift.sure);
}
