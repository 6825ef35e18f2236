import { addDays, shortDay } from '../times.ts';
import { scale } from './scale.ts';

const DAY = 86_400_000; // ms
const LABEL = 62; // px that a date needs

export const dayMs = (day: string) => Date.parse(`${day}T00:00:00Z`);

/** Calendar days along a picture, with as many dates below as there is room for. */
export function dayScale(first: string, last: string, left: number, right: number) {
  const at = scale([dayMs(first), dayMs(last)], [left, right]);
  const days = Math.max(1, Math.round((dayMs(last) - dayMs(first)) / DAY));
  const room = Math.max(1, Math.floor((right - left) / LABEL));
  const step = [1, 2, 7, 14, 28, 56].find((size) => days / size <= room) ?? 84;
  const ticks: { day: string; x: number; label: string }[] = [];
  for (let day = first; day <= last; day = addDays(day, step))
    ticks.push({ day, x: at(dayMs(day)), label: shortDay(day) });
  return { x: (day: string) => at(dayMs(day)), ticks };
}
