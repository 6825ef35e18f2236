import { acceptedBase, type BaseInUse, scanBase } from '../../rules/heat/index.ts';
import { meanOf } from '../../rules/statistics/index.ts';
import { HOUR, instant } from '../../rules/units.ts';
import type { Batch, CutStage } from '../batches/index.ts';
import type { Calendar } from '../clock.ts';
import type { CropBase } from './cropBase.ts';
import type { PastBatch } from './pastBatches.ts';

/** From so many noted ready on, those only cut teach no base. It is what a base needs. */
const ENOUGH = 6;
/** The newest; an older farm was another one. Ours: it also bounds the work. */
const NEWEST = 24;
const FURTHEST = 5; // K from the starting base, as acceptedBase
const CLEAR_OF_BASE = 1; // K; the same
const LEAST_KNOWN = 0.85; // share of a batch's hours; common practice, no source

/** Temperatures that a batch went through, one an hour, °C. */
export type HoursOf = (
  batch: Batch,
  to: number,
) => readonly { readonly t: number; readonly value: number }[];

/** The base in use, and what the grower's own sowings say of it. */
export type LearnedBase = CropBase & {
  readonly verdict: BaseInUse['verdict'];
  /** Lowest and highest of four ways to learn it; null where none did. */
  readonly range: readonly [number, number] | null;
  /** Sowings it was learned from. */
  readonly sowings: number;
};

type Taught = {
  readonly id: string;
  readonly readyAt: number;
  readonly temperature: number;
  readonly days: number;
  readonly hours: ReturnType<HoursOf>;
};
export type BaseParts = {
  readonly hoursOf: HoursOf;
  /** When the season an instant falls in began; and the one that runs. */
  readonly seasonOf: (t: number) => number;
  readonly season: number;
  /** Bases searched for already. */
  readonly scanned: Map<string, number | null>;
};

/**
 * Base temperature from the grower's own sowings. It is learned anew when a year's season begins, from
 * all before; in a season that began without one, from the first sowings that are enough. So totals
 * change once a season at most. A season that teaches nothing leaves the base of the one before.
 */
export function ownBase(
  start: CropBase,
  batches: readonly Batch[],
  past: readonly PastBatch[],
  parts: BaseParts,
): LearnedBase {
  const taught = taughtBy(batches, past, parts.hoursOf);
  const seasons = new Set([...taught.map(({ readyAt }) => parts.seasonOf(readyAt)), parts.season]);
  let inUse: LearnedBase = { ...start, verdict: 'too-few', range: null, sowings: 0 };
  for (const begins of [...seasons].sort((a, b) => a - b)) {
    const before = taught.filter(({ readyAt }) => readyAt < begins);
    let tried = learn(start, before, parts.scanned);
    const within = taught.filter(({ readyAt }) => parts.seasonOf(readyAt) === begins);
    for (let n = 1; n <= within.length && ![inUse, tried].some(isLearned); n++)
      tried = learn(start, [...before, ...within.slice(0, n)], parts.scanned);
    if (isLearned(tried) || !isLearned(inUse)) inUse = tried;
  }
  return inUse;
}

const isLearned = ({ verdict }: LearnedBase) => verdict === 'learned';

function taughtBy(
  batches: readonly Batch[],
  past: readonly PastBatch[],
  hoursOf: HoursOf,
): Taught[] {
  const byId = new Map(batches.map((batch) => [batch.id, batch]));
  const known = past.filter(({ degreeDays, batch, root }) => degreeDays !== null && batch === root);
  const of = (stage: CutStage) => known.filter((one) => one.stage === stage);
  const stage = of('later').length >= of('young').length ? of('later') : of('young');
  const noted = stage.filter(({ seen }) => seen === 'noted');
  const used = noted.length >= ENOUGH ? noted : stage;
  return used.flatMap(({ batch: id, readyAt, days }): Taught[] => {
    const batch = byId.get(id);
    const hours = batch === undefined ? [] : hoursOf(batch, readyAt);
    if (hours.length < LEAST_KNOWN * days * 24) return [];
    return [{ id, readyAt, days, hours, temperature: meanOf(hours.map(({ value }) => value)) }];
  });
}

function learn(
  start: CropBase,
  all: readonly Taught[],
  known: Map<string, number | null>,
): LearnedBase {
  const taught = all.slice(-NEWEST);
  if (taught.length < 3)
    return { ...start, verdict: 'too-few', range: null, sowings: taught.length };
  const found = acceptedBase(taught, start.lower);
  const keep = (verdict: BaseInUse['verdict']): LearnedBase => ({
    ...start,
    ...{ verdict, range: found.range, sowings: taught.length },
  });
  if (found.verdict !== 'learned') return keep(found.verdict);
  const key = `${start.lower}/${start.upper} ${taught.map(({ id }) => id).join(' ')}`;
  const scanned = known.has(key)
    ? (known.get(key) ?? null)
    : scannedBase(start, taught, found.base);
  known.set(key, scanned);
  if (scanned === null) return keep('undetermined');
  const coolest = Math.min(...taught.map(({ temperature }) => temperature));
  if (!(coolest > scanned + CLEAR_OF_BASE)) return keep('too-cold');
  return { ...keep('learned'), lower: scanned, from: 'own' };
}

/** The closed forms suppose no time below the base or above the upper threshold: where there was any,
 *  every tenth of a degree is tried on the hours themselves. */
function scannedBase(start: CropBase, taught: readonly Taught[], found: number): number | null {
  const outside = taught.some(({ hours }) =>
    hours.some(({ value }) => value < found || value > (start.upper ?? Number.POSITIVE_INFINITY)),
  );
  if (!outside) return Math.round(10 * found) / 10;
  const series = taught.map(({ hours }) =>
    hours.map(({ t, value }) => ({ t: instant(t + HOUR / 2), value })),
  );
  const upper = start.upper ?? undefined;
  const most = Math.min(start.lower + FURTHEST, (upper ?? 30) - FURTHEST);
  const scan = scanBase(series, { from: start.lower - FURTHEST, to: most, upper });
  return scan === null ? null : Math.round(10 * scan.base) / 10;
}

/** 1 January in the north, 1 July in the south: no sowing is half way then. */
export function seasonBegins(lat: number, day: string, calendar: Calendar): number {
  const year = Number(day.slice(0, 4));
  if (lat >= 0) return calendar.bounds(`${year}-01-01`).begins;
  const july = `${year}-07-01`;
  return calendar.bounds(day >= july ? july : `${year - 1}-07-01`).begins;
}
