import { addDays, calendarDay, instantAt, minuteOfDay } from './times.ts';

const HOUR = 3_600_000; // ms
// Ours, from no source: when a grower is likely to look again.
const EVENING = 18 * 60; // minutes of the day
const MORNING = 6 * 60 + 30;
/** A time sooner than this is no use as a "later". */
const LEAST = 30; // minutes

export type Later = {
  readonly when: 'hour' | 'evening' | 'tomorrow' | 'morning';
  readonly until: number;
};

/** Times to put a task off to, soonest first, all in the future. */
export function laterTimes(now: number, zone: string): Later[] {
  const day = calendarDay(now, zone);
  const minute = minuteOfDay(now, zone);
  const times: Later[] = [{ when: 'hour', until: now + HOUR }];
  // At 02:00 "tomorrow morning" would be a day too late for somebody who has not slept yet.
  if (minute < MORNING - LEAST) {
    times.push({ when: 'morning', until: instantAt(day, MORNING, zone) });
  }
  if (minute < EVENING - LEAST) {
    times.push({ when: 'evening', until: instantAt(day, EVENING, zone) });
  }
  if (minute >= MORNING - LEAST) {
    times.push({ when: 'tomorrow', until: instantAt(addDays(day, 1), MORNING, zone) });
  }
  return times.sort((a, b) => a.until - b.until);
}
