import {
  type BatchSpread,
  batchQuantile,
  chanceReady,
  needOf,
  readyWhen,
} from '../../rules/batches/index.ts';
import { dayOfYear, isStanding } from '../../rules/heat/index.ts';
import { median } from '../../rules/statistics/index.ts';
import type { Batch, CutStage, Stay } from '../batches/index.ts';
import type { Calendar } from '../clock.ts';
import type { Farm } from '../farm/index.ts';
import type { Ahead } from './aheadOf.ts';
import { type Courses, coursesOf } from './coursesOf.ts';
import type { CropBase } from './cropBase.ts';
import type { HeatRule } from './heatRule.ts';
import type { Lived } from './makeHeat.ts';
import type { PastBatch } from './pastBatches.ts';
import type { PlaceClimate } from './placeClimate.ts';
import { CONFIDENCE, notKnown, type Ready } from './ready.ts';
import { usualLightBetween } from './skyLight.ts';
import { type BatchLight, type Lesson, lessonOf } from './teaching.ts';
import { daysAlone, toldDays, toldNeed } from './toldNeed.ts';

const DAY = 86_400_000; // ms
const NOON = DAY / 2;
/** Later than that nothing is foretold. Ours. */
export const HORIZON = 200; // days

export type ReadyParts = {
  readonly farm: () => Farm;
  readonly calendar: () => Calendar;
  readonly cropOf: (crop: string) => {
    readonly base: CropBase;
    readonly past: readonly PastBatch[];
  };
  readonly lived: (stays: readonly Stay[], from: number, to: number, rule: HeatRule) => Lived;
  readonly ahead: (place: string, rule: HeatRule, fromDay: string, days: number) => Ahead;
  readonly climate: (place: string, rule: HeatRule) => PlaceClimate;
};

export function makeReady(parts: ReadyParts) {
  const { farm, calendar, cropOf, lived, ahead, climate } = parts;

  const stands = (t: number) =>
    isStanding(farm().file.farm.lat, dayOfYear(calendar().dayOf(t))) === true;

  /** What the batch still has to reach, and where that is known from. */
  const needFor = (
    batch: Batch,
    stage: CutStage,
    rule: HeatRule,
    lesson: Lesson | null,
    courses: Courses,
    soFar: number,
  ): BatchSpread | null => {
    if (lesson !== null) {
      const first = needOf(lesson.found, 0);
      const need = needOf(lesson.found, rateAbout(courses.mean, first.mean - soFar));
      if (lesson.byLight === null || need.df === null || need.df < 2) return need;
      // A line through light takes one more of what the batches tell.
      return { ...need, df: need.df - 1, sd: need.sd * Math.sqrt(need.df / (need.df - 1)) };
    }
    const told = toldDays(farm().crop(batch.crop), stage);
    if (told === null) return null;
    const place = batch.stays[0]?.place ?? batch.place;
    const sown = calendar().dayOf(batch.sownAt);
    const { units } = climate(place, rule);
    return toldNeed(told, (after) => units(calendar().add(sown, after)));
  };

  /** Days alone, as the grower tells them: nothing is known of the heat. */
  const byDays = (
    batch: Batch,
    stage: CutStage,
    now: number,
    known: Partial<Ready>,
  ): Ready | null => {
    const told = toldDays(farm().crop(batch.crop), stage);
    if (told === null) return null;
    const days = daysAlone(told);
    const at = (after: number) => Math.max(now, batch.sownAt + after * DAY);
    return dated(
      { early: at(days.early), expected: at(days.expected), late: at(days.late) },
      { ...notKnown(stage, known, []), method: 'told days' },
    );
  };

  /** Days of an interval: those whose noon lies in it, so that whole days make it no surer. */
  const dated = (at: Ready['at'], ready: Ready): Ready => {
    const day = (t: number | null, off: number) => (t === null ? null : calendar().dayOf(t + off));
    const [early, expected, late] = [day(at.early, NOON), day(at.expected, 0), day(at.late, -NOON)];
    const standing = ready.standing || (at.expected !== null && stands(at.expected));
    return {
      ...ready,
      at,
      standing,
      expected: standing ? null : expected,
      early: early !== null && expected !== null && early > expected ? expected : early,
      late: late !== null && expected !== null && late < expected ? expected : late,
    };
  };

  /** Light of the whole batch: what it had, and what the rest of its days usually brings. */
  const lightOver = (
    batch: Batch,
    past: readonly PastBatch[],
    perDay: number | null,
    now: number,
  ): BatchLight => {
    const { lat } = farm().file.farm;
    const days = past.length === 0 ? 0 : median(past.map((one) => one.days));
    const usualTo = (to: number) => usualLightBetween(lat, batch.sownAt, to, calendar());
    const usual = usualTo(Math.max(now, batch.sownAt + days * DAY));
    const soFar = usualTo(now);
    return { measured: perDay === null || soFar === 0 ? null : (perDay * usual) / soFar, usual };
  };

  return function ready(batch: Batch, stage: CutStage, now: number): Ready {
    const { base: rule, past } = cropOf(batch.crop);
    const seenAt = batch.readyAt[stage];
    const heat = lived(batch.stays, batch.sownAt, Math.min(now, batch.endedAt ?? now), rule);
    const { degreeDays: soFar, unknownHours, variance, lightPerDay } = heat;
    const known = { seenAt, soFar, unknownHours, standing: stands(now) };
    const lesson = lessonOf(past, stage, batch.variety, lightOver(batch, past, lightPerDay, now));
    const taught = {
      learnedFrom: lesson?.found.length ?? 0,
      counted: lesson?.counted ?? null,
      byLight: lesson?.byLight ?? null,
    };
    if (seenAt !== null) {
      const need = lesson && needOf(lesson.found, lesson.found.at(-1)?.lastDay ?? 0);
      const method = lesson === null ? ('unknown' as const) : ('own batches' as const);
      const seen = { ...known, ...taught, method, need: need && spanOf(need), chanceBy: () => 1 };
      return notKnown(stage, seen, []);
    }
    if (batch.state !== 'growing') return notKnown(stage, known, ['ended']);
    const today = calendar().dayOf(now);
    const courses = coursesOf(ahead(batch.place, rule, today, HORIZON), HORIZON);
    if (soFar === null || courses === null) {
      const missing = soFar === null ? ('no heat' as const) : ('no weather' as const);
      return byDays(batch, stage, now, known) ?? notKnown(stage, known, [missing]);
    }
    const need = needFor(batch, stage, rule, lesson, courses, soFar);
    if (need === null)
      return byDays(batch, stage, now, known) ?? notKnown(stage, known, ['no past']);

    const { ends } = calendar().bounds(today);
    const firstDay = Math.min(1, (ends - now) / DAY);
    const coursesLeft = courses.courses;
    const given = { need, soFar, variance, courses: coursesLeft, firstDay, confidence: CONFIDENCE };
    const when = (standing: boolean) => {
      const { early, expected, late } = readyWhen({ ...given, standing });
      const at = (days: number | null) => (days === null ? null : now + days * DAY);
      return { early: at(early), expected: at(expected), late: at(late) };
    };
    const first = when(known.standing);
    const standing = known.standing || (first.expected !== null && stands(first.expected));
    const found: Ready = {
      ...notKnown(stage, { ...known, ...taught }, []),
      chanceBy: (mornings) =>
        mornings > HORIZON ? null : chanceReady({ ...given, standing }, Math.max(0, mornings)),
      standing,
      need: spanOf(need),
      method: lesson === null ? 'told days' : 'own batches',
      weather: courses.from,
      missing: first.expected === null ? ['too far'] : [],
    };
    return dated(standing === known.standing ? first : when(true), found);
  };
}

/** What a day brings about the time the rest is reached; of the last day looked at, where it is not. */
function rateAbout(mean: readonly number[], rest: number): number {
  let left = rest;
  for (const units of mean) {
    left -= units;
    if (left <= 0) return units;
  }
  return mean.at(-1) ?? 0;
}

/** Mean and interval of a need. */
export const spanOf = (need: BatchSpread) => {
  const half = batchQuantile(need, (1 + CONFIDENCE) / 2) * need.sd;
  return { mean: need.mean, low: Math.max(0, need.mean - half), high: need.mean + half };
};
