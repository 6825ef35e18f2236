import type { CoolRoom } from '../../hub/contract/index.ts';
import { calendarDay, timeOfDay } from '../times.ts';
import { words } from '../words.ts';

const MINUTE = 60_000; // ms
const DAY = 24 * 60 * MINUTE;

/** Stretches of the day shown in which its timer usually defrosts. */
export function usualDefrosts({ habits }: CoolRoom, from: number, to: number) {
  if (habits.defrosts === null) return null;
  const { at, minutes } = habits.defrosts;
  const spans: { from: number; to: number }[] = [];
  for (let day = Math.floor(from / DAY) * DAY; day < to; day += DAY)
    for (const minute of at) {
      const begins = day + minute * MINUTE;
      const ends = begins + minutes * MINUTE;
      if (ends > from && begins < to)
        spans.push({ from: Math.max(from, begins), to: Math.min(to, ends) });
    }
  return spans;
}

/** The room's own sawtooth in one line: its ends, period, running share and defrosts. */
export function RoomCycle({ room, zone, now }: { room: CoolRoom; zone: string; now: number }) {
  const today = Date.parse(`${calendarDay(now, zone)}T00:00:00Z`);
  const times = [...(room.habits.defrosts?.at ?? [])]
    .map((minute) => timeOfDay(today + minute * MINUTE, zone))
    .sort();
  return (
    <p>
      <strong>{words.room.cycleTitle}.</strong> {words.room.cycleLine(room.habits, times)}
    </p>
  );
}
