import { CLEAR_GAIN, ventGain } from '../air/index.ts';
import type { Evidence } from '../answer.ts';
import { HOUR, type Instant, instant } from '../units.ts';
import { type LeavesNow, leavesWet } from '../wetness/index.ts';
import { by, type How, put, readBy, when } from './how.ts';
import { airIn, type Look } from './look.ts';
import { AFTER_RISE, bySun } from './night.ts';
import { fact } from './say.ts';
import type { PlaceNow } from './snapshot.ts';
import { BASIL_WET, OURS, TOLD, VENT_GAIN, WET_RULE } from './sources.ts';

// Leaves wet for long, and outside air that holds less water.

export const WET_LIMIT = 4; // h where the grower told none, see BASIL_WET
const limitOf = ({ wet }: PlaceNow) => wet.hours ?? WET_LIMIT;
/** Closed an hour before sunset, the purge before that included: later it only lets warmth out. */
export const SHUT_BEFORE_SET = HOUR; // ours, after Savage 1980
const DRY_ENDS = 4; // h of dry leaves end a spell (Alderman et al. 1985, the cautious middle is ours)
const SEEN = 1.5; // h between two readings that still see what happened, as in wetness/. Ours

export type Wet =
  | {
      readonly wet: true;
      readonly doBy: Instant;
      /** Wet so far, and till an hour before sunset at most as long again. */
      readonly hoursAhead: number;
      readonly because: readonly Evidence[];
    }
  | { readonly wet: false; readonly because: readonly Evidence[] }
  | {
      readonly wet: null;
      readonly missing: readonly string[];
      readonly because: readonly Evidence[];
    };

/** g/m³ the place loses by opening; null when either air is not known. */
export function gainOf(look: Look, place: PlaceNow): number | null {
  const inside = airIn(place, look.now);
  return inside === null || look.outside === null ? null : ventGain(inside, look.outside);
}

/** The two airs that gainOf compares. */
export function gainHow(look: Look, place: PlaceNow): How {
  const inside = airIn(place, look.now);
  const { outside } = look;
  return by(
    'ventGain',
    put('inside-temperature', inside?.temperature ?? null, '°C'),
    put('inside-humidity', inside?.humidity ?? null, '%'),
    put('outside-temperature', outside?.temperature ?? null, '°C'),
    put('outside-humidity', outside?.humidity ?? null, '%'),
    ...(inside === null ? [] : readBy(inside.spot.probe, inside.t).inputs),
    ...(outside?.how.inputs ?? []),
  );
}

/**
 * Whether leaves have been wet for so long that opening is asked for, and outside air holds less
 * water. Only in daylight, from an hour after sunrise to an hour before sunset.
 *
 * Source: 4 h of wet leaves for basil downy mildew, Massachusetts fact sheet; as a limit for other
 * crops ours, and the hours of the day too; the grower may tell other hours in the farm file.
 */
export function wetIn(look: Look, place: PlaceNow, standing: boolean): Wet {
  const { now, sun } = look;
  const inside = airIn(place, now);
  if (inside === null) return { wet: null, missing: ['inside-humidity'], because: [] };

  const { wet, spell } = leavesWet(inside.spot.air, { ...place.wet, mergeGapHours: DRY_ENDS }, now);
  if (wet === null) return { wet: null, missing: ['leaf-wetness-history'], because: [] };
  const hours = wet && spell !== null ? spell.wetHours : 0;
  const limit = limitOf(place);
  const because = [
    wet
      ? fact(
          'wet-hours',
          hours,
          'h',
          limit,
          place.wet.hours === undefined ? BASIL_WET : TOLD,
          wetHow(inside.spot.probe, place, spell),
        )
      : fact(
          'inside-humidity',
          inside.humidity,
          '%',
          place.wet.below,
          OURS,
          readBy(inside.spot.probe, inside.t),
          WET_RULE,
        ),
  ];
  const notKnown = { wet: null, missing: ['leaf-wetness-history'], because } as const;
  if (!wet) return undecided(inside.spot.air, place, now) ? notKnown : { wet: false, because };
  if (hours < limit && !standing) {
    // Short of the limit only because nobody knows what went before: that is not "fine".
    const most = hours + hiddenHours(inside.spot.air, place, now);
    return most >= limit ? notKnown : { wet: false, because };
  }

  const gain = gainOf(look, place);
  if (gain === null) return { wet: null, missing: ['outside-humidity'], because };
  because.push(fact('outside-drier-by', gain, 'g/m³', CLEAR_GAIN, VENT_GAIN, gainHow(look, place)));
  if (gain < (standing ? 0 : CLEAR_GAIN)) return { wet: false, because };

  if (sun === null) return { wet: null, missing: ['sun-times'], because };
  const opens = sun.rise + AFTER_RISE;
  const shuts = sun.set - SHUT_BEFORE_SET;
  if (now < opens || now >= shuts) {
    const hoursAway = now < opens ? (opens - now) / HOUR : 0;
    const early = now < opens;
    const how = bySun(look.snapshot, early ? 'sunrise' : 'sunset', early ? sun.rise : sun.set);
    because.push(fact(early ? 'daylight-in' : 'too-near-sunset', hoursAway, 'h', null, OURS, how));
    return { wet: false, because };
  }
  // An hour after the limit was passed, though not before the sun has begun to warm the house.
  const due = Math.max((spell?.from ?? now) + (limit + 1) * HOUR, sun.rise + 2 * HOUR);
  const hoursAhead = Math.min(hours, (shuts - now) / HOUR);
  const doBy = instant(due < now ? shuts : Math.min(due, shuts));
  return { wet: true, doBy, hoursAhead, because };
}

const wetHow = (probe: string, { wet }: PlaceNow, spell: LeavesNow['spell']): How =>
  by(
    'leavesWet',
    put('probe', probe),
    put('wet-at', wet.at, '%'),
    put('wet-below', wet.below, '%'),
    put('dry-ends-spell', DRY_ENDS, 'h'),
    when('spell-from', spell?.from ?? null),
    when('spell-to', spell?.to ?? null),
    put('hours-not-known', spell?.unknownHours ?? null, 'h'),
  );

type Reads = readonly { readonly t: Instant; readonly humidity: number }[];

/** Between the two levels the leaf is as it was before; without a before, nobody can say. */
function undecided(air: Reads, { wet }: PlaceNow, now: Instant): boolean {
  const last = air.findLast(({ t }) => t <= now);
  if (last === undefined || last.humidity < wet.below) return false;
  // Walk back to the reading that settled it.
  let later = last.t;
  for (let i = air.length - 1; i >= 0; i--) {
    const read = air[i];
    if (read === undefined || read.t > now) continue;
    if (later - read.t > SEEN * HOUR) return true;
    if (read.humidity < wet.below || read.humidity >= wet.at) return false;
    later = read.t;
  }
  return true;
}

/** Hours before now in which the running spell may have gone on unseen. */
function hiddenHours(air: Reads, place: PlaceNow, now: Instant): number {
  const { wet } = place;
  const from = now - (limitOf(place) + DRY_ENDS) * HOUR;
  let hidden = 0;
  let dry = 0;
  let later: number = now;
  const step = (t: number) => {
    const passed = (later - t) / HOUR;
    later = t;
    return passed;
  };
  for (let i = air.length - 1; i >= 0; i--) {
    const read = air[i];
    if (read === undefined || read.t > now) continue;
    const passed = step(Math.max(read.t, from));
    if (passed > SEEN) hidden += passed;
    dry = passed <= SEEN && read.humidity < wet.below ? dry + passed : 0;
    if (dry >= DRY_ENDS || later <= from) return hidden;
  }
  const before = step(from);
  return before > SEEN ? hidden + before : hidden;
}
