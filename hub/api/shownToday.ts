import { todaySentence } from '../words/index.ts';
import { newest } from './newest.ts';
import type { ApiParts } from './parts.ts';
import { iso, openTasks, shownNight, shownPlaces } from './present.ts';
import { shownCoolRoom } from './presentRoom.ts';

/** What the page Today says, as of the newest look. */
export function shownToday(parts: ApiParts) {
  const looked = newest(parts);
  const tasks = openTasks(parts);
  const places = shownPlaces(parts, looked);
  const coolRooms = looked.outlook.coolRooms.map(shownCoolRoom);
  return {
    asOf: iso(looked.at),
    sentence: todaySentence({ tasks, places, coolRooms, zone: parts.calendar().zone }),
    tasks,
    places,
    frost: looked.outlook.frost.map(shownNight),
    coolRooms,
  };
}
