import { calendarDay, instantAt, minuteOfDay } from '../times.ts';

const two = (n: number) => String(n).padStart(2, '0');

/** `2026-05-10T06:30` on the clock of the farm's wall, as a field for a time has it. */
export function onTheWall(time: string, zone: string): string {
  const ms = Date.parse(time);
  const minute = minuteOfDay(ms, zone);
  return `${calendarDay(ms, zone)}T${two(Math.floor(minute / 60))}:${two(minute % 60)}`;
}

/** And back: ISO 8601. */
export function fromTheWall(text: string, zone: string): string {
  const [day = '', time = ''] = text.split('T');
  const [hour = 0, minute = 0] = time.split(':').map(Number);
  return new Date(instantAt(day, hour * 60 + minute, zone)).toISOString();
}
