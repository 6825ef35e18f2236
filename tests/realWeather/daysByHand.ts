// What each local day of an hourly series was like, worked out by plain steps from the definitions
// in words and from nothing of the hub or the rules: slot by slot for wetness, minute by minute for
// heat. It is slow and long-winded on purpose.

type Hourly = { readonly t: number; readonly temperature: number; readonly humidity: number };
type How = {
  readonly zone: string;
  readonly base: number;
  readonly at: number;
  readonly below: number;
  /** A longer time between two readings is time not known. */
  readonly longestGapMinutes: number;
  /** Dry or unknown time that parts two wet spells. */
  readonly breakHours: number;
};
export type DayByHand = {
  readonly hours: number;
  readonly min: number | null;
  readonly max: number | null;
  readonly mean: number | null;
  readonly wetHours: number;
  readonly unknownHours: number;
  readonly longestSpellHours: number;
  readonly degreeDays: number | null;
};

const MINUTE = 60_000;
const HOUR = 60 * MINUTE;

/** The local day of an instant, by the machine's own zone table. */
export function localDay(zone: string): (t: number) => string {
  const swedish = new Intl.DateTimeFormat('sv-SE', { timeZone: zone }); // writes 2013-03-10
  return (t) => swedish.format(t);
}

/** Each whole hour (UTC) of the days the series touches, by day. */
function hoursOfDays(series: readonly Hourly[], zone: string): Map<string, number[]> {
  const dayOf = localDay(zone);
  const first = series[0]?.t ?? 0;
  const last = series.at(-1)?.t ?? 0;
  const days = new Map<string, number[]>();
  let t = first;
  while (dayOf(t - HOUR) === dayOf(first)) t -= HOUR;
  for (; dayOf(t) <= dayOf(last); t += HOUR) {
    const hours = days.get(dayOf(t)) ?? [];
    hours.push(t);
    days.set(dayOf(t), hours);
  }
  return days;
}

/** Wet, dry or not known, hour by hour. */
function wetness(series: readonly Hourly[], slots: readonly number[], how: How) {
  const at = new Map(series.map((each) => [each.t, each]));
  const times = series.map(({ t }) => t);
  let leaf: 'wet' | 'dry' | 'unheard' = 'unheard';
  return slots.map((t) => {
    const reading = at.get(t);
    if (reading) {
      // Wet from `at` on; once wet, until under `below`.
      if (reading.humidity >= how.at) leaf = 'wet';
      else if (leaf !== 'wet' || reading.humidity < how.below) leaf = 'dry';
      return leaf;
    }
    const before = times.findLast((time) => time < t);
    const after = times.find((time) => time > t);
    const near =
      before !== undefined &&
      after !== undefined &&
      after - before <= how.longestGapMinutes * MINUTE;
    return near ? leaf : 'unknown';
  });
}

/** The longest wet spell any of whose wet hours lies in the last `count` of these hours. */
function longestSpell(states: readonly string[], count: number, breakHours: number): number {
  const begins = states.length - count;
  let longest = 0;
  let wet = 0;
  let dry = 0;
  let unknown = 0;
  for (const [slot, state] of states.entries()) {
    if (state === 'wet') {
      wet += 1;
      dry = 0;
      unknown = 0;
      if (slot >= begins) longest = Math.max(longest, wet);
      continue;
    }
    if (state === 'dry') dry += 1;
    unknown = state === 'unknown' ? unknown + 1 : 0;
    if (dry >= breakHours || unknown >= breakHours) {
      wet = 0;
      dry = 0;
    }
  }
  return longest;
}

/** Warmth above the base, added up minute by minute along straight lines between readings. */
function heat(series: readonly Hourly[], slots: readonly number[], how: How): number | null {
  let sum = 0;
  let known = 0;
  let next = 0;
  for (const slot of slots) {
    for (let minute = 0; minute < 60; minute += 1) {
      const t = slot + (minute + 0.5) * MINUTE;
      while (next < series.length && (series[next]?.t ?? 0) <= t) next += 1;
      const before = series[next - 1];
      const after = series[next];
      if (!before || !after || after.t - before.t > how.longestGapMinutes * MINUTE) continue;
      const share = (t - before.t) / (after.t - before.t);
      const temperature = before.temperature * (1 - share) + after.temperature * share;
      sum += Math.max(0, temperature - how.base);
      known += 1;
    }
  }
  return known === 0 ? null : sum / (24 * 60);
}

/** Every local day the series touches. */
export function daysByHand(series: readonly Hourly[], how: How): Map<string, DayByHand> {
  const days = new Map<string, DayByHand>();
  const slotsOf = hoursOfDays(series, how.zone);
  const states = wetness(series, [...slotsOf.values()].flat(), how);
  let done = 0;
  for (const [day, slots] of slotsOf) {
    const begins = slots[0] ?? 0;
    const near = series.filter(({ t }) => Math.abs(t - begins) < 48 * HOUR);
    const inside = near.filter(({ t }) => slots.includes(t)).map(({ temperature }) => temperature);
    const today = states.slice(done, done + slots.length);
    done += slots.length;
    const count = (state: string) => today.filter((each) => each === state).length;
    const none = inside.length === 0;
    days.set(day, {
      hours: slots.length,
      min: none ? null : Math.min(...inside),
      max: none ? null : Math.max(...inside),
      mean: none ? null : inside.reduce((sum, value) => sum + value, 0) / inside.length,
      wetHours: count('wet'),
      unknownHours: count('unknown') + count('unheard'),
      longestSpellHours: longestSpell(states.slice(0, done), slots.length, how.breakHours),
      degreeDays: heat(near, slots, how),
    });
  }
  return days;
}
