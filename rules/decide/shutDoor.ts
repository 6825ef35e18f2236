import type { Answer } from '../answer.ts';
import { type Instant, instant, MINUTE } from '../units.ts';
import { by, put, when } from './how.ts';
import type { Look } from './look.ts';
import { feedHow } from './room.ts';
import { OPEN_FOR } from './roomDoor.ts';
import { causeFacts } from './roomFacts.ts';
import { signsOf } from './roomSigns.ts';
import { act, fact, leave, unknown } from './say.ts';
import type { PlaceNow } from './snapshot.ts';
import { MEASURED, PRACTICE, TOLD } from './sources.ts';
import { dropInRisk, sparedMoney } from './worth.ts';

const MINUTES_OF_WORK = 2; // common practice, no source
const DUE = 10; // minutes after it opened, ours
const WAKES = 10; // minutes open, ours: a delivery is put away by then
const DROP = 0.1; // ours, from no source: share of the produce's worth spared

/** The cool room's door stands open: its contact says so, or the air rose as only a door lets it. */
export function shutDoor(look: Look, place: PlaceNow): Answer {
  const signs = signsOf(look, place);
  const { door, room, trouble, cause, wakes } = signs;
  const { now, air, setPoint, habits } = room;
  const minutes = door.since === null ? 0 : (now - door.since) / MINUTE;
  const warm = air?.latest == null ? null : air.latest.value;
  const since = when('open-since', door.since);
  const contact = by('doorSign', put('probe', room.door?.probe ?? null), since, when('now', now));
  const rise = by('doorSign', put('set-point', setPoint, '°C'), since, ...feedHow(air).inputs);
  const because = [
    ...(door.by === 'contact'
      ? [fact('door-open-minutes', minutes, 'min', OPEN_FOR, PRACTICE, contact)]
      : []),
    ...(door.rise === null
      ? []
      : [fact('steep-rise', door.rise, 'K', habits.steep, PRACTICE, rise)]),
    ...(warm === null
      ? []
      : [fact('room-air', warm, '°C', room.limit, MEASURED, feedHow(air), TOLD)]),
  ];
  if (door.open === null && cause !== 'door') return unknown(['door-or-room-temperature'], because);
  if (cause !== 'door' || trouble === null || door.since === null) return leave(...because);

  const presses =
    door.by === 'contact' ? minutes >= WAKES || (warm !== null && warm > habits.line) : wakes;
  return act([...because, ...causeFacts(signs), dropInRisk(DROP)], {
    minutes: MINUTES_OF_WORK,
    doBy: dueAfter(door.since),
    saves: sparedMoney(room.value, DROP),
    alarm: presses ? 'door' : null,
  });
}

const dueAfter = (since: Instant) => instant(since + DUE * MINUTE);
