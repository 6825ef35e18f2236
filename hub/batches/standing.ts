import type { Batch } from './batch.ts';

const DAY = 86_400_000; // ms
/** A place where no batch was kept for so long is described by the farm file again. Ours. */
const KEPT = 120 * DAY;

export type Standing = { readonly crop: string; readonly trays: number };

/** Batches that grow in a place now. */
export const growingAt = (batches: readonly Batch[], place: string) =>
  batches.filter((batch) => batch.state === 'growing' && batch.place === place);

/** Trays by crop, the most first. */
export function traysByCrop(batches: readonly Batch[]): Standing[] {
  const trays = new Map<string, number>();
  for (const { crop, traysLeft } of batches) trays.set(crop, (trays.get(crop) ?? 0) + traysLeft);
  return [...trays]
    .map(([crop, count]) => ({ crop, trays: count }))
    .sort((a, b) => b.trays - a.trays);
}

/** What stands in a place, by the batches that are kept there; null where nobody keeps any. */
export function standingAt(
  batches: readonly Batch[],
  place: string,
  now: number,
): Standing[] | null {
  const kept = batches.some(
    ({ state, stays, endedAt }) =>
      state !== 'withdrawn' &&
      stays.some(
        (stay, i) => stay.place === place && (stays[i + 1]?.from ?? endedAt ?? now) > now - KEPT,
      ),
  );
  return kept ? traysByCrop(growingAt(batches, place)) : null;
}
