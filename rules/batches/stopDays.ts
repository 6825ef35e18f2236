import { bestStop, type FruitPatch, ripeDay, rotChance } from './bestStop.ts';

const NEARLY = 0.05; // share of the best value that is not worth a quarrel; ours
const LONGEST = 14; // days after the best one; ours: where holding costs nothing, nothing else ends it

/** What stopping on one day means; day 0 is today. Money in one unit. */
export type StopDay = {
  readonly day: number;
  /** kg that ripen on it. */
  readonly ripe: number;
  /** Chance that no frost has taken the patch, and that a soft fruit has not rotted, by then. */
  readonly survives: number;
  readonly sound: number;
  /** Expected money of picking on until then, and no further; holding paid. */
  readonly value: number;
  /** Expected money still to gain from then on. */
  readonly toGain: number;
  /** Expected money gone by then: to frost, to rot and in holding on. */
  readonly lost: number;
};

export type StopPlan = {
  readonly days: readonly StopDay[];
  /** Best day to stop, and those round it at which stopping is worth nearly as much. */
  readonly best: number;
  readonly from: number;
  readonly to: number;
  readonly value: number;
  /** A later day beyond them that is nearly as good; null when there is none. */
  readonly nearly: number | null;
  readonly reason: 'nothing-left' | 'not-worth' | 'rest-not-worth' | 'picked-out';
};

/**
 * The two sides of waiting, day by day: what is still to gain, and what frost, rot and holding on
 * take meanwhile. The best day to stop is that of bestStop; days round it at which stopping is worth
 * within 5 % of the best make the window.
 *
 * Source: expected value; the model and the 5 % are ours, from no source.
 * @throws RangeError as bestStop
 */
export function stopDays(patch: FruitPatch): StopPlan {
  const { cohorts, units, killed, margin, perDay } = patch;
  const { stops, day: bestDay, value: bestValue } = bestStop(patch);
  const rot = rotChance(patch);
  const count = units.length;
  const value = Array.from({ length: count + 1 }, (_, day) => -perDay * day);
  const ripe = new Array<number>(count + 1).fill(0);
  stops.forEach(({ day, worth }, cohort) => {
    if (day === null) return;
    ripe[day] = (ripe[day] ?? 0) + (cohorts[cohort]?.mass ?? 0);
    for (let at = day; at <= count; at += 1) value[at] = (value[at] ?? 0) + worth;
  });
  const lost = lostBy(patch, rot);
  const days: StopDay[] = [];
  let survives = 1;
  for (let day = 0; day <= count; day += 1) {
    if (day > 0) survives *= 1 - (killed[day - 1] ?? 0);
    const here = value[day] ?? 0;
    const ahead = value.slice(day).reduce((most, each) => Math.max(most, each), here);
    days.push({
      ...{ day, ripe: ripe[day] ?? 0, survives, sound: (1 - rot) ** day },
      ...{ value: here, toGain: ahead - here, lost: lost[day] ?? 0 },
    });
  }

  const best = bestDay ?? 0;
  const least = bestValue - NEARLY * Math.abs(bestValue);
  const good = (day: number) => (value[day] ?? Number.NEGATIVE_INFINITY) >= least;
  let from = best;
  let to = best;
  if (bestDay !== null) {
    while (from > 0 && good(from - 1)) from -= 1;
    while (to < count && to < best + LONGEST && good(to + 1)) to += 1;
  }
  const beyond = stops.find(({ day }) => day !== null && day > to && good(day))?.day ?? null;
  const hangs = cohorts.some(({ mass }) => mass > 0);
  const after = stops.some(({ day }, at) => (day ?? 0) > best && (cohorts[at]?.mass ?? 0) > 0);
  const unripe = stops.some(({ day }, at) => day === null && (cohorts[at]?.mass ?? 0) > 0);
  const reason = !hangs
    ? 'nothing-left'
    : bestDay === null
      ? 'not-worth'
      : after || unripe
        ? 'rest-not-worth'
        : 'picked-out';
  return { days, best, from, to, value: bestValue, nearly: beyond, reason };

  function lostBy({ cohorts: all }: FruitPatch, daily: number): number[] {
    const gone = Array.from({ length: count + 1 }, (_, day) => perDay * day);
    for (const { mass, units: needed, killed: own = killed, rotsFrom = 0 } of all) {
      const ends = ripeDay(units, needed);
      if (ends === null) continue; // never ripe: nothing that could be lost
      const whole = mass * Math.max(0, margin);
      let left = 1;
      for (let day = 1; day <= count; day += 1) {
        if (day <= ends) left *= (1 - (own[day - 1] ?? 0)) * (day > rotsFrom ? 1 - daily : 1);
        gone[day] = (gone[day] ?? 0) + whole * (1 - left);
      }
    }
    return gone;
  }
}
