import type { Span } from '../../rules/cooler/index.ts';
import { type Instant, instant } from '../../rules/units.ts';
import type { Calendar } from '../clock.ts';

const MINUTE = 60_000;
const DAY_MINUTES = 1440;
/** Local days before and after the present one that the plan is told for. */
const DAYS = [-2, -1, 0, 1, 2];

/** `06:00-10:00` as minutes of the local day; the end may lie in the next day. */
function minutesOf(hours: string): readonly [number, number] {
  const [from = '', to = ''] = hours.split('-');
  const [begin, end] = [from, to].map((clock) => {
    const [hour, minute] = clock.split(':').map(Number);
    return (hour ?? 0) * 60 + (minute ?? 0);
  }) as [number, number];
  return [begin, end > begin ? end : end + DAY_MINUTES];
}

/** When the supply of a cool room is planned to be on, around now; each stretch apart, in order. */
export function supplyPlan(hours: readonly string[], calendar: Calendar, now: Instant): Span[] {
  const today = calendar.dayOf(now);
  const at = (day: string, minute: number) => {
    const { begins } = calendar.bounds(day);
    const t = begins + minute * MINUTE;
    // The clock on the wall is what is planned by: an hour that is left out or comes twice counts.
    return t + (calendar.offsetMinutes(begins) - calendar.offsetMinutes(t)) * MINUTE;
  };
  const spans = DAYS.flatMap((shift) => {
    const day = calendar.add(today, shift);
    return hours.map((each) => {
      const [from, to] = minutesOf(each);
      return { from: at(day, from), to: at(day, to) };
    });
  }).sort((a, b) => a.from - b.from);
  const joined: { from: number; to: number }[] = [];
  for (const span of spans) {
    const last = joined.at(-1);
    if (last && span.from <= last.to) last.to = Math.max(last.to, span.to);
    else joined.push({ ...span });
  }
  return joined.map(({ from, to }) => ({ from: instant(from), to: instant(to) }));
}
