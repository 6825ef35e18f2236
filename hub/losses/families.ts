import type { Exposure, LossCase } from '../../rules/losses/index.ts';
import { HOUR, MINUTE } from '../../rules/units.ts';
import type { Bounds } from '../../rules/wetness/index.ts';
import type { ComparedUnit } from '../contract/index.ts';
import { cropName } from '../lots/index.ts';
import type { Exposures } from './exposureBefore.ts';
import type { Loss } from './loss.ts';
import type { LossParts } from './lossParts.ts';
import type { QuietWeek } from './quietWeeks.ts';
import { shareLost } from './shareLost.ts';
import { addDays, weekOf } from './weeks.ts';

/** How it is known what was lost. `no-entry`: none was entered, though the log was kept that week. */
export type Basis = 'entered' | 'said-none' | 'no-entry' | 'not-kept';
export type FamilyCase = LossCase & {
  readonly id: string;
  /** What it is called where it is no place in a week. */
  readonly name: string | null;
  readonly place: string;
  readonly from: string;
  readonly basis: Basis;
};
export type Family = {
  readonly unit: ComparedUnit;
  readonly exposures: readonly Exposure[];
  readonly cases: readonly FamilyCase[];
};

export type FamilyParts = {
  readonly parts: LossParts;
  /** Losses that hold and are counted here, not with a lot. */
  readonly losses: readonly Loss[];
  readonly quiet: readonly QuietWeek[];
  readonly before: (place: string, day: string) => Exposures;
};

const NONE: Bounds = [0, 0];

/** Share lost by all these losses of one place or batch: those of a crop are added, the worst crop counts. */
function lostBy({ parts }: FamilyParts, losses: readonly Loss[]): Bounds {
  const least = new Map<string, number>();
  let open = false;
  for (const loss of losses) {
    const share = shareLost(parts.farm(), loss);
    open ||= share === null; // nobody knows of how much: it may have been all
    least.set(loss.crop, (least.get(loss.crop) ?? 0) + (share ?? 0));
  }
  const worst = Math.min(1, Math.max(0, ...least.values()));
  return [worst, open ? 1 : worst];
}

/** Places in weeks that are over: the tunnels, or the patches. */
export function placeWeeks(
  given: FamilyParts,
  places: readonly string[],
  weeks: readonly string[],
) {
  const { losses, quiet, before } = given;
  const kept = new Set(losses.map(({ day }) => weekOf(day)));
  const said = new Set(quiet.map(({ place, week }) => `${place}\n${week}`));
  return weeks.flatMap((week) =>
    places.map((place): FamilyCase => {
      const here = losses.filter((loss) => loss.place === place && weekOf(loss.day) === week);
      const basis: Basis =
        here.length > 0
          ? 'entered'
          : said.has(`${place}\n${week}`)
            ? 'said-none'
            : kept.has(week)
              ? 'no-entry'
              : 'not-kept';
      const lost = basis === 'not-kept' ? null : here.length > 0 ? lostBy(given, here) : NONE;
      const of = { block: week, slot: place, exposure: before(place, week), lost };
      return { ...of, id: `${place} ${week}`, name: null, place, from: week, basis };
    }),
  );
}

/** Batches that have ended: what they went through before their first loss, or before their end. */
export function batchCases(given: FamilyParts, range: { from: string; to: string }): FamilyCase[] {
  const { parts, losses, quiet, before } = given;
  const order = makeOrder();
  return (parts.batches?.() ?? []).flatMap(({ id, name, place, from, to }) => {
    if (to === null || to < range.from || to > range.to) return [];
    const own = losses.filter(({ batch }) => batch === id);
    const [first] = own.map(({ day }) => day).sort();
    const kept =
      quiet.some((one) => one.place === place && one.week <= to && addDays(one.week, 6) >= from) ||
      losses.some((loss) => loss.day >= from && loss.day <= to);
    const basis: Basis = own.length > 0 ? 'entered' : kept ? 'no-entry' : 'not-kept';
    const end = first ?? to;
    const block = weekOf(end);
    const lost = basis === 'not-kept' ? null : own.length > 0 ? lostBy(given, own) : NONE;
    const of = { block, slot: order(block), exposure: before(place, end), lost };
    return [{ ...of, id, name, place, from, basis }];
  });
}

/** Lots of the cool rooms that are gone: hours over their limit, and the share thrown out. */
export function lotCases(
  { parts }: FamilyParts,
  range: { from: string; to: string },
  now: number,
): FamilyCase[] {
  const order = makeOrder();
  return parts.lots
    .all()
    .filter(({ state }) => state === 'ended')
    .sort((a, b) => a.storedAt - b.storedAt)
    .flatMap((lot) => {
      const from = parts.calendar().dayOf(lot.storedAt);
      if (from < range.from || from > range.to) return [];
      const { above, unknown } = parts.lots.seen(lot, now);
      const hours = (minutes: number) => (minutes * MINUTE) / HOUR;
      const gone = lot.taken.reduce((sum, { how, kg }) => sum + (how === 'thrown-out' ? kg : 0), 0);
      const share = Math.min(1, gone / lot.kg);
      const block = weekOf(from); // those of a week lay through the same warm hours
      const of: LossCase = {
        block,
        slot: order(block),
        exposure: { 'cool-room-hours': [hours(above), hours(above + unknown)] },
        lost: [share, share],
      };
      const basis: Basis = gone > 0 ? 'entered' : 'said-none';
      const name = cropName(parts.farm(), lot.crop);
      return [{ ...of, id: lot.id, name, place: lot.place, from, basis }];
    });
}

/** The first, second, third … case of a block. */
function makeOrder() {
  const next = new Map<string, number>();
  return (block: string): string => {
    const at = next.get(block) ?? 0;
    next.set(block, at + 1);
    return String(at);
  };
}
