const HOUR = 3_600_000;
const DAY = 24 * HOUR;

export type LocalTime = {
  /** Hours since local midnight, 0 ≤ h < 24. */
  readonly hour: (t: number) => number;
  /** A whole number that grows by one at each local midnight. */
  readonly day: (t: number) => number;
  /** 0 is Monday. */
  readonly weekday: (t: number) => number;
};

/** Working hours follow the clock on the wall, so the made-up people need the farm's zone. */
export function createLocalTime(zone: string): LocalTime {
  const format = new Intl.DateTimeFormat('en-GB', { timeZone: zone, timeZoneName: 'longOffset' });
  const offsets = new Map<number, number>();
  const offsetAt = (t: number) => {
    const hour = Math.floor(t / HOUR);
    const known = offsets.get(hour);
    if (known !== undefined) return known;
    const name = format.formatToParts(t).find(({ type }) => type === 'timeZoneName')?.value ?? '';
    const found = /([+-])(\d\d):(\d\d)/.exec(name);
    const size = found ? Number(found[2]) * 60 + Number(found[3]) : 0;
    const offset = (found?.[1] === '-' ? -size : size) * 60_000;
    offsets.set(hour, offset);
    return offset;
  };
  const day = (t: number) => Math.floor((t + offsetAt(t)) / DAY);
  return {
    hour: (t) => ((t + offsetAt(t)) % DAY) / HOUR,
    day,
    weekday: (t) => (day(t) + 3) % 7, // 1 January 1970 was a Thursday
  };
}
