const SECOND = 1000; // ms
const MINUTE = 60 * SECOND;

/** Ours: soon enough for a greylisting server, rare enough for one that is down all night. */
const WAITS = [30 * SECOND, MINUTE, 2 * MINUTE, 5 * MINUTE, 10 * MINUTE, 20 * MINUTE];
const LONGEST = 30 * MINUTE;
/** After a day nobody is helped by it; the page still shows it. Ours. */
const GIVEN_UP_AFTER = 24 * 60 * MINUTE;

/** When to try again after so many tries; null when it is given up. Times in ms since 1970. */
export function nextTry(tries: number, madeAt: number, now: number): number | null {
  const next = now + (WAITS[tries - 1] ?? LONGEST);
  return next - madeAt > GIVEN_UP_AFTER ? null : next;
}
