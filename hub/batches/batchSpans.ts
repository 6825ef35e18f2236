import type { Calendar } from '../clock.ts';
import type { Farm } from '../farm/index.ts';
import type { Batch } from './batch.ts';

/** Batches as what was lost of them is compared: the days they stood, and where they stood longest. */
export function batchSpans(batches: readonly Batch[], farm: Farm, calendar: Calendar) {
  return batches
    .filter(({ state }) => state !== 'withdrawn')
    .map((batch) => ({
      id: batch.id,
      crop: batch.crop,
      name: farm.crop(batch.crop)?.name ?? batch.crop.replaceAll('-', ' '),
      place: mainPlace(batch),
      from: calendar.dayOf(batch.sownAt),
      to: batch.endedAt === null ? null : calendar.dayOf(batch.endedAt),
    }));
}

function mainPlace({ stays, endedAt, place }: Batch): string {
  const stood = new Map<string, number>();
  for (const [i, stay] of stays.entries()) {
    const until = stays[i + 1]?.from ?? endedAt;
    if (until === null) return place; // it stands there still
    stood.set(stay.place, (stood.get(stay.place) ?? 0) + until - stay.from);
  }
  return [...stood].sort(([, a], [, b]) => b - a)[0]?.[0] ?? place;
}
