import { channelsOf, mayTell } from './hours.ts';
import type { AlarmSettings, Delivery, Person } from './types.ts';

const MINUTE = 60_000; // ms
/** A message that failed this often is on its way to nobody: the next person is not made to wait. Ours. */
const HOPELESS = 2;

/**
 * Who is to be told of an urgent alarm now and was not told before. The first in hours at once; the
 * next when nobody answered for so many minutes, or when the one before cannot be reached; those
 * outside their hours only when nobody in hours is left, or at the end with everybody.
 *
 * @param mine what was made for this alarm.
 */
export function wakeOrder(
  settings: AlarmSettings,
  mine: readonly Delivery[],
  minute: number,
  now: number,
): Person[] {
  const { people, waits } = settings;
  const begun = mine.length === 0 ? now : Math.min(...mine.map(({ madeAt }) => madeAt));
  const passed = now - begun;
  const told = new Set(mine.map(({ person }) => person));
  const asked = [...told].filter(
    (id) => !isLost(mine.filter(({ person }) => person === id)),
  ).length;
  const untold = people.filter((one) => !told.has(one.id) && channelsOf(one).length > 0);
  if (passed >= waits.everybody * MINUTE) return untold;
  const inHours = untold.filter((one) => mayTell(one, 'urgent', settings, minute));
  // Nobody in hours can be told, or those who were cannot be reached: better woken than not told.
  if (asked === 0 && inHours.length === 0) return untold;
  const due = 1 + [waits.second, waits.third].filter((wait) => passed >= wait * MINUTE).length;
  return inHours.slice(0, Math.max(0, due - asked));
}

/** Whether nothing of what was sent to a person has arrived, or seems to arrive soon. */
const isLost = (sent: readonly Delivery[]) =>
  sent.every(
    ({ state, tries }) => state === 'refused' || (state === 'waiting' && tries >= HOPELESS),
  );
