import type { Answer } from '../answer.ts';
import { type Instant, instant, MINUTE } from '../units.ts';
import type { Look } from './look.ts';
import { OUT_OF_CYCLE } from './room.ts';
import { signsOf } from './roomSigns.ts';
import { act, fact, leave, unknown } from './say.ts';
import type { PlaceNow } from './snapshot.ts';
import { MEASURED, PRACTICE } from './sources.ts';
import { dropInRisk, sparedMoney } from './worth.ts';

const MINUTES_OF_WORK = 2; // common practice, no source
const DUE = 10; // minutes after it opened, ours
const WAKES = 10; // minutes open, ours: a delivery is put away by then
const DROP = 0.1; // ours, from no source: share of the produce's worth spared

/** The cool room's door stands open: its contact says so, or the air rose as only a door lets it. */
export function shutDoor(look: Look, place: PlaceNow): Answer {
  const { door, room } = signsOf(look, place);
  const { now, air, setPoint } = room;
  const minutes = door.since === null ? 0 : (now - door.since) / MINUTE;
  const warm = air?.latest == null ? null : air.latest.value;
  const because = [
    ...(door.by === 'contact'
      ? [fact('door-open-minutes', door.since === null ? 0 : minutes, 'min', 5, PRACTICE)]
      : []),
    ...(door.rise === null ? [] : [fact('steep-rise', door.rise, 'K', 1, PRACTICE)]),
    ...(warm === null ? [] : [fact('room-air', warm, '°C', room.limit, MEASURED)]),
  ];
  if (door.open === null) return unknown(['door-or-room-temperature'], because);
  if (!door.open || door.since === null) return leave(...because);

  const presses = minutes >= WAKES || (warm !== null && warm > setPoint + OUT_OF_CYCLE);
  return act([...because, dropInRisk(DROP)], {
    minutes: MINUTES_OF_WORK,
    doBy: dueAfter(door.since),
    saves: sparedMoney(room.value, DROP),
    alarm: presses ? 'door' : null,
  });
}

const dueAfter = (since: Instant) => instant(since + DUE * MINUTE);
