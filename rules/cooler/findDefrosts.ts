import { median, percentile } from '../statistics/index.ts';
import { type Instant, MINUTE, type Minutes, minutes } from '../units.ts';

/** When a room's timer defrosts: minutes of the UTC day, and how long the air rises for it. */
export type Defrosts = {
  readonly at: readonly number[];
  readonly minutes: Minutes;
  /** Minutes by which one may come early or late. */
  readonly give: Minutes;
};

/** A stretch above the cycle that a defrost may have made. */
export type Bump = {
  readonly at: Instant;
  /** Minutes from leaving the cycle to the peak. */
  readonly rise: number;
  readonly steep: boolean;
};

const DAY = 1440; // min
const GIVE = 12; // minutes; the air leaves its cycle sooner or later by where in it the timer strikes. Ours
const ON_DAYS = 0.6; // share of the days on which it must be seen. Ours
const FEWEST_DAYS = 3; // ours
const LONGEST = 60; // minutes; no defrost of a small room lasts longer. Ours

/**
 * The times of day at which the air leaves its cycle day after day: a timer's defrosts. Two thirds
 * of the days are enough, since a cold night may hide one. Times are of the UTC day, which a timer
 * without summer time follows. Ours, from no source.
 * @param days how many days the bumps were gathered on
 */
export function findDefrosts(bumps: readonly Bump[], days: number): Defrosts | null {
  if (days < FEWEST_DAYS) return null;
  const slow = bumps.filter(({ rise }) => rise <= LONGEST);
  const of = ({ at }: Bump) => (((at / MINUTE) % DAY) + DAY) % DAY;
  const left = slow.map((bump) => ({ minute: of(bump), bump }));
  const at: number[] = [];
  const rises: number[] = [];
  while (left.length > 0) {
    const near = (centre: number) =>
      left.filter(({ minute }) => apart(minute, centre) <= GIVE && minute >= 0);
    let best = near(left[0]?.minute ?? 0);
    for (const { minute } of left) {
      const found = near(minute);
      if (found.length > best.length) best = found;
    }
    const seenOn = new Set(best.map(({ bump }) => Math.floor(bump.at / (DAY * MINUTE)))).size;
    if (seenOn < Math.max(FEWEST_DAYS, ON_DAYS * days)) break;
    const first = best[0]?.minute ?? 0;
    const shifted = best.map(({ minute }) => first + signed(minute - first));
    at.push((((median(shifted) % DAY) + DAY) % DAY) as number);
    rises.push(...best.map(({ bump }) => bump.rise));
    for (const each of best) left.splice(left.indexOf(each), 1);
  }
  if (at.length === 0) return null;
  return {
    at: at.sort((a, b) => a - b),
    minutes: minutes(percentile(rises, 0.9)),
    give: minutes(GIVE),
  };
}

const signed = (gap: number) => ((((gap + DAY / 2) % DAY) + DAY) % DAY) - DAY / 2;
const apart = (a: number, b: number) => Math.abs(signed(a - b));

/** Whether a stretch that began then began when a defrost is due. */
export function defrostDue(defrosts: Defrosts | null, at: Instant): boolean {
  if (defrosts === null) return false;
  const minute = (at / MINUTE) % DAY;
  return defrosts.at.some((due) => apart(minute, due) <= defrosts.give + 3);
}

/** Minutes: a defrost begins before the air leaves its cycle, from where its rise is timed. Ours. */
const BEFORE_LINE = 5;
const LONGER = 1.5; // times the learned length; common practice

/** Until when a stretch that began then may rise because of a defrost; its start where none is due. */
export const defrostUntil = (defrosts: Defrosts | null, since: Instant): number =>
  defrosts !== null && defrostDue(defrosts, since)
    ? since + (LONGER * defrosts.minutes + BEFORE_LINE) * MINUTE
    : since;

const BEFORE = 25; // minutes that a defrost may go on before the air leaves its cycle. Ours

/** Whether the timer may be defrosting then. */
export function defrostMayBeOn(defrosts: Defrosts | null, at: Instant): boolean {
  if (defrosts === null) return false;
  const minute = (at / MINUTE) % DAY;
  return defrosts.at.some((due) => {
    const late = signed(minute - due);
    return late >= -BEFORE && late <= LONGER * defrosts.minutes + BEFORE_LINE;
  });
}
