import type { Batch } from '../batches/index.ts';
import type { BatchCourse, BatchReady, CropGrowing, ReadyStage } from '../contract/index.ts';
import type { LearnedBase, Ready } from '../growing/index.ts';
import { cropName } from '../lots/index.ts';
import { readyWords } from '../words/index.ts';
import type { ApiParts } from './parts.ts';
import { iso, isoOrNull, nameOf, rounded, roundedOrNull } from './present.ts';

const LONGEST = 400; // days of a course; ours

const shownBase = ({ lower, upper, from, verdict, range, sowings }: LearnedBase) => ({
  ...{ lower, upper, from, verdict, sowings },
  range: range === null ? null : { low: rounded(range[0]), high: rounded(range[1]) },
});

const shownSpan = (span: { mean: number; low: number; high: number }) => ({
  mean: rounded(span.mean, 1),
  low: rounded(span.low, 1),
  high: rounded(span.high, 1),
});

function shownStage(ready: Ready): ReadyStage {
  const { chanceBy: _, ...told } = ready;
  const { at, need, soFar, seenAt, unknownHours, missing } = told;
  const stage = {
    ...told,
    seenAt: isoOrNull(seenAt),
    soFar: roundedOrNull(soFar, 1),
    need: need && shownSpan(need),
    unknownHours: rounded(unknownHours, 1),
    missing: [...missing],
    at: {
      early: isoOrNull(at.early),
      expected: isoOrNull(at.expected),
      late: isoOrNull(at.late),
    },
  };
  return { ...stage, words: readyWords(stage) };
}

/** When one batch is ready, in words too. */
export function shownReady(parts: ApiParts, batch: Batch, now: number): BatchReady {
  const { later, young } = parts.growing.ready(batch, now);
  return {
    batch: batch.id,
    crop: batch.crop,
    name: cropName(parts.farm(), batch.crop),
    place: batch.place,
    placeName: nameOf(parts, batch.place),
    asOf: iso(now),
    sownAt: iso(batch.sownAt),
    base: shownBase(parts.growing.crop(batch.crop).base),
    later: shownStage(later),
    young: young && shownStage(young),
  };
}

/** The same with the heat of each day so far, for a picture. */
export function shownCourse(parts: ApiParts, batch: Batch, now: number): BatchCourse {
  const { base } = parts.growing.crop(batch.crop);
  const calendar = parts.calendar();
  const end = Math.min(now, batch.endedAt ?? now);
  const lived: { day: string; degreeDays: number | null }[] = [];
  let sum: number | null = 0;
  for (let from = batch.sownAt; from < end && lived.length < LONGEST; ) {
    const day = calendar.dayOf(from);
    const to = Math.min(end, calendar.bounds(day).ends);
    const { degreeDays } = parts.growing.heat.lived(batch.stays, from, to, base);
    sum = sum === null || degreeDays === null ? null : sum + degreeDays;
    lived.push({ day, degreeDays: roundedOrNull(sum, 1) });
    from = to;
  }
  return { ...shownReady(parts, batch, now), lived };
}

/** What was learned of a crop. */
export function shownCrop(parts: ApiParts, crop: string): CropGrowing {
  const { base, past } = parts.growing.crop(crop);
  const need = parts.growing.need(crop);
  const span = (one: (typeof need)['later']) => one && { ...shownSpan(one), batches: one.batches };
  const figure = (one: { value: number; low: number | null; high: number | null } | null) =>
    one && {
      value: rounded(one.value),
      low: roundedOrNull(one.low),
      high: roundedOrNull(one.high),
    };
  return {
    crop,
    name: cropName(parts.farm(), crop),
    base: shownBase(base),
    need: { later: span(need.later), young: span(need.young) },
    past: past.map((one) => ({
      ...{ batch: one.batch, stage: one.stage, place: one.place, seen: one.seen },
      placeName: nameOf(parts, one.place),
      sownAt: iso(one.sownAt),
      readyAt: iso(one.readyAt),
      degreeDays: roundedOrNull(one.degreeDays, 1),
      days: rounded(one.days, 1),
      unknownHours: rounded(one.unknownHours, 1),
      perTray: roundedOrNull(one.perTray, 3),
    })),
    stages: parts.growing.stages(crop).map((one) => ({
      ...{ stage: one.stage, batches: one.batches, grams: figure(one.grams) },
      days: figure(one.days),
      moneyPerTray: figure(one.moneyPerTray),
      moneyPerTrayDay: figure(one.moneyPerTrayDay),
    })),
    money: parts.farm().file.farm.money,
  };
}
