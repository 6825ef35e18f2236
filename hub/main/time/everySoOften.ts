/**
 * A cron pattern for "every so often" of the hub's clock: on whole minutes of a wall clock, or, when
 * a demonstration's clock runs faster, every few seconds.
 *
 * @param interval ms of the hub's clock, a divisor of an hour.
 */
export function everySoOften(interval: number, speed: number): string {
  const real = interval / speed;
  if (real >= 60_000) return `*/${Math.min(59, Math.round(real / 60_000))} * * * *`;
  return `*/${Math.max(1, Math.round(real / 1000))} * * * * *`;
}
