import { calendarDay, instantAt, minuteOfDay } from './times.ts';

/** `2026-05-10T06:30` on the clock of the farm's wall; '' for not told. */
export const onTheWall = (time: string | null, zone: string) => {
  if (time === null) return '';
  const ms = Date.parse(time);
  const minute = minuteOfDay(ms, zone);
  const two = (n: number) => String(n).padStart(2, '0');
  return `${calendarDay(ms, zone)}T${two(Math.floor(minute / 60))}:${two(minute % 60)}`;
};

/** The instant that such a text means on the farm. */
export const fromTheWall = (text: string, zone: string) => {
  const [day = '', time = ''] = text.split('T');
  const [hour = 0, minute = 0] = time.split(':').map(Number);
  return new Date(instantAt(day, hour * 60 + minute, zone)).toISOString();
};
