import type { AlarmSettings, Weekday } from './types.ts';

const HOUR = 60; // min
const DAY = 86_400_000; // ms

/** Whether the weekly test is due: within the hour after its time, and not made in the last day. */
export function testIsDue(
  { weeklyTest }: Pick<AlarmSettings, 'weeklyTest'>,
  local: { readonly weekday: Weekday; readonly minute: number },
  lastAt: number | null,
  now: number,
): boolean {
  if (weeklyTest === null || local.weekday !== weeklyTest.weekday) return false;
  const late = local.minute - weeklyTest.at;
  return late >= 0 && late < HOUR && (lastAt === null || now - lastAt > DAY);
}
