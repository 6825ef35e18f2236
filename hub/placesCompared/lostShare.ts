import type { Batch } from '../batches/index.ts';

/**
 * Share of a batch that was lost, 0..1: trays thrown out, and what was cut and not sold as so many
 * of its trays. null for one of which nothing was cut or thrown out: nobody knows what became of it.
 */
export function lostShare({ trays, cuts, thrownOut, parted }: Batch): number | null {
  const carriedOff = parted.reduce((sum, part) => sum + part.trays, 0);
  const own = trays - carriedOff;
  if (own <= 0 || cuts.length + thrownOut.length === 0) return null;
  const thrown = thrownOut.reduce((sum, one) => sum + one.trays, 0);
  const kg = cuts.reduce((sum, cut) => sum + cut.kg, 0);
  const lost = cuts.reduce((sum, cut) => sum + (cut.lostKg ?? 0), 0);
  const cutShare = Math.max(0, 1 - thrown / own);
  return Math.min(1, thrown / own + (kg > 0 ? (lost / kg) * cutShare : 0));
}

/** The place where a batch stood longest, if it was half of its time there or more. */
export function mainPlace({ stays, sownAt, endedAt }: Batch, now: number): string | null {
  const end = endedAt ?? now;
  const time = new Map<string, number>();
  stays.forEach(({ place, from }, i) => {
    const until = Math.min(end, stays[i + 1]?.from ?? end);
    time.set(place, (time.get(place) ?? 0) + Math.max(0, until - Math.max(from, sownAt)));
  });
  const [best] = [...time].sort((a, b) => b[1] - a[1]);
  return best !== undefined && end > sownAt && best[1] >= (end - sownAt) / 2 ? best[0] : null;
}
