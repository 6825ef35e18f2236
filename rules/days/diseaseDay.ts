import {
  type Circumstances,
  type Disease,
  darkDampHours,
  daysSince,
  type Judgement,
  trayDampHours,
} from '../disease/index.ts';
import { expectRange } from '../expectRange.ts';
import { HOUR, type Instant, instant, MINUTE } from '../units.ts';
import {
  type Bounds,
  cutTo,
  hoursWhen,
  type PieceSpell,
  spellBounds,
  type WetPiece,
  type Window,
} from '../wetness/index.ts';

const DAY = 24 * HOUR;
const NOON = 12 * HOUR;
const EVENING = 6 * HOUR; // 18:00, counted from noon
const DARK_DEFAULT = 8 * HOUR; // 20:00, where no sun times are known
const MORNING = 20 * HOUR; // 08:00
const MILD = { from: 9, to: 21 } as const; // °C, Yunis et al. 1994
const SPORULATION_DAMP = 95; // %, Cohen & Ben-Naim 2016
const HOUR_KNOWN = 45 * MINUTE; // of an hour must be covered for it to be a known hour; ours

/** A spell with what is certain and what is possible. */
export type DaySpell = {
  readonly from: Instant;
  readonly to: Instant;
  readonly wetHours: Bounds;
  /** Over known wet time; null when none of it is known. */
  readonly temperature: {
    readonly mean: number;
    readonly min: number;
    readonly max: number;
  } | null;
};

/** The books of one place for one disease day. Minutes and hours; bounds are [least, most]. */
export type DiseaseDay = {
  readonly day: Window;
  readonly knownMinutes: number;
  readonly unknownMinutes: number;
  readonly wetMinutes: number;
  /** Of 24, those of which at least 45 minutes are known. */
  readonly knownHours: number;
  readonly wetHours: Bounds;
  readonly spells: readonly DaySpell[];
  /** Of 18:00 to 08:00, hours from 9 to 21 °C. */
  readonly nightHours: Bounds;
  /** Hours of the dark (20:00 to 08:00 where sun times are not known) at 95 % or more. */
  readonly darkDampHours: Bounds;
  readonly trayDampHours: Bounds;
  readonly judgements: Readonly<Record<string, Judgement>>;
  /** Whole days; null when there never was one. */
  readonly daysSinceEvent: number | null;
  readonly daysSinceLooked: number | null;
};

/**
 * The noon-to-noon day an instant falls in, so that no night is split.
 * @param standardOffset of local standard time from UTC, minutes (east positive); summer time would
 *   move the noon twice a year
 * @throws RangeError for an offset outside ±1080 min
 */
export function noonToNoon(at: Instant, standardOffset: number): Window {
  expectRange('offset of standard time', standardOffset, -1080, 1080, 'min');
  const shift = standardOffset * MINUTE - NOON;
  const from = Math.floor((at + shift) / DAY) * DAY - shift;
  return { from: instant(from), to: instant(from + DAY) };
}

/** What one disease day was like, and what each of these diseases makes of it. */
export function diseaseDay(
  known: Circumstances,
  diseases: readonly Disease[],
  since: { readonly event: Instant | null; readonly looked: Instant | null },
): DiseaseDay {
  const { day, wetness } = known;
  const inDay = cutTo(wetness, day);
  const minutesOf = (state: WetPiece['state']) =>
    inDay.reduce((sum, { state: s, from, to }) => sum + (s === state ? to - from : 0), 0) / MINUTE;
  const wetMinutes = minutesOf('wet');
  const knownMinutes = wetMinutes + minutesOf('dry');
  const unknownMinutes = (day.to - day.from) / MINUTE - knownMinutes;
  const settings = known.maxGapMinutes === undefined ? {} : { maxGapMinutes: known.maxGapMinutes };
  const clock = (after: number) => instant(day.from + after);
  const mild = ({ temperature: t }: Circumstances['air'][number]) =>
    t === null ? null : t >= MILD.from && t <= MILD.to;
  const dark = known.dark ?? { from: clock(DARK_DEFAULT), to: clock(MORNING) };
  return {
    day,
    knownMinutes,
    unknownMinutes,
    wetMinutes,
    knownHours: hoursKnown(inDay, day),
    wetHours: [wetMinutes / 60, (wetMinutes + unknownMinutes) / 60],
    spells: daySpells(cutTo(wetness, { from: wetness[0]?.from ?? day.from, to: day.to }), day),
    nightHours: hoursWhen(known.air, mild, { from: clock(EVENING), to: clock(MORNING) }, settings),
    darkDampHours: darkDampHours(known, dark, SPORULATION_DAMP),
    trayDampHours: trayDampHours(known, day),
    judgements: Object.fromEntries(diseases.map(({ id, judge }) => [id, judge(known)])),
    daysSinceEvent: daysSince(since.event, day.to),
    daysSinceLooked: daysSince(since.looked, day.to),
  };
}

function hoursKnown(pieces: readonly WetPiece[], { from, to }: Window): number {
  let known = 0;
  for (let begins: number = from; begins < to; begins += HOUR) {
    const slot = cutTo(pieces, { from: instant(begins), to: instant(begins + HOUR) });
    const covered = slot.reduce((sum, p) => sum + (p.state === 'unknown' ? 0 : p.to - p.from), 0);
    if (covered >= HOUR_KNOWN) known += 1;
  }
  return known;
}

function daySpells(pieces: readonly WetPiece[], day: Window): DaySpell[] {
  const { least, most } = spellBounds(pieces);
  return most
    .filter(({ to }) => to > day.from)
    .map((spell) => {
      const inside = least.filter(({ from, to }) => from >= spell.from && to <= spell.to);
      const surely = inside.reduce((longest, { wetHours }) => Math.max(longest, wetHours), 0);
      return {
        from: spell.from,
        to: spell.to,
        wetHours: [surely, spell.wetHours],
        temperature: temperatureOf(inside),
      };
    });
}

function temperatureOf(spells: readonly PieceSpell[]): DaySpell['temperature'] {
  const read = spells
    .flatMap(({ pieces }) => pieces)
    .filter(({ coldest, warmest }) => coldest === warmest);
  const time = read.reduce((sum, { from, to }) => sum + to - from, 0);
  if (time === 0) return null;
  const warmth = read.reduce((sum, { from, to, coldest }) => sum + coldest * (to - from), 0);
  return {
    mean: warmth / time,
    min: Math.min(...read.map(({ coldest }) => coldest)),
    max: Math.max(...read.map(({ warmest }) => warmest)),
  };
}

/** What the weekly warning needs of a day's books. */
export const dayOfWeek = ({ wetHours, nightHours, unknownMinutes }: DiseaseDay) => ({
  wetHours,
  nightHours,
  unknownHours: unknownMinutes / 60,
});
