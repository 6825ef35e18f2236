import type { BatchHarm, PlaceDay } from '../../rules/days/index.ts';
import { enoughKnown } from '../../rules/days/index.ts';
import type { Batch } from '../batches/index.ts';
import type { Calendar } from '../clock.ts';
import type { ClimateDays } from '../snapshot/index.ts';
import { lostShare } from './lostShare.ts';

/** Of a batch's days, those that must be known for it to teach anything. Ours. */
const KNOWN = 0.8;
/** Batches learned from, the newest. Ours: a small farm's year or two. */
const MOST = 80;

/** Hours in a day over the limit, under the chill, or wet in disease weather (the middle of both bounds). */
const harmful = ({ hours, disease }: PlaceDay) =>
  hours.reduce((sum, { hurt }) => sum + hurt, 0) +
  (disease === null ? 0 : (disease.hours[0] + disease.hours[1]) / 2);

/** Remembers what finished batches went through: their past does not change, but when readings do. */
export function makeBatchHarms(climate: ClimateDays, calendar: () => Calendar) {
  const kept = new Map<string, BatchHarm | null>();
  let version = -1;

  const harmOf = (batch: Batch, now: number): BatchHarm | null => {
    const lost = lostShare(batch);
    if (lost === null || batch.endedAt === null) return null;
    const end = calendar().dayOf(batch.endedAt);
    let [known, all, sum] = [0, 0, 0];
    batch.stays.forEach(({ place, from }, i) => {
      const next = batch.stays[i + 1];
      const last = next === undefined ? end : calendar().add(calendar().dayOf(next.from), -1);
      for (const day of climate.of(place, batch.crop, calendar().dayOf(from), last, now)) {
        all += 1;
        if (!enoughKnown(day)) continue;
        known += 1;
        sum += harmful(day);
      }
    });
    if (all === 0 || known < KNOWN * all) return null;
    return { harmfulHours: (sum * all) / known, lostShare: lost };
  };

  /**
   * @param atOnce batches worked out that were not before: months of readings lie behind one, so the
   *   others wait for the next call
   */
  return function batchHarms(
    batches: readonly Batch[],
    crop: string,
    now: number,
    atOnce: number,
  ): BatchHarm[] {
    let fresh = 0;
    if (version !== climate.version()) {
      kept.clear();
      version = climate.version();
    }
    return batches
      .filter((batch) => batch.state === 'ended' && batch.crop === crop)
      .sort((a, b) => (b.endedAt ?? 0) - (a.endedAt ?? 0))
      .slice(0, MOST)
      .flatMap((batch) => {
        const key = `${batch.id} ${batch.entries.length}`;
        const known = kept.get(key);
        if (known !== undefined) return known ?? [];
        if (fresh++ >= atOnce) return [];
        const harm = harmOf(batch, now);
        kept.set(key, harm);
        return harm ?? [];
      });
  };
}
